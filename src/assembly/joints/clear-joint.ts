import { add, type Box, NOISE_MM, scale, type Vec3 } from '../../geometry/index.ts'
import { areApart, holesIn, LEAST_WALL_MM, WALL_MM } from '../holes.ts'
import type { PlacedCut, PlacedHardware, PlacedPanel } from '../types.ts'
import { contactOf } from './contact.ts'
import { fastenerOffsets, type JointRequest, placeJoint } from './joints.ts'

/** What is in the boards of a joint already, module frame. */
export interface InTheWay {
  readonly panels: readonly PlacedPanel[]
  readonly hardware: readonly PlacedHardware[]
  readonly cuts: readonly PlacedCut[]
}

/** A fastener moves at most so far along its joint, mm; own choice: less than half the usual spacing. */
const FARTHEST_MM = 60
/** From the end of a joint to a fastener that was moved, and between two, at least, mm; common practice. */
const END_MM = 15
const APART_MM = 30

/**
 * The fasteners of a joint, evenly spaced, but by whole millimetres to the nearest free place where they would meet
 * other holes or a housing in one of the two boards, toward the middle where two are as near. One that finds no place stays, and
 * the checks tell.
 */
export function placeClearJoint(request: JointRequest, there: InTheWay): ReturnType<typeof placeJoint> {
  const contact = request.contact ?? contactOf(request.head, request.tip)
  if (
    contact === undefined ||
    request.joint.item.kind === 'pocket screw' ||
    request.joint.item.kind === 'cam fitting'
  ) {
    return placeJoint(request)
  }
  const boards = [request.head, request.tip]
  // The holes of all fasteners of a joint are alike: those of one in its middle, moved along.
  const { hardware } = placeJoint({ ...request, contact, offsets: [0] })
  const pairs = boards.flatMap((board) => {
    const taken = takenIn(board, there)
    return holesIn(board, boards, hardware).map((hole) => ({ hole, taken }))
  })
  const isFree = (offset: number, wall: number): boolean =>
    pairs.every(({ hole, taken }) => {
      const moved = movedBy(hole, scale(contact.along, offset))
      return taken.every((other) => areApart(moved, other, wall - NOISE_MM))
    })
  const wishes = request.offsets ?? fastenerOffsets(contact.length, request.joint)
  const placed = wishes.map((wish) => (isFree(wish, LEAST_WALL_MM) ? wish : undefined))
  const reach = contact.length / 2 - END_MM
  wishes.forEach((wish, k) => {
    if (placed[k] !== undefined) return
    const others = [...placed.filter((one) => one !== undefined), ...wishes.filter((_, j) => j > k)]
    const found = nearest(wish).find(
      (offset) =>
        Math.abs(offset) <= reach &&
        others.every((other) => Math.abs(other - offset) >= APART_MM) &&
        isFree(offset, WALL_MM),
    )
    placed[k] = found ?? wish
  })
  return placeJoint({ ...request, contact, offsets: placed.map((offset, k) => offset ?? wishes[k] ?? 0) })
}

const movedBy = ({ min, max }: Box, by: Vec3): Box => ({ min: add(min, by), max: add(max, by) })

/** Places beside a wish, mm, nearest first, of two the one toward the middle of the joint. */
function nearest(wish: number): number[] {
  const inward = wish > 0 ? -1 : 1
  return Array.from({ length: FARTHEST_MM }, (_, k) => [wish + inward * (k + 1), wish - inward * (k + 1)]).flat()
}

/** Holes and housings in a board; not the groove or rebate of a back, which its screws stand at. */
function takenIn(board: PlacedPanel, { panels, hardware, cuts }: InTheWay): Box[] {
  const housings = cuts.filter((cut) => cut.panel === board.id && !cut.purpose.includes('for the back'))
  return [...holesIn(board, panels, hardware), ...housings.map(({ box }) => box)]
}
