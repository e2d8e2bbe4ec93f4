import { NOISE_MM, place } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import { CIRCLES_APART_MM } from '../base/index.ts'
import type { PlacedHardware, PlacedModule, PlacingTrouble } from '../types.ts'

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
): PlacingTrouble[] {
  // Sorted along the floor, so that only circles that overlap in x are ever compared.
  const circles = hardware.flatMap((piece) => circleOf(modules, piece)).sort((a, b) => a.x - b.x)
  const widest = Math.max(0, ...circles.map((circle) => circle.radius))
  const worst = new Map<string, { a: Circle; b: Circle; between: number }>()
  for (const [k, a] of circles.entries()) {
    for (let n = k + 1; n < circles.length; n += 1) {
      const b = circles[n]
      if (b === undefined || b.x - a.x > a.radius + widest + CIRCLES_APART_MM) break
      if (a.module === b.module) continue
      const between = Math.hypot(b.x - a.x, b.y - a.y) - a.radius - b.radius
      if (between >= CIRCLES_APART_MM - NOISE_MM) continue
      const key = [a.module.key, b.module.key].sort().join('+')
      if (between < (worst.get(key)?.between ?? Number.POSITIVE_INFINITY)) worst.set(key, { a, b, between })
    }
  }
  return [...worst.values()].map(({ a, b, between }) => troubleOf(inOrder(modules, a, b), between))
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

function troubleOf([a, b]: readonly [Circle, Circle], between: number): PlacingTrouble {
  const meet = between < -NOISE_MM
  return {
    rule: 'caster-neighbours',
    severity: meet ? 'stop' : 'warn',
    panels: [],
    message: `the swivel circles of casters of ${a.module.name} and ${b.module.name} ${meet ? `overlap by ${mm(-between)} mm` : `pass ${mm(Math.max(0, between))} mm apart`}`,
    fix: `set the casters of one of them ${mm(CIRCLES_APART_MM - between)} mm further in (\`inset\`)`,
    at: b.at,
  }
}
