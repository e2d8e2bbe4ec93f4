import { NOISE_MM, same } from '../../geometry/index.ts'
import { itemsOfKind } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { type CastersSpec, limitOf, type ModuleSpec } from '../../project/index.ts'
import { atLeast } from '../mend.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'
import { footprintTrouble } from './caster-troubles.ts'
import type { Wheel } from './casters.ts'

/** Casters of two heights: the module stands askew unless the lower ones are packed. */
export function casterHeights(
  base: CastersSpec,
  fixed: NonNullable<CastersSpec['fixed']>,
  bottom: PlacedPanel,
): PlacingTrouble[] {
  const [swivel, still] = [base.item.overallHeight, fixed.item.overallHeight]
  const packing = Math.abs(swivel - still)
  if (packing <= NOISE_MM) return []
  return [
    {
      rule: 'caster-heights',
      severity: 'warn',
      panels: [bottom.id],
      message: `the casters differ in height: ${base.item.id} ${mm(swivel)} mm, ${fixed.item.id} ${mm(still)} mm`,
      ...levelled(base, fixed, packing),
      at: base.at,
    },
  ]
}

/** Fixed casters of the catalogue that are as high as the others, or a packing. */
function levelled(
  base: CastersSpec,
  fixed: NonNullable<CastersSpec['fixed']>,
  packing: number,
): Pick<PlacingTrouble, 'fix' | 'change'> {
  const lower = base.item.overallHeight < fixed.item.overallHeight ? base.item : fixed.item
  const fix = `put a packing ${mm(packing)} mm thick between each ${lower.id} and the bottom`
  const found = itemsOfKind('caster').find(
    (item) => item.turning === 'fixed' && same(item.overallHeight, base.item.overallHeight),
  )
  if (found === undefined) return { fix: `${fix}, or take casters of one height` }
  return {
    fix: `take ${found.id} with it, or ${fix}`,
    change: [{ path: [...base.at, 'fixed casters'], value: found.id }],
  }
}

/** Of two casters that swivel and two that are fixed: what their circles and wheels meet. */
export function mixedTroubles(
  spec: ModuleSpec,
  base: CastersSpec,
  bottom: PlacedPanel,
  wheels: readonly Wheel[],
): PlacingTrouble[] {
  const pairs = wheels.flatMap((a, k) => wheels.slice(k + 1).map((b) => ({ a, b, gap: gapBetween(a, b) })))
  const nearest = pairs.reduce((least, pair) => (pair.gap < least.gap - NOISE_MM ? pair : least))
  const apart = limitOf(spec, 'caster-circles', 'warn')
  const troubles: PlacingTrouble[] = []
  if (nearest.gap < apart - NOISE_MM) {
    const met = nearest.gap < -NOISE_MM
    troubles.push({
      rule: 'caster-circles',
      severity: met ? 'stop' : 'warn',
      panels: [bottom.id],
      message: `two casters ${met ? `meet by ${mm(-nearest.gap)} mm` : `pass ${mm(nearest.gap)} mm apart`} when they turn; ${mm(apart)} mm is wanted`,
      ...larger(spec, nearest, apart - nearest.gap),
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
      fix: `set \`inset: auto\``,
      change: [{ path: [...base.at, 'inset'], value: 'auto' }],
      at: base.at,
    })
  }
  return troubles
}

/** A module that is larger along the way in which two casters stand apart. */
function larger(
  spec: ModuleSpec,
  { a, b }: { readonly a: Wheel; readonly b: Wheel },
  by: number,
): Pick<PlacingTrouble, 'fix' | 'change'> {
  const key = Math.abs(a.x - b.x) > Math.abs(a.y - b.y) ? 'width' : 'depth'
  const value = atLeast(spec[key] + by)
  const fix = `make the module ${value} ${key === 'width' ? 'wide' : 'deep'} or more, or take smaller casters`
  return { fix, ...(!spec.fitted && { change: [{ path: [...spec.at, key], value }] }) }
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
