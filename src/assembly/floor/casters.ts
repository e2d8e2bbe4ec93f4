import { NOISE_MM, place } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import type { PlacedHardware, PlacedModule, PlacingTrouble } from '../types.ts'
import { footprintOf } from './footprint.ts'
import { typed } from './mend.ts'

interface Circle {
  readonly module: PlacedModule
  readonly x: number
  readonly y: number
  readonly radius: number
  readonly at: PlacedHardware['at']
}

/** Casters of different modules whose swivel circles, about their king pins, meet or nearly do: the worst of each pair of modules. */
export function casterNeighbours(
  modules: ReadonlyMap<string, PlacedModule>,
  hardware: readonly PlacedHardware[],
  apart: number,
): PlacingTrouble[] {
  // Sorted along the floor, so that only circles that overlap in x are ever compared.
  const casters = hardware.filter(({ item }) => item.kind === 'caster')
  const circles = casters.flatMap((piece) => circleOf(modules, piece)).sort((a, b) => a.x - b.x)
  const widest = Math.max(0, ...circles.map((circle) => circle.radius))
  const worst = new Map<string, { a: Circle; b: Circle; between: number }>()
  for (const [k, a] of circles.entries()) {
    for (let n = k + 1; n < circles.length; n += 1) {
      const b = circles[n]
      if (b === undefined || b.x - a.x > a.radius + widest + apart) break
      if (a.module === b.module) continue
      const between = Math.hypot(b.x - a.x, b.y - a.y) - a.radius - b.radius
      if (between >= apart - NOISE_MM) continue
      const key = [a.module.key, b.module.key].sort().join('+')
      if (between < (worst.get(key)?.between ?? Number.POSITIVE_INFINITY)) worst.set(key, { a, b, between })
    }
  }
  return [...worst.values()].map(({ a, b, between }) => troubleOf(inOrder(modules, a, b), between, apart))
}

function circleOf(modules: ReadonlyMap<string, PlacedModule>, { item, frame, stations, at }: PlacedHardware): Circle[] {
  const module = modules.get(frame)
  if (item.kind !== 'caster' || module === undefined) return []
  return stations.map(({ pose }) => {
    const [x, y] = place(module.floorFromModule, pose.origin)
    const { diameter, width } = item.wheel ?? { diameter: 0, width: 0 }
    // A fixed one does not swing: its wheel stays where it is.
    return { module, x, y, radius: Math.max(item.swivelRadius, Math.hypot(diameter, width) / 2), at }
  })
}

function inOrder(modules: ReadonlyMap<string, PlacedModule>, a: Circle, b: Circle): readonly [Circle, Circle] {
  const keys = [...modules.keys()]
  return keys.indexOf(a.module.key) < keys.indexOf(b.module.key) ? [a, b] : [b, a]
}

/** Further in than this, mm, another caster is the better way. Own choice. */
const FARTHEST_IN_MM = 100

/**
 * How much further in the casters of b must stand, in whole mm, and the inset that this comes to; all four of a module keep
 * one inset, and each moves toward the middle along both sides.
 */
function furtherIn(a: Circle, b: Circle, apart: number): { readonly by: number; readonly inset: number } | undefined {
  const { min, max } = footprintOf(b.module)
  const from: readonly [number, number] = [b.x - min[0], b.y - min[1]]
  const to: readonly [number, number] = [max[0] - b.x, max[1] - b.y]
  const inset = Math.min(from[0], to[0])
  if (Math.abs(Math.min(from[1], to[1]) - inset) > NOISE_MM) return undefined
  const way: readonly [number, number] = [from[0] < to[0] ? 1 : -1, from[1] < to[1] ? 1 : -1]
  for (let by = 1; by <= FARTHEST_IN_MM; by += 1) {
    const between = Math.hypot(b.x + way[0] * by - a.x, b.y + way[1] * by - a.y) - a.radius - b.radius
    if (between >= apart - NOISE_MM) return { by, inset: inset + by }
  }
  return undefined
}

function troubleOf([a, b]: readonly [Circle, Circle], between: number, apart: number): PlacingTrouble {
  const meet = between < -NOISE_MM
  const moved = furtherIn(a, b, apart)
  return {
    rule: 'caster-neighbours',
    severity: meet ? 'stop' : 'warn',
    panels: [],
    message: `the swivel circles of casters of ${a.module.name} and ${b.module.name} ${meet ? `overlap by ${mm(-between)} mm` : `pass ${mm(Math.max(0, between))} mm apart`}`,
    fix:
      moved === undefined
        ? 'set the casters of one of them further in (`inset`), or take smaller ones'
        : `set the casters of ${b.module.name} ${moved.by} mm further in (\`inset: ${typed(moved.inset)}\`)`,
    ...(moved !== undefined && { change: [{ path: [...b.module.at, 'base', 'inset'], value: typed(moved.inset) }] }),
    at: b.at,
  }
}
