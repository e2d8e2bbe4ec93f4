import { NOISE_MM } from '../../geometry/index.ts'
import { type Caster, itemsOfKind } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { type CastersSpec, limitOf, type ModuleSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { atLeast } from '../mend.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'
import { platesBeyond, ruleInset, type Wheel } from './casters.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

/** Circles of four casters that swivel: against each other, and against the edges of the footprint. */
export function circleTroubles(
  spec: ModuleSpec,
  base: CastersSpec,
  inset: number,
  bottom: PlacedPanel,
): PlacingTrouble[] {
  const { swivelRadius } = base.item
  const apart = limitOf(spec, 'caster-circles', 'warn')
  const size = Math.min(spec.width, spec.depth)
  const between = size - 2 * inset - 2 * swivelRadius
  const narrow = spec.width < spec.depth ? 'wide' : 'deep'
  const troubles: PlacingTrouble[] = []
  if (between < apart - NOISE_MM) {
    const met = between < -NOISE_MM
    troubles.push({
      rule: 'caster-circles',
      severity: met ? 'stop' : 'warn',
      panels: [bottom.id],
      message: `the swivel circles of two casters ${met ? `overlap by ${mm(-between)} mm` : `pass ${mm(between)} mm apart`}; the module is ${mm(size)} mm ${narrow}`,
      ...further(base, size, apart, `make it ${mm(size + apart - between)} mm ${narrow} or more`),
      at: base.at,
    })
  }
  troubles.push(...footprintTrouble(base, bottom, swivelRadius - inset))
  return troubles
}

/** Casters nearer to the edges where they were set further in, else the largest of the catalogue that pass each other. */
function further(base: CastersSpec, size: number, apart: number, larger: string): Mending {
  // By the rule there is the footprint gap outside each of two circles, and what keeps them apart between them.
  const least = (item: Caster): number => 4 * item.swivelRadius + 2 * base.footprintGap + apart
  const inset = base.inset === 'auto' ? [] : [{ path: [...base.at, 'inset'], value: 'auto' }]
  if (inset.length > 0 && least(base.item) <= size + NOISE_MM) {
    return { fix: `set \`inset: auto\`: ${mm(base.item.swivelRadius + base.footprintGap)} mm`, change: inset }
  }
  const isInch = ({ id }: Caster): boolean => id.endsWith(' in')
  const found = itemsOfKind('caster')
    .filter((item) => item.turning === base.item.turning && isInch(item) === isInch(base.item))
    .filter((item) => least(item) <= size + NOISE_MM)
    .sort((a, b) => b.swivelRadius - a.swivelRadius)[0]
  if (found === undefined) return { fix: larger }
  return {
    fix: `${larger}, or take a ${found.id}`,
    change: [{ path: [...base.at, 'casters'], value: found.id }, ...inset],
  }
}

/** Swivel casters that swing beyond the footprint by so much. */
export function footprintTrouble(base: CastersSpec, bottom: PlacedPanel, beyond: number): PlacingTrouble[] {
  if (beyond <= NOISE_MM) return []
  return [
    {
      rule: 'caster-footprint',
      severity: 'warn',
      panels: [bottom.id],
      message: `the casters swing ${mm(beyond)} mm beyond the footprint and can meet a neighbour's`,
      fix: `set \`inset: auto\`: ${mm(base.item.swivelRadius + base.footprintGap)} mm or more`,
      change: [{ path: [...base.at, 'inset'], value: 'auto' }],
      at: base.at,
    },
  ]
}

/** The whole top plate must lie on the bottom panel. */
export function plateTroubles(
  spec: ModuleSpec,
  base: CastersSpec,
  bottom: PlacedPanel,
  wheels: readonly Wheel[],
): PlacingTrouble[] {
  const box = boardBox(bottom)
  const beyond = (wheel: Wheel): number => platesBeyond([wheel], box)
  const worst = wheels.reduce((a, b) => (beyond(b) > beyond(a) + NOISE_MM ? b : a))
  if (beyond(worst) <= NOISE_MM) return []
  const { plate } = worst.item
  const inset = Math.min(worst.x, spec.width - worst.x, worst.y, spec.depth - worst.y) + beyond(worst)
  const meet = 2 * inset + 2 * base.item.swivelRadius > Math.min(spec.width, spec.depth)
  const value = base.inset !== 'auto' && inset <= ruleInset({ ...base, inset: 'auto' }) ? 'auto' : atLeast(inset)
  const path = [...base.at, 'inset']
  return [
    {
      rule: 'caster-plate',
      severity: 'stop',
      panels: [bottom.id],
      message: `a caster plate of ${mm(plate.x)} × ${mm(plate.y)} mm stands ${mm(beyond(worst))} mm beyond the bottom panel; it lies whole on it from ${mm(inset)} mm in`,
      ...(meet
        ? { fix: 'take casters with a smaller plate' }
        : { fix: `set \`inset: ${value}\``, change: [{ path, value }] }),
      at: base.at,
    },
  ]
}
