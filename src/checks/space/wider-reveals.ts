import { placeBack } from '../../geometry/index.ts'
import type { FourEdges, FrontLay, Project } from '../../project/index.ts'
import { typedLength } from '../typed.ts'
import type { Finding } from '../types.ts'
import type { Still } from './floor.ts'
import { boundsOf, eachAxis, pathKey, type Specs } from './parts-of.ts'

/** A front, and the edge of it that lies toward the other. */
interface Facing {
  readonly still: Still
  readonly front: FrontLay
  readonly edge: keyof FourEdges<number>
}

/**
 * Reveals of two overlay fronts of modules side by side that leave `more` mm more between them, half of it each; nothing
 * where they look different ways or one of them is inset.
 */
export function widerReveals(
  project: Project,
  specs: Specs,
  pair: readonly [Still, Still],
  more: number,
): Pick<Finding, 'fix' | 'change'> | undefined {
  const [a, b] = pair
  if (a.module.floorFromModule.x.some((part, k) => part !== b.module.floorFromModule.x[k])) return undefined
  const both = [facing(specs, a, b), facing(specs, b, a)]
  const known = both.filter((one) => one !== undefined)
  if (known.length < 2) return undefined
  const edits = known.map(({ front, edge }) => {
    const reveal = { ...front.reveal, [edge]: front.reveal[edge] + more / 2 }
    const typed = Object.fromEntries(
      Object.entries(reveal).map(([name, value]) => [name, typedLength(value, project.units, 'up')]),
    )
    return { typed: typed[edge], path: [...front.at, 'reveal'], value: typed }
  })
  const words = known.map(({ still, edge }, k) => `${edge} \`reveal\` of ${still.module.name} to ${edits[k]?.typed}`)
  return { fix: `set the ${words.join(' and the ')}`, change: edits.map(({ path, value }) => ({ path, value })) }
}

function facing(specs: Specs, still: Still, other: Still): Facing | undefined {
  const front = specs.fronts.get(pathKey(still.panel.at))
  if (front?.lay !== 'overlay') return undefined
  const [own, there] = [still, other].map(({ box }) => {
    const { min, max } = boundsOf([box])
    return placeBack(
      still.module.floorFromModule,
      eachAxis((k) => (min[k] + max[k]) / 2),
    )
  })
  const across = (there?.[0] ?? 0) - (own?.[0] ?? 0)
  return { still, front, edge: across > 0 ? 'right' : 'left' }
}
