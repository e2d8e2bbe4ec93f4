import { NOISE_MM, same } from '../../geometry/index.ts'
import { type CupHinge, PLATE_BEYOND_MM } from '../../hardware/index.ts'

/** A plate and a cup distance that give an overlay, mm. */
export interface HingeSetting {
  readonly plateHeight: number
  readonly cupDistance: number
}

/**
 * Plate height H and cup distance C with overlay = K + C − H (the same formula in four makers' papers: S9, S12, S15,
 * S16), C inside the hinge's permitted range and as near as can be to its usual value; of two as near, the lower plate.
 * An inset gap is a negative overlay. When no plate reaches the overlay: the nearest overlay that one does reach.
 */
export function solveOverlay(hinge: CupHinge, overlay: number): HingeSetting | { readonly nearest: number } {
  const { min, max, usual } = hinge.cupDistance
  const offUsual = (setting: HingeSetting): number => Math.abs(setting.cupDistance - usual)
  const fits = hinge.plateHeights
    .map((plateHeight) => ({ plateHeight, cupDistance: overlay - hinge.base + plateHeight }))
    .filter(({ cupDistance }) => cupDistance >= min - NOISE_MM && cupDistance <= max + NOISE_MM)
    // Two that are as near but for float noise are as near, so that both hands of a pair choose alike.
    .sort((a, b) => (same(offUsual(a), offUsual(b)) ? a.plateHeight - b.plateHeight : offUsual(a) - offUsual(b)))
  const best = fits[0]
  if (best !== undefined) return best
  const reachable = hinge.plateHeights.flatMap((height) => [hinge.base + min - height, hinge.base + max - height])
  const nearest = reachable.reduce((a, b) => (Math.abs(b - overlay) < Math.abs(a - overlay) ? b : a))
  return { nearest }
}

/** Mass (kg) and height (mm) up to which a door may hang on so many hinges [S11, table H1 of the trade]. */
const HINGE_TABLE = [
  { hinges: 2, mass: 5, height: 900 },
  { hinges: 3, mass: 9, height: 1600 },
  { hinges: 4, mass: 15, height: 2000 },
  { hinges: 5, mass: 22, height: 2500 },
] as const

/** Wider doors take one hinge more [S13]. */
const WIDE_DOOR_MM = 600

/** Mass of a door in kg: area × thickness × density (mm, kg/m³). */
export function doorMass(height: number, width: number, thickness: number, density: number): number {
  return (height * width * thickness * density) / 1e9
}

/**
 * Hinges for a door: the larger of the numbers by height and by mass, one more when wider than 600 mm.
 * `undefined` when it is beyond the table.
 */
export function hingesNeeded(height: number, width: number, mass: number): number | undefined {
  const row = HINGE_TABLE.find((line) => mass <= line.mass + NOISE_MM && height <= line.height + NOISE_MM)
  if (row === undefined) return undefined
  return row.hinges + (width > WIDE_DOOR_MM + NOISE_MM ? 1 : 0)
}

/** The most that the table allows, for messages. */
export const HINGE_LIMIT = { mass: 22, height: 2500 } as const

/** A grid that hinge plates share with a pin column: plate holes at z = datum + k × pitch. */
export interface PlateGrid {
  readonly datum: number
  readonly pitch: number
}

/**
 * Heights of the hinges' middles between `low` and `high` (the door's ends, any frame), mm, ascending: the outermost
 * `end` from the ends (at most: S12), a quarter of the height on a door lower than four times that, the rest evenly
 * between. With a grid, each is moved so that its two plate holes fall on the grid: the outermost toward the door's
 * ends, so that `end` is never exceeded, unless less than `room` would be left there for the cup.
 */
export function hingeHeights(
  low: number,
  high: number,
  count: number,
  limits: { readonly end: number; readonly room: number },
  grid?: PlateGrid,
): number[] {
  const end = Math.min(limits.end, (high - low) / 4)
  const first = low + end
  const last = high - end
  const even = Array.from({ length: count }, (_, k) =>
    k === count - 1 ? last : first + (k * (last - first)) / (count - 1),
  )
  if (grid === undefined) return even
  const middle = grid.datum + grid.pitch / 2
  const steps = (z: number): number => (z - middle) / grid.pitch
  return even.map((z, k) => {
    if (k === 0) {
      const down = middle + Math.floor(steps(z) + NOISE_MM) * grid.pitch
      return down - low < limits.room - NOISE_MM ? down + grid.pitch : down
    }
    if (k === count - 1) {
      const up = middle + Math.ceil(steps(z) - NOISE_MM) * grid.pitch
      return high - up < limits.room - NOISE_MM ? up - grid.pitch : up
    }
    return middle + Math.round(steps(z)) * grid.pitch
  })
}

/** A stretch of height, mm. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** Half the height of a hinge plate and its arm: 16 to the holes (S1), and what it reaches beyond them, mm. */
export const PLATE_REACH_MM = 16 + PLATE_BEYOND_MM

/** Whether a plate at this height stands against a fixed shelf. */
export function foulsShelf(height: number, shelves: readonly Span[]): boolean {
  return shelves.some(
    ({ from, to }) => height > from - PLATE_REACH_MM + NOISE_MM && height < to + PLATE_REACH_MM - NOISE_MM,
  )
}

/**
 * A hinge's height, moved to the nearest at which its plate clears every fixed shelf, within the limits; by whole steps
 * where there is a grid to stay on. Where no height is clear it stays, and the checks say so.
 */
export function clearOfShelves(z: number, shelves: readonly Span[], limits: Span, step?: number): number {
  const fouls = (height: number): boolean => foulsShelf(height, shelves)
  if (!fouls(z)) return z
  const places =
    step === undefined
      ? shelves.flatMap(({ from, to }) => [from - PLATE_REACH_MM, to + PLATE_REACH_MM])
      : Array.from({ length: Math.ceil((limits.to - limits.from) / step) }, (_, k) => [
          z - (k + 1) * step,
          z + (k + 1) * step,
        ]).flat()
  const clear = places.filter((height) => height >= limits.from && height <= limits.to && !fouls(height))
  return (
    clear.reduce<number | undefined>(
      (best, height) => (best === undefined || Math.abs(height - z) < Math.abs(best - z) - NOISE_MM ? height : best),
      undefined,
    ) ?? z
  )
}

/** Behind an inset door the inside begins this much beyond the door's hidden face [S10]; the plate line counts from there. */
export const INSET_CLEARANCE_MM = 1.5
