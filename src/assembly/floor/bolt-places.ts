import { NOISE_MM } from '../../geometry/index.ts'
import type { SharedRectangle } from './faces.ts'
import type { FacePoint, Obstacle } from './obstacles.ts'

/** Least distance between two rows of bolts; a rectangle with less takes one row in its middle. Common practice. */
const ROWS_APART_MM = 96
/** Limits of bolts between modules, mm. */
export interface BoltLimits {
  /** Wood between a bolt's bore and others. */
  readonly wall: number
  /** How far a bolt moves at most to clear what is in its way. */
  readonly farthest: number
}

/**
 * Places of the bolts along one side of the shared rectangle, mm: an inset from both ends, or one in the middle where
 * the two would stand close together.
 */
export function boltPlaces(low: number, high: number, inset: number): number[] {
  return high - low - 2 * inset < ROWS_APART_MM - NOISE_MM ? [(low + high) / 2] : [low + inset, high - inset]
}

/** A bolt in the shared rectangle, and how far it stands from where the insets put it, mm. */
export interface BoltPlace {
  readonly at: FacePoint
  readonly moved: FacePoint
  /** What was in the way there. */
  readonly off: readonly string[]
  /** No place is free within reach: it stands where the insets put it. */
  readonly blocked: boolean
}

/** A row or a column of bolts: where the insets put it, and between which limits it may move. */
interface Line {
  readonly at: number
  readonly from: number
  readonly to: number
  readonly farthest: number
}

export interface Insets {
  /** Upper and lower edge. */
  readonly end: number
  /** The other two. */
  readonly side: number
  /** Least distance of a bolt that moves to the edges of the rectangle; twice that between two. */
  readonly least: number
}

/**
 * The bolts of a shared rectangle, row by row from the lowest, clear of all obstacles. Where one of them is in the way,
 * whole columns move across, or whole rows up or down, whichever moves less, so that the bolts stay a rectangle; only
 * when neither helps do bolts move alone. By whole millimetres, the nearest place first.
 */
export function placeBolts(
  shared: SharedRectangle,
  insets: Insets,
  obstacles: readonly Obstacle[],
  farthest: number,
): BoltPlace[] {
  const columns = linesOf(shared.across, insets.side, insets.least, farthest)
  const rows = linesOf(shared.up, insets.end, insets.least, farthest)
  const isFree = (point: FacePoint): boolean => obstacles.every((obstacle) => !inWay(obstacle, point))
  const asWished = rows.flatMap((row) => columns.map((column): FacePoint => [column.at, row.at]))
  if (asWished.every(isFree)) {
    return asWished.map((at) => ({ at, moved: [0, 0], off: [], blocked: false }))
  }
  const whole = wholeLines(columns, rows, isFree)
  return rows.flatMap((row, j) =>
    columns.map((column, i): BoltPlace => {
      const wish: FacePoint = [column.at, row.at]
      const moved = whole === undefined ? moveAlone(column, row, isFree) : whole(i, j)
      const [across, up] = moved ?? [0, 0]
      const off = [...new Set(obstacles.filter((one) => inWay(one, wish)).map((one) => one.what))]
      return { at: [wish[0] + across, wish[1] + up], moved: [across, up], off, blocked: moved === undefined }
    }),
  )
}

function inWay({ min, max, clear }: Obstacle, [across, up]: FacePoint): boolean {
  const x = Math.max(min[0] - across, 0, across - max[0])
  const y = Math.max(min[1] - up, 0, up - max[1])
  // Most lie too far off along one axis alone.
  return x < clear && y < clear && Math.hypot(x, y) < clear - NOISE_MM
}

/** One line or two; each keeps to its own half, so that two never come near each other. */
function linesOf([low, high]: readonly [number, number], inset: number, least: number, farthest: number): Line[] {
  const places = boltPlaces(low, high, inset)
  const middle = (low + high) / 2
  return places.map((at, k) => ({
    at,
    from: k === 0 ? low + least : middle + least,
    to: k === places.length - 1 ? high - least : middle - least,
    farthest,
  }))
}

/** Distances that a line may move, mm, nearest first, and of two equal ones that toward the middle of its limits. */
function movesOf({ at, from, to, farthest }: Line): number[] {
  const inward = at > (from + to) / 2 ? -1 : 1
  const moves = [0]
  for (let step = 1; step <= farthest; step += 1) {
    for (const move of [step * inward, -step * inward]) {
      if (at + move >= from - NOISE_MM && at + move <= to + NOISE_MM) moves.push(move)
    }
  }
  return moves
}

/** How far the bolt of column i and row j moves when whole columns, or whole rows, move; nothing when neither helps. */
function wholeLines(
  columns: readonly Line[],
  rows: readonly Line[],
  isFree: (point: FacePoint) => boolean,
): ((column: number, row: number) => FacePoint) | undefined {
  const across = columns.map((column) =>
    movesOf(column).find((move) => rows.every((row) => isFree([column.at + move, row.at]))),
  )
  if (across.every((move) => move === 0)) return () => [0, 0]
  const up = rows.map((row) =>
    movesOf(row).find((move) => columns.every((column) => isFree([column.at, row.at + move]))),
  )
  const far = (moves: readonly (number | undefined)[]): number =>
    moves.reduce((sum: number, move) => sum + Math.abs(move ?? Number.POSITIVE_INFINITY), 0)
  if (!Number.isFinite(Math.min(far(across), far(up)))) return undefined
  return far(across) <= far(up) ? (i) => [across[i] ?? 0, 0] : (_, j) => [0, up[j] ?? 0]
}

/** The nearest free place of one bolt; nothing when there is none. */
function moveAlone(column: Line, row: Line, isFree: (point: FacePoint) => boolean): FacePoint | undefined {
  const ups = movesOf(row)
  const moves = movesOf(column).flatMap((across) => ups.map((up): FacePoint => [across, up]))
  // The sort is stable: of equally near places the first stays first.
  return moves
    .sort((a, b) => Math.hypot(...a) - Math.hypot(...b))
    .find(([across, up]) => isFree([column.at + across, row.at + up]))
}

/** Insets are tried in steps of this, mm; own choice. */
const INSET_STEP_MM = 8

/**
 * The insets nearest to those that are asked with which every bolt of a shared rectangle stands free as it is put, mm;
 * nothing where there are none.
 */
export function freeInsets(
  { across, up }: SharedRectangle,
  { end, side, least }: Insets,
  obstacles: readonly Obstacle[],
): { readonly end: number; readonly side: number } | undefined {
  const tries = (asked: number, [low, high]: readonly [number, number]): number[] => {
    const most = (high - low) / 2
    const count = Math.floor((most - least) / INSET_STEP_MM)
    const steps = Array.from({ length: Math.max(0, count + 1) }, (_, k) => Math.ceil(least) + k * INSET_STEP_MM)
    return [asked, ...steps].filter((inset) => inset >= least - NOISE_MM && inset <= most)
  }
  const pairs = tries(end, up).flatMap((e) => tries(side, across).map((s) => ({ end: e, side: s })))
  const off = (pair: { end: number; side: number }): number => Math.abs(pair.end - end) + Math.abs(pair.side - side)
  return pairs
    .sort((a, b) => off(a) - off(b))
    .find((pair) =>
      boltPlaces(...up, pair.end).every((y) =>
        boltPlaces(...across, pair.side).every((x) => obstacles.every((obstacle) => !inWay(obstacle, [x, y]))),
      ),
    )
}
