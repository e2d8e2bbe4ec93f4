import { boundsOf, movedPath, NOISE_MM, type Vec2 } from '../geometry/index.ts'
import { MM_PER_INCH } from '../length/index.ts'
import type { Cutout, EdgeName, Panel } from '../panel/index.ts'
import { limitOf, type OpeningSpec } from '../project/index.ts'
import { meetingOf, wallsOf } from './clashes.ts'
import { written } from './runs.ts'
import { typedLength } from './typed.ts'
import type { Mend, Subject } from './types.ts'
import { cutoutWork, worksOf } from './works.ts'

const ACROSS: Readonly<Record<EdgeName, EdgeName>> = {
  left: 'right',
  right: 'left',
  front: 'back',
  back: 'front',
  top: 'bottom',
  bottom: 'top',
}

/** The opening of the definition that a cutout comes from; nothing where another design made it. */
function specOf({ project, designs }: Subject, panel: Panel, cutout: Cutout): OpeningSpec | undefined {
  const at = JSON.stringify(designs.cutoutAt(panel, cutout))
  const module = project.modules.find(({ key }) => key === panel.module)
  return module?.openings.find((one) => JSON.stringify(one.at) === at)
}

/** The edit that moves an opening further from an edge, where the definition measures it along that way. */
export function movedIn(subject: Subject, panel: Panel, cutout: Cutout, edge: EdgeName, by: number): Partial<Mend> {
  const spec = specOf(subject, panel, cutout)
  const from = spec?.from.find((one) => one.edge === edge || one.edge === ACROSS[edge])
  if (spec === undefined || from === undefined || from.mm === 'centred') return {}
  const [to, way] = from.edge === edge ? [from.mm + by, 'up' as const] : [from.mm - by, 'down' as const]
  return to <= 0
    ? {}
    : { change: [{ path: [...spec.at, 'from', from.edge], value: typedLength(to, subject.project.units, way) }] }
}

/** The edit that makes a recess no deeper than so many mm. */
export function recutTo(subject: Subject, panel: Panel, cutout: Cutout, depth: number): Partial<Mend> {
  const spec = specOf(subject, panel, cutout)
  if (spec === undefined) return {}
  return { change: [{ path: [...spec.at, 'depth'], value: typedLength(depth, subject.project.units, 'down') }] }
}

/** Steps in which a place is sought, and how far off at most, mm. */
const STEP = { mm: 0.5, in: MM_PER_INCH / 64 } as const
const FURTHEST_MM = 60

/**
 * The smallest move along one of its two distances after which an opening is clear of all other work of its panel and of
 * its edges, in words and as an edit; nothing where there is none within 60 mm, or another design made the cutout.
 */
export function movedClear(subject: Subject, panel: Panel, cutout: Cutout): Mend | undefined {
  const { project } = subject
  const spec = specOf(subject, panel, cutout)
  const from = spec?.from ?? []
  const isFree = freeFor(subject, panel, cutout)
  for (let by = STEP[project.units]; by <= FURTHEST_MM + NOISE_MM; by += STEP[project.units]) {
    for (const { edge, mm } of from) {
      if (spec === undefined || mm === 'centred') continue
      for (const sign of [1, -1]) {
        const to = written(mm + sign * by, project.units)
        if (to.mm <= 0 || !isFree(offBy(panel, edge, to.mm - mm))) continue
        const way = sign > 0 ? 'further from' : 'nearer to'
        const far = written(Math.abs(to.mm - mm), project.units).text
        return {
          fix: `move it ${far} ${way} the ${edge} edge (\`${edge}: ${to.text}\`)`,
          change: [{ path: [...spec.at, 'from', edge], value: to.text }],
        }
      }
    }
  }
  return undefined
}

/** Away from an edge, panel frame, mm. */
function offBy({ edges }: Panel, edge: EdgeName, by: number): Vec2 {
  if (edges.x0 === edge) return [by, 0]
  if (edges.x1 === edge) return [-by, 0]
  return edges.y0 === edge ? [0, by] : [0, -by]
}

function freeFor({ project, designs }: Subject, panel: Panel, cutout: Cutout): (off: Vec2) => boolean {
  const walls = wallsOf(project)
  const around = boundsOf(cutout.path)
  const far = FURTHEST_MM + walls.thickest
  const others = worksOf(panel).filter(
    ({ work, box }) =>
      (work.kind !== 'cutout' || work.cutout !== cutout) &&
      ([0, 1] as const).every((k) => box.min[k] < around.max[k] + far && box.max[k] > around.min[k] - far),
  )
  const room = limitOf(project, 'cutout-near-edge', 'warn') - NOISE_MM
  return (off) => {
    const path = movedPath(cutout.path, off)
    const { min, max } = boundsOf(path)
    if (Math.min(min[0], min[1], panel.length - max[0], panel.width - max[1]) < room) return false
    const moved = cutoutWork(panel, { ...cutout, path })
    return others.every((other) => meetingOf(panel, other, moved, walls, designs).length === 0)
  }
}
