import { type Box, MINUS_X, NOISE_MM, type Pose, poseOf, X, Y } from '../../geometry/index.ts'
import type { Caster } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { CastersSpec, ModuleSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'
import { casterHeights, mixedTroubles } from './fixed-casters.ts'

/** Kept between the swivel circles of two casters, mm; common practice. */
export const CIRCLES_APART_MM = 10

/** One caster in its place, module frame, mm. */
export interface Wheel {
  readonly item: Caster
  readonly x: number
  readonly y: number
  /** Half of its plate across the module and front to back. */
  readonly plate: readonly [x: number, y: number]
  /** Half of what a fixed one takes up with wheel and plate; nothing for one that swivels. */
  readonly envelope: readonly [x: number, y: number] | undefined
  readonly pose: Pose
}

/** King pin to the edges of the footprint: the swivel circle stays inside by the gap. */
function casterInset(base: CastersSpec): number {
  return base.inset === 'auto' ? base.item.swivelRadius + base.footprintGap : base.inset
}

type Corner = readonly [right: boolean, rear: boolean]
const CORNERS: readonly Corner[] = [
  [false, false],
  [true, false],
  [true, true],
  [false, true],
]

const FIXED_AT: Record<NonNullable<CastersSpec['fixed']>['end'], (corner: Corner) => boolean> = {
  left: ([right]) => !right,
  right: ([right]) => right,
  back: ([, rear]) => rear,
}

/** Four casters under the bottom panel, by the footprint of the module; two of them fixed where that is asked. */
export function placeCasters(spec: ModuleSpec, base: CastersSpec, bottom: PlacedPanel): Parts {
  const box = boardBox(bottom)
  const wheels = CORNERS.map((corner) => {
    const fixed = base.fixed !== undefined && FIXED_AT[base.fixed.end](corner) ? base.fixed : undefined
    return fixed === undefined ? swivelWheel(spec, base, corner, box) : fixedWheel(spec, base, fixed, corner, box)
  })
  const hardware = wheels.map(
    (wheel, k): PlacedHardware => ({
      id: `${spec.key}/casters/${k + 1}`,
      item: wheel.item,
      frame: spec.key,
      stations: [{ part: 'plate', panel: bottom.id, pose: wheel.pose, wood: 'ahead' }],
      settings: {},
      series: `${spec.key}/caster-${k + 1}`,
      ...(wheel.item.lift !== undefined && { note: `the foot lifts it by up to ${mm(wheel.item.lift)} mm` }),
      at: base.at,
    }),
  )
  const troubles =
    base.fixed === undefined
      ? circleTroubles(spec, base, bottom)
      : [...casterHeights(base, base.fixed, bottom), ...mixedTroubles(spec, base, bottom, wheels)]
  return partsOf({ hardware, troubles: [...troubles, ...plateTroubles(spec, base, bottom, wheels)] })
}

const at = (spec: ModuleSpec, [right, rear]: Corner, inX: number, inY: number): readonly [number, number] => [
  right ? spec.width - inX : inX,
  rear ? spec.depth - inY : inY,
]

function swivelWheel(spec: ModuleSpec, base: CastersSpec, corner: Corner, box: Box): Wheel {
  const { item } = base
  const inset = casterInset(base)
  const [x, y] = at(spec, corner, inset, inset)
  const plate = [item.plate.x / 2, item.plate.y / 2] as const
  return { item, x, y, plate, envelope: undefined, pose: poseOf(X, Y, [x, y, box.min[2]]) }
}

/**
 * A fixed caster rolls toward the end that it stands at. By the rule it stands as far in as the swivel casters do, and
 * further where its wheel would leave the footprint or its plate the bottom.
 */
function fixedWheel(
  spec: ModuleSpec,
  base: CastersSpec,
  fixed: NonNullable<CastersSpec['fixed']>,
  corner: Corner,
  box: Box,
): Wheel {
  const { item } = fixed
  const sideways = fixed.end !== 'back'
  const turned = (across: number, along: number): readonly [number, number] =>
    sideways ? [along / 2, across / 2] : [across / 2, along / 2]
  const plate = turned(item.plate.x, item.plate.y)
  const envelope = turned(
    Math.max(item.plate.x, item.wheel?.width ?? 0),
    Math.max(item.plate.y, item.wheel?.diameter ?? 0),
  )
  const [right, rear] = corner
  const edge = [right ? spec.width - box.max[0] : box.min[0], rear ? spec.depth - box.max[1] : box.min[1]] as const
  const least = (axis: 0 | 1): number => Math.max(base.footprintGap + envelope[axis], edge[axis] + plate[axis])
  const track = casterInset(base)
  const insets: readonly [number, number] =
    base.inset === 'auto' ? [Math.max(least(0), track), Math.max(least(1), track)] : [base.inset, base.inset]
  const [x, y] = at(spec, corner, ...insets)
  const pose = sideways ? poseOf(Y, MINUS_X, [x, y, box.min[2]]) : poseOf(X, Y, [x, y, box.min[2]])
  return { item, x, y, plate, envelope, pose }
}

function circleTroubles(spec: ModuleSpec, base: CastersSpec, bottom: PlacedPanel): PlacingTrouble[] {
  const inset = casterInset(base)
  const { swivelRadius } = base.item
  const between = Math.min(spec.width, spec.depth) - 2 * inset - 2 * swivelRadius
  const narrow = spec.width < spec.depth ? 'wide' : 'deep'
  const troubles: PlacingTrouble[] = []
  if (between < CIRCLES_APART_MM) {
    const least = 2 * inset + 2 * swivelRadius + CIRCLES_APART_MM
    troubles.push({
      rule: 'caster-circles',
      severity: between < 0 ? 'stop' : 'warn',
      panels: [bottom.id],
      message: `the swivel circles of two casters ${between < 0 ? `overlap by ${mm(-between)} mm` : `pass ${mm(between)} mm apart`}; the module is ${mm(Math.min(spec.width, spec.depth))} mm ${narrow}`,
      fix: `make it ${mm(least)} mm ${narrow} or more, or take a smaller caster`,
      at: base.at,
    })
  }
  troubles.push(...footprintTrouble(base, bottom, swivelRadius - inset))
  return troubles
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
      fix: `set \`inset: ${mm(base.item.swivelRadius + base.footprintGap)}\` or leave it to the rule`,
      at: base.at,
    },
  ]
}

/** The whole top plate must lie on the bottom panel. */
function plateTroubles(
  spec: ModuleSpec,
  base: CastersSpec,
  bottom: PlacedPanel,
  wheels: readonly Wheel[],
): PlacingTrouble[] {
  const box = boardBox(bottom)
  const beyond = ({ x, y, plate }: Wheel): number =>
    Math.max(
      box.min[0] - (x - plate[0]),
      x + plate[0] - box.max[0],
      box.min[1] - (y - plate[1]),
      y + plate[1] - box.max[1],
    )
  const worst = wheels.reduce((a, b) => (beyond(b) > beyond(a) + NOISE_MM ? b : a))
  if (beyond(worst) <= NOISE_MM) return []
  const { plate } = worst.item
  const inset = Math.min(worst.x, spec.width - worst.x, worst.y, spec.depth - worst.y)
  return [
    {
      rule: 'caster-plate',
      severity: 'stop',
      panels: [bottom.id],
      message: `a caster plate of ${mm(plate.x)} × ${mm(plate.y)} mm stands ${mm(beyond(worst))} mm beyond the bottom panel`,
      fix: `set the casters at least ${mm(inset + beyond(worst))} mm in`,
      at: base.at,
    },
  ]
}
