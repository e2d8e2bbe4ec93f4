import type { Drilling, Item } from '../../hardware/index.ts'
import { type Context, quoted } from '../context.ts'
import type { Loose } from '../layers.ts'
import { printable } from '../problem.ts'
import type { RawHole } from '../schema/hardware.ts'
import type { DefinitionPath } from '../types.ts'
import { someOf } from './stock.ts'

/** Drillings by part. */
export type Holes = Readonly<Record<string, readonly Drilling[]>>

/**
 * The holes that a project says in the place of an item's own, by part; `undefined` when one has a problem, which is
 * reported. The parts that are not named keep theirs.
 */
export function readHoles(
  context: Context,
  path: DefinitionPath,
  raw: Readonly<Record<string, unknown>>,
  item: Item,
): Holes | undefined {
  const parts = Object.keys(item.parts)
  const read = Object.entries(raw).map(([part, holes]) => {
    if (!Object.hasOwn(item.parts, part)) {
      const span = context.source.span([...path, part], 'key')
      const what = `${quoted(item.id)} has no part ${quoted(part)}`
      context.reportAt(span, path, what, { expected: someOf(parts), nearest: context.nearest(part, parts) })
      return undefined
    }
    if (!Array.isArray(holes)) return undefined
    const old = item.parts[part] ?? []
    const drillings = holes.map((hole: Loose<RawHole> | undefined, i) =>
      hole === undefined ? undefined : readHole(context, [...path, part, i], hole, old, i),
    )
    const good = drillings.filter((one) => one !== undefined)
    return good.length === holes.length ? ([part, good] as const) : undefined
  })
  const good = read.filter((one) => one !== undefined)
  return good.length === read.length ? Object.fromEntries(good) : undefined
}

/** What a hole is where an item had none to be like. */
const PLAIN: Drilling = { key: 'hole', x: 0, y: 0, enter: 'contact', diameter: 1, depth: 1, purpose: 'hardware' }

/**
 * One hole. It is the old one at the same place of the list in all that it does not say: the name that must be in line
 * with another part's, the face it enters by, its countersink if the hole is not wider.
 */
function readHole(
  context: Context,
  path: DefinitionPath,
  hole: Loose<RawHole>,
  old: readonly Drilling[],
  i: number,
): Drilling | undefined {
  const was = old[i]
  const { sink, ...like } = was ?? old[0] ?? PLAIN
  const coordinate = (k: 0 | 1) => {
    const value = hole.at?.[k]
    return value === undefined ? undefined : context.length({ value, path: [...path, 'at', k] }, { negative: true })
  }
  const [x, y] = [coordinate(0), coordinate(1)]
  const diameter = hole.diameter === undefined ? undefined : size(context, [...path, 'diameter'], hole.diameter)
  const depth = hole.depth === undefined ? undefined : readDepth(context, [...path, 'depth'], hole.depth)
  if (x === undefined || y === undefined || diameter === undefined || depth === undefined) return undefined
  const keeps = was !== undefined && sink !== undefined && sink.diameter > diameter
  return {
    ...like,
    key: was?.key ?? `hole-${i + 1}`,
    ...{ x, y, diameter, depth },
    ...(keeps && { sink }),
    ...(hole.name !== undefined && hole.name.trim() !== '' && { purpose: printable(hole.name).trim() }),
  }
}

const size = (context: Context, path: DefinitionPath, value: number | string): number | undefined =>
  context.length({ value, path }, { aboveZero: true })

function readDepth(context: Context, path: DefinitionPath, value: number | string): Drilling['depth'] | undefined {
  if (value === 'through') return 'through'
  return context.length({ value, path }, { aboveZero: true, kind: 'length or through' })
}
