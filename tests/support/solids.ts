import { ownBox } from '../../src/assembly/index.ts'
import { type Box, compose, type Pose, placedBox } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'

const AXES = [0, 1, 2] as const

/** Smaller than a shaving, larger than float noise, mm. */
const SHAVING_MM = 0.05

/** A board as it stands somewhere: its box, and the boxes that are cut out of it. */
export interface Solid {
  readonly panel: Panel
  readonly box: Box
  readonly cuts: readonly Box[]
}

/** All boards on the floor, each through its own poses alone. */
export function solidsOf(of: Built): Solid[] {
  const frames = new Map(of.assembly.modules.map((module) => [module.key, module.floorFromModule]))
  return of.panels.map((panel) => {
    const floor = frames.get(panel.module)
    if (floor === undefined) throw new Error(`no module ${panel.module}`)
    const pose: Pose = compose(floor, panel.moduleFromPanel)
    return { panel, box: placedBox(pose, ownBox(panel)), cuts: cutsOf(panel).map((cut) => placedBox(pose, cut)) }
  })
}

/** Grooves, rebates and corners taken off, panel frame. */
function cutsOf(panel: Panel): Box[] {
  const { thickness } = panel
  const grooves = panel.grooves.map(
    ({ face, min, max, depth }): Box => ({
      min: [...min, face === 'A' ? -depth : -thickness],
      max: [...max, face === 'A' ? 0 : depth - thickness],
    }),
  )
  const notches = panel.cutouts
    .filter(({ notch }) => notch)
    .map(({ path }): Box => {
      const [xs, ys] = ([0, 1] as const).map((axis) => path.map(({ at }) => at[axis])) as [number[], number[]]
      return { min: [Math.min(...xs), Math.min(...ys), -thickness], max: [Math.max(...xs), Math.max(...ys), 0] }
    })
  return [...grooves, ...notches]
}

/** How much of the space of both is wood in both, mm: the least size of the thickest cell of it; 0 where they only touch. */
export function sharedSpace(a: Solid, b: Solid): number {
  const both = {
    min: AXES.map((axis) => Math.max(a.box.min[axis], b.box.min[axis])),
    max: AXES.map((axis) => Math.min(a.box.max[axis], b.box.max[axis])),
  }
  if (AXES.some((axis) => (both.max[axis] ?? 0) - (both.min[axis] ?? 0) <= SHAVING_MM)) return 0
  const cuts = [...a.cuts, ...b.cuts]
  // Every wall of every cut divides the shared box into cells, each of which is cut away whole or not at all.
  const [xs = [], ys = [], zs = []] = AXES.map((axis) => {
    const [low, high] = [both.min[axis] ?? 0, both.max[axis] ?? 0]
    const walls = cuts.flatMap((cut) => [cut.min[axis], cut.max[axis]]).filter((at) => at > low && at < high)
    return spans([low, ...walls, high])
  })
  let most = 0
  for (const x of xs) {
    for (const y of ys) {
      for (const z of zs) {
        const middle = [x, y, z].map(([from, to]) => (from + to) / 2)
        const gone = cuts.some((cut) =>
          AXES.every((axis) => cut.min[axis] < (middle[axis] ?? 0) && (middle[axis] ?? 0) < cut.max[axis]),
        )
        if (!gone) most = Math.max(most, Math.min(...[x, y, z].map(([from, to]) => to - from)))
      }
    }
  }
  return most > SHAVING_MM ? most : 0
}

/** Between one wall and the next, in order. */
function spans(walls: readonly number[]): (readonly [number, number])[] {
  const sorted = [...walls].sort((a, b) => a - b)
  return sorted.slice(1).map((to, k) => [sorted[k] ?? to, to] as const)
}
