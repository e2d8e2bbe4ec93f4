import { NOISE_MM } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import type { CastersSpec, ModuleSpec } from '../../project/index.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'
import { CIRCLES_APART_MM, footprintTrouble, type Wheel } from './casters.ts'

/** Casters of two heights: the module stands askew unless the lower ones are packed. */
export function casterHeights(
  base: CastersSpec,
  fixed: NonNullable<CastersSpec['fixed']>,
  bottom: PlacedPanel,
): PlacingTrouble[] {
  const [swivel, still] = [base.item.overallHeight, fixed.item.overallHeight]
  const packing = Math.abs(swivel - still)
  if (packing <= NOISE_MM) return []
  const lower = swivel < still ? base.item : fixed.item
  return [
    {
      rule: 'caster-heights',
      severity: 'warn',
      panels: [bottom.id],
      message: `the casters differ in height: ${base.item.id} ${mm(swivel)} mm, ${fixed.item.id} ${mm(still)} mm`,
      fix: `put a packing ${mm(packing)} mm thick between each ${lower.id} and the bottom, or take casters of one height`,
      at: base.at,
    },
  ]
}

/** Of two casters that swivel and two that are fixed: what their circles and wheels meet. */
export function mixedTroubles(
  spec: ModuleSpec,
  base: CastersSpec,
  bottom: PlacedPanel,
  wheels: readonly Wheel[],
): PlacingTrouble[] {
  const pairs = wheels.flatMap((a, k) => wheels.slice(k + 1).map((b) => gapBetween(a, b)))
  const least = Math.min(...pairs)
  const troubles: PlacingTrouble[] = []
  if (least < CIRCLES_APART_MM - NOISE_MM) {
    troubles.push({
      rule: 'caster-circles',
      severity: least < -NOISE_MM ? 'stop' : 'warn',
      panels: [bottom.id],
      message: `two casters ${least < -NOISE_MM ? `meet by ${mm(-least)} mm` : `pass ${mm(least)} mm apart`} when they turn`,
      fix: `make the module ${mm(CIRCLES_APART_MM - least)} mm larger that way, or take smaller casters`,
      at: base.at,
    })
  }
  const swing = wheels.filter((wheel) => wheel.envelope === undefined).map((wheel) => beyond(spec, wheel))
  troubles.push(...footprintTrouble(base, bottom, Math.max(...swing)))
  const still = Math.max(...wheels.filter((wheel) => wheel.envelope !== undefined).map((wheel) => beyond(spec, wheel)))
  if (still > NOISE_MM) {
    troubles.push({
      rule: 'caster-footprint',
      severity: 'warn',
      panels: [bottom.id],
      message: `the fixed casters stand ${mm(still)} mm beyond the footprint`,
      fix: `set \`inset\` ${mm(still)} mm larger, or leave it to the rule`,
      at: base.at,
    })
  }
  return troubles
}

const halves = ({ item, envelope }: Wheel): readonly [number, number] =>
  envelope ?? [item.swivelRadius, item.swivelRadius]

/** How far a caster reaches over the edge of the footprint, mm; negative inside. */
function beyond(spec: ModuleSpec, wheel: Wheel): number {
  const [x, y] = halves(wheel)
  return Math.max(x - wheel.x, wheel.x + x - spec.width, y - wheel.y, wheel.y + y - spec.depth)
}

/** Between a circle or a rectangle and another, mm; negative by how far they overlap along the nearer axis. */
function gapBetween(a: Wheel, b: Wheel): number {
  const apart = [Math.abs(a.x - b.x), Math.abs(a.y - b.y)] as const
  if (a.envelope === undefined && b.envelope === undefined) {
    return Math.hypot(...apart) - a.item.swivelRadius - b.item.swivelRadius
  }
  if (a.envelope !== undefined && b.envelope !== undefined) {
    return Math.max(apart[0] - a.envelope[0] - b.envelope[0], apart[1] - a.envelope[1] - b.envelope[1])
  }
  const still = a.envelope ?? b.envelope ?? [0, 0]
  const radius = a.envelope === undefined ? a.item.swivelRadius : b.item.swivelRadius
  const dx = apart[0] - still[0]
  const dy = apart[1] - still[1]
  // Inside the rectangle the nearer side counts.
  return (dx <= 0 && dy <= 0 ? Math.max(dx, dy) : Math.hypot(Math.max(dx, 0), Math.max(dy, 0))) - radius
}
