import { type Box, boxSolid, cylinder, MINUS_Z, type Vec3, Z } from '../../geometry/index.ts'
import type { LevellingFoot } from '../kinds/levelling-foot.ts'
import { PLATE_BEYOND_MM } from '../lying.ts'
import type { Caster, CupHinge, DrawerSlide, FlapStay, JoiningBolt, Pull } from '../types.ts'
import type { Body, Surroundings } from './types.ts'

/** A head stands 0.7 of the bolt's diameter (ISO 4014, from memory), and the washer below it so much, mm: common practice. */
const HEAD_SHARE = 0.7
const WASHER_MM = 2
/** The flange of a tee nut, a sleeve's head or the rim of an insert, and what the bolt stands out of it, mm; common practice. */
const NUT_MM = 4

const disc = (at: Vec3, away: Vec3, height: number, diameter: number): Body['solid'] =>
  cylinder(at, away, height, diameter / 2)

const holeOf = (item: JoiningBolt | Caster, part: string): number => item.parts[part]?.[0]?.diameter ?? 0

/** The head with its washer on the far face of its board, the flange of the nut on that of the other. */
export function boltBodies(item: JoiningBolt, { thicknessOf }: Surroundings): Body[] {
  const height = HEAD_SHARE * holeOf(item, 'head') + WASHER_MM
  return [
    { part: 'head', name: 'head', solid: disc([0, 0, -thicknessOf('head')], MINUS_Z, height, item.headDiameter) },
    { part: 'nut', name: 'nut', solid: disc([0, 0, thicknessOf('nut')], Z, NUT_MM, item.nutDiameter) },
  ]
}

/** Flange or rim on the upper face of the bottom; under it the spindle's pad. */
export function footBodies(item: LevellingFoot, { thicknessOf }: Surroundings): Body[] {
  return [
    { part: 'bottom', name: 'nut', solid: disc([0, 0, thicknessOf('bottom')], Z, NUT_MM, item.flangeDiameter) },
    { part: 'bottom', name: 'pad', solid: disc([0, 0, 0], MINUS_Z, item.height, item.padDiameter) },
  ]
}

/** A washer is about twice as wide as the hole that it lies on (ISO 7089, from memory). */
const WASHER_SHARE = 2

/** The plate under the bottom, the nuts on it, and what the wheel takes up as it swivels or rolls. */
export function casterBodies(item: Caster, { thicknessOf }: Surroundings): Body[] {
  const { x, y } = item.plate
  const diameter = holeOf(item, 'plate')
  const nuts = (item.parts.plate ?? []).map((hole): Body => {
    const at: Vec3 = [hole.x, hole.y, thicknessOf('plate')]
    return {
      part: 'plate',
      name: 'nut',
      solid: disc(at, Z, HEAD_SHARE * diameter + WASHER_MM, WASHER_SHARE * diameter),
    }
  })
  const plate: Box = { min: [-x / 2, -y / 2, -WASHER_MM], max: [x / 2, y / 2, 0] }
  return [{ part: 'plate', name: 'plate', solid: boxSolid(plate) }, ...nuts, ...wheelBody(item)]
}

function wheelBody({ wheel, swivelRadius, overallHeight }: Caster): Body[] {
  if (wheel === undefined) {
    if (swivelRadius <= 0) return []
    return [{ part: 'plate', name: 'wheel', solid: disc([0, 0, 0], MINUS_Z, overallHeight, 2 * swivelRadius) }]
  }
  const box: Box = {
    min: [-wheel.width / 2, -wheel.diameter / 2, -overallHeight],
    max: [wheel.width / 2, wheel.diameter / 2, 0],
  }
  return [{ part: 'plate', name: 'wheel', solid: boxSolid(box) }]
}

/** The arm is so wide, and ends so far behind the line of the plate's holes, mm; common practice, measure yours. */
const ARM_WIDTH_MM = 18
const ARM_BEHIND_MM = 20
/** A plate of height 0 is so thick, mm; common practice, measure yours. */
const PLATE_MM = 10

/**
 * Plate and arm on the wall. The arm, shut or open, stands into the opening as far as the item says, and reaches forward
 * to the front edge of the wall, or as far before its plate line.
 */
export function hingeBodies(item: CupHinge): Body[] {
  const holes = item.parts.plate ?? []
  const along = Math.max(0, ...holes.map((hole) => Math.abs(hole.y))) + PLATE_BEYOND_MM
  const plate: Box = {
    min: [-PLATE_BEYOND_MM, -along, -Math.min(PLATE_MM, item.standsIn)],
    max: [PLATE_BEYOND_MM, along, 0],
  }
  const arm: Box = {
    min: [-item.plateLine, -ARM_WIDTH_MM / 2, -item.standsIn],
    max: [ARM_BEHIND_MM, ARM_WIDTH_MM / 2, 0],
  }
  return [
    { part: 'plate', name: 'plate', solid: boxSolid(plate) },
    { part: 'plate', name: 'arm', solid: boxSolid(arm) },
  ]
}

/** The body of a slide, shut, between its wall and the box. */
export function slideBodies({ length, height, thickness }: DrawerSlide): Body[] {
  const box: Box = { min: [0, -height / 2, -thickness], max: [length, height / 2, 0] }
  return [{ part: 'cabinet', name: 'slide', solid: boxSolid(box) }]
}

/** A bracket stands out so far, mm; common practice, measure yours. */
const BRACKET_MM = 12

export function stayBodies({ bracket: { x, y } }: FlapStay): Body[] {
  const solid = boxSolid({ min: [-x, -y, -BRACKET_MM], max: [x, y, 0] })
  return [
    { part: 'carcase', name: 'bracket', solid },
    { part: 'flap', name: 'bracket', solid },
  ]
}

/** Pulls stand out so far, are so wide, and reach so far beyond their holes, mm; common practice, measure yours. */
export const PULL_OUT_MM = 35
const PULL_WIDE_MM = 12
const PULL_BEYOND_MM = 8
/** Knobs, mm; common practice. */
const KNOB_WIDE_MM = 30
/** Head of an M4 pan head screw (ISO 7045, from memory), mm. */
const SCREW_HEAD = { diameter: 8, height: 3.1 } as const

/** The grip before the show face, and the heads of its screws behind the boards that they go through. */
export function pullBodies(item: Pull, inner: string, { thicknessOf }: Surroundings): Body[] {
  const [wide, along] =
    item.centres === 0 ? [KNOB_WIDE_MM, KNOB_WIDE_MM / 2] : [PULL_WIDE_MM, item.centres / 2 + PULL_BEYOND_MM]
  const grip: Box = { min: [-wide / 2, -along, -PULL_OUT_MM], max: [wide / 2, along, 0] }
  const heads = (item.parts[inner] ?? []).map((hole): Body => {
    const at: Vec3 = [hole.x, hole.y, thicknessOf(inner)]
    return { part: inner, name: 'screw head', solid: disc(at, Z, SCREW_HEAD.height, SCREW_HEAD.diameter) }
  })
  return [{ part: 'front', name: 'grip', solid: boxSolid(grip) }, ...heads]
}
