import type { PocketScrew } from '../../hardware/index.ts'

/** Slant of a pocket bore to the face it enters, degrees [S32]. */
const POCKET_ANGLE_DEG = 15
/** Wood left beyond the tip of a pocket screw; common practice. */
const TIP_SKIN_MM = 3

export interface PocketFigures {
  /** From the end of the board to where the bit enters its face. */
  readonly entry: number
  /** Along the slant, from the face to the shoulder of the step. */
  readonly collar: number
  /** Of the screw in the other board. */
  readonly bite: number
}

/**
 * Where a pocket bore enters and how deep its step goes, mm. The axis leaves the end of the board in the middle of the
 * joint, `below` the face that it enters (half the thickness of a whole board), so it enters that face below / tan 15°
 * from the end, and below / sin 15° of wood lies on it. The screw
 * bites half its length into the other board, less where that would leave no skin; the rest of it stays in this one,
 * and the pocket is what remains. Own arithmetic.
 */
export function pocketFigures(item: PocketScrew, headThickness: number, below: number): PocketFigures {
  const angle = (POCKET_ANGLE_DEG * Math.PI) / 180
  const bite = Math.min(item.length / 2, (headThickness - TIP_SKIN_MM) / Math.cos(angle))
  return {
    entry: below / Math.tan(angle),
    collar: below / Math.sin(angle) - (item.length - bite),
    bite,
  }
}
