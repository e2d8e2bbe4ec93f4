import { type Box, MINUS_X, NOISE_MM, type Pose, place, poseOf, X, Y } from '../../geometry/index.ts'
import type { Caster } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { CastersSpec, ModuleSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { gapBetween, holesIn, LEAST_WALL_MM, WALL_MM } from '../holes.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel } from '../types.ts'
import type { OnBottom } from './base.ts'
import { circleTroubles, plateTroubles } from './caster-troubles.ts'
import { casterHeights, mixedTroubles } from './fixed-casters.ts'

/** Kept between the swivel circles of casters of two modules, mm; common practice. */
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

/** King pin to the edges of the footprint by the rule: the swivel circle stays inside by the gap. */
export function ruleInset(base: CastersSpec): number {
  return base.inset === 'auto' ? base.item.swivelRadius + base.footprintGap : base.inset
}

/** By the rule a caster moves in at most so far for its plate and bolts, mm: two holes of a 32 mm row. Own choice. */
const FARTHEST_IN_MM = 64

/**
 * King pin to the edges of the footprint: as asked, or by the rule and from there further in, by whole millimetres, to
 * the first place where the plates lie whole on the bottom and the bolts clear what is in it and on it. Where no place
 * within reach is free, or the circles would meet, the rule's own, and the findings say why it will not do.
 */
function casterInset(spec: ModuleSpec, base: CastersSpec, bottom: PlacedPanel, on: OnBottom): number {
  const rule = ruleInset(base)
  if (base.inset !== 'auto') return rule
  const room = boltRoom(bottom, on)
  const stands = (inset: number, wall: number): boolean => {
    const wheels = wheelsOf(spec, base, inset, boardBox(bottom))
    return platesBeyond(wheels, boardBox(bottom)) <= NOISE_MM && wheels.every((wheel) => room(boltsOf(wheel), wall))
  }
  if (stands(rule, LEAST_WALL_MM)) return rule
  const most = Math.min(rule + FARTHEST_IN_MM, Math.min(spec.width, spec.depth) / 2 - base.item.swivelRadius)
  for (let inset = Math.ceil(rule - NOISE_MM); inset <= most; inset += 1) if (stands(inset, WALL_MM)) return inset
  return rule
}

/** Whether holes through the bottom keep a wall to other holes, cuts and panels that stand on it. */
function boltRoom(bottom: PlacedPanel, on: OnBottom): (bolts: readonly Box[], wall: number) => boolean {
  const { min, max } = boardBox(bottom)
  const standing = on.panels.map(boardBox).filter((box) => Math.abs(box.min[2] - max[2]) <= NOISE_MM)
  const cut = on.cuts.filter((one) => one.panel === bottom.id).map((one) => one.box)
  const taken = [...holesIn(bottom, on.panels, on.hardware), ...standing, ...cut]
  return (bolts, wall) =>
    bolts.every((bolt) => {
      const whole: Box = { min: [bolt.min[0], bolt.min[1], min[2]], max: [bolt.max[0], bolt.max[1], max[2]] }
      return taken.every((other) => gapBetween(whole, other) >= wall - NOISE_MM)
    })
}

/** The bolts of a caster, seen from above, module frame, mm. */
function boltsOf({ item, pose }: Wheel): Box[] {
  return (item.parts.plate ?? []).map(({ x, y, diameter }) => {
    const at = place(pose, [x, y, 0])
    const radius = diameter / 2
    return {
      min: [at[0] - radius, at[1] - radius, at[2]],
      max: [at[0] + radius, at[1] + radius, at[2]],
    }
  })
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
export function placeCasters(spec: ModuleSpec, base: CastersSpec, bottom: PlacedPanel, on: OnBottom): Parts {
  const inset = casterInset(spec, base, bottom, on)
  const wheels = wheelsOf(spec, base, inset, boardBox(bottom))
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
      ? circleTroubles(spec, base, inset, bottom)
      : [...casterHeights(base, base.fixed, bottom), ...mixedTroubles(spec, base, bottom, wheels)]
  return partsOf({ hardware, troubles: [...troubles, ...plateTroubles(spec, base, bottom, wheels)] })
}

function wheelsOf(spec: ModuleSpec, base: CastersSpec, inset: number, box: Box): Wheel[] {
  return CORNERS.map((corner) => {
    const fixed = base.fixed !== undefined && FIXED_AT[base.fixed.end](corner) ? base.fixed : undefined
    return fixed === undefined
      ? swivelWheel(spec, base, inset, corner, box)
      : fixedWheel(spec, base, fixed, inset, corner, box)
  })
}

const at = (spec: ModuleSpec, [right, rear]: Corner, inX: number, inY: number): readonly [number, number] => [
  right ? spec.width - inX : inX,
  rear ? spec.depth - inY : inY,
]

function swivelWheel(spec: ModuleSpec, base: CastersSpec, inset: number, corner: Corner, box: Box): Wheel {
  const { item } = base
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
  track: number,
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
  const insets: readonly [number, number] =
    base.inset === 'auto' ? [Math.max(least(0), track), Math.max(least(1), track)] : [base.inset, base.inset]
  const [x, y] = at(spec, corner, ...insets)
  const pose = sideways ? poseOf(Y, MINUS_X, [x, y, box.min[2]]) : poseOf(X, Y, [x, y, box.min[2]])
  return { item, x, y, plate, envelope, pose }
}

/** How far plates stand beyond the bottom panel, mm; negative or 0 where they lie on it. */
export function platesBeyond(wheels: readonly Wheel[], { min, max }: Box): number {
  return Math.max(
    ...wheels.flatMap(({ x, y, plate }) => [
      min[0] - (x - plate[0]),
      x + plate[0] - max[0],
      min[1] - (y - plate[1]),
      y + plate[1] - max[1],
    ]),
  )
}
