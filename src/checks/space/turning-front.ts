import { type Box, commonBox, cross, norm, type Vec2, type Vec3 } from '../../geometry/index.ts'
import { type Floor, type Front, type Hung, type Still, spanAlong } from './floor.ts'
import { type Axis, boundsOf, eachAxis, SHAVING_MM } from './parts-of.ts'
import { firstTurn } from './turning.ts'

/** The floor is long and deep enough for any flap, mm. */
const FLOOR_MM = 10_000
const DEGREES = 180 / Math.PI

/** What stops a front as it turns. */
export interface Stop {
  readonly degrees: number
  /** What of it meets: `it` or `its pull`. */
  readonly what: string
  /** Nothing for the floor. */
  readonly still?: Still
}

/** A flap hung at the bottom is held by its stays where it lies level. */
const opensTo = ({ hung }: { readonly hung: Hung }): number =>
  hung.flap && hung.across[2] > 0 ? Math.min(90, hung.hinge.openingDeg) : hung.hinge.openingDeg

/** The first thing that a front meets within its hinges' opening angle. */
export function firstStop(floor: Floor, front: Front, hung: Hung): Stop | undefined {
  const most = opensTo({ hung })
  const axis = cross(hung.across, front.out)
  const reach = sweptBox(front, hung)
  const stills = floor.stillsNear(reach, 0).flatMap((k) => floor.stills[k] ?? [])
  const around = stills.filter((still) => canMeet(floor, front, hung, still))
  const parts = front.boxes.map((part) => ({ ...part, flat: cornersOf(part.box, hung, front.out) }))
  let first: Stop | undefined
  const take = (radians: number | undefined, what: string, still?: Still): void => {
    if (radians === undefined) return
    const degrees = radians * DEGREES
    if (degrees >= most || (first !== undefined && degrees >= first.degrees)) return
    first = { degrees, what, ...(still !== undefined && { still }) }
  }
  for (const still of around) {
    const flat = cornersOf(still.box, hung, front.out)
    for (const { box, words, flat: moving } of parts) {
      if (shared(spanAlong(box, axis, hung.pivot), spanAlong(still.box, axis, hung.pivot))) {
        take(firstTurn(moving, flat), words, still)
      }
    }
  }
  // Upright across: the front comes down toward the floor.
  if (hung.flap && hung.across[2] > 0) {
    const ground = rectangle([-hung.pivot[2] - FLOOR_MM, -hung.pivot[2]], [-FLOOR_MM, FLOOR_MM])
    for (const { words, flat } of parts) take(firstTurn(flat, ground), words)
  }
  return first
}

const shared = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > SHAVING_MM

/** What stands out before the shut front, in the same island; not what turns with it, nor what shares its space. */
function canMeet(floor: Floor, front: Front, hung: Hung, { module, panel, box }: Still): boolean {
  if (front.ids.has(panel.id) || !floor.together(module, front.module)) return false
  // Fronts and panels that share space are found as they stand.
  if (front.boxes.some((one) => commonBox(one.box, box, SHAVING_MM) !== undefined)) return false
  return spanAlong(box, front.out, hung.pivot)[1] > SHAVING_MM
}

/** A box as a rectangle in the plane in which a front turns: across from its pivot, and out. */
function cornersOf(box: Box, { pivot, across }: Hung, out: Vec3): Vec2[] {
  return rectangle(spanAlong(box, across, pivot), spanAlong(box, out, pivot))
}

const rectangle = ([u0, u1]: readonly [number, number], [v0, v1]: readonly [number, number]): Vec2[] => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
]

/** The box about all places that a front can come to, floor frame. */
export function sweptBox(front: Front, { pivot, across }: Hung): Box {
  const around = boundsOf(front.boxes.map(({ box }) => box))
  const far = norm(eachAxis((k) => Math.max(Math.abs(around.min[k] - pivot[k]), Math.abs(around.max[k] - pivot[k]))))
  const turns = (k: Axis): boolean => front.out[k] !== 0 || across[k] !== 0
  return {
    min: eachAxis((k) => (turns(k) ? pivot[k] - far : around.min[k])),
    max: eachAxis((k) => (turns(k) ? pivot[k] + far : around.max[k])),
  }
}

/** What is met, with its module where that is another. */
export const stillWords = ({ module }: Front, { module: other, words }: Still): string =>
  other.key === module.key ? words : `${words} of ${other.name}`
