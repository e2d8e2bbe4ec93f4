import { NOISE_MM } from '../geometry/index.ts'
import { boundsOfCut } from './hardware-cuts.ts'
import type { HardwarePiece, Pattern, PatternHole, PieceFold } from './hardware-types.ts'
import type { Rooms } from './packing.ts'
import type { Size } from './paper.ts'
import type { PieceEdge } from './piece-use.ts'
import type { FacePoint, Rect } from './types.ts'

/** A smaller piece is hard to hold and to fold, mm. */
const LEAST_SIDE = 40
/** Paper around what a piece shows, and between that and its words, mm. */
const AROUND = 9
const BESIDE = 6
/** Paper beyond a fold, mm: enough to press against the edge; more where holes lie in it. */
const FLAP = 13
const BEYOND_HOLE = 4
const OFF_FLOOR = 0.5
/** Between words and a centre line or a fold, mm. */
const OFF_LINE = 2

/** Room that the shortest words of a piece take, mm. */
export const FEW_WORDS: Size = { width: 62, height: 26 }

export type PieceLayout = Pick<HardwarePiece, 'paper' | 'words' | 'way'>

/** Which sides of a piece point left or down, and along which axis. */
export const axisOf = (side: PieceEdge): 0 | 1 => (side === 'x0' || side === 'x1' ? 0 : 1)
export const signOf = (side: PieceEdge): 1 | -1 => (side === 'x0' || side === 'y0' ? -1 : 1)

/** Whether a sheet has room for a piece that shows so much of a face, with its words; both ways round for the sheet. */
export function fitsSheet(rooms: Rooms): (bounds: Rect) => boolean {
  return (bounds) => placed(grown(bounds, AROUND), bounds, [], [], [], [FEW_WORDS], rooms) !== undefined
}

/**
 * Where the paper of a piece is cut, and where its words stand: beside what it shows, off its folds and centre lines,
 * in the one of the `ways` to set them that makes the smallest piece. Nothing where no sheet has room for that.
 */
export function layoutOf(
  pattern: Pattern,
  folds: readonly PieceFold[],
  lines: readonly (0 | 1)[],
  ways: readonly Size[],
  rooms: Rooms,
): PieceLayout | undefined {
  const shown = extentOf(pattern)
  const paper = folds.reduce((rect, fold) => withFlap(rect, fold, pattern), grown(shown, AROUND))
  return placed(paper, shown, pattern.holes, folds, lines, ways, rooms)
}

/** All that lies flat on the face, with the reference point: piece frame, mm. */
export function extentOf({ holes, cuts, reference }: Pattern): Rect {
  const rounds = holes.filter(({ flap }) => flap === undefined)
  const rects: Rect[] = [
    { min: reference, max: reference },
    ...rounds.map(({ at, radius }) => grown({ min: at, max: at }, radius)),
    ...cuts.map(boundsOfCut),
  ]
  return union(rects)
}

function withFlap({ min, max }: Rect, { side, mm }: PieceFold, { holes, reference }: Pattern): Rect {
  const axis = axisOf(side)
  const flat = holes.filter(({ flap }) => flap?.side === side)
  const flap = Math.max(...flat.map(flapOf), flat.length === 0 ? FLAP : 0)
  const end = reference[axis] + signOf(side) * (mm + flap)
  // Holes in the edge need paper along it as well.
  const along = axis === 0 ? 1 : 0
  const low = Math.min(min[along], ...flat.map(({ at, radius }) => at[along] - radius - AROUND))
  const high = Math.max(max[along], ...flat.map(({ at, radius }) => at[along] + radius + AROUND))
  const [from, to] = signOf(side) < 0 ? [end, max[axis]] : [min[axis], end]
  return axis === 0 ? { min: [from, low], max: [to, high] } : { min: [low, from], max: [high, to] }
}

/** To the floor of a rebate, which would hold the paper up; beyond the far arris of an edge, so that it can be laid on that. */
function flapOf({ radius, flap }: PatternHole): number {
  if (flap === undefined) return FLAP
  const hole = flap.fromFace + radius
  return flap.shoulder
    ? Math.max(flap.deep - OFF_FLOOR, hole + 1)
    : Math.max(FLAP, hole + BEYOND_HOLE, flap.deep + BEYOND_HOLE)
}

function placed(
  paper: Rect,
  shown: Rect,
  holes: readonly PatternHole[],
  folds: readonly PieceFold[],
  lines: readonly (0 | 1)[],
  ways: readonly Size[],
  rooms: Rooms,
): PieceLayout | undefined {
  const whole = union([shown, ...holes.map(({ at, radius }) => grown({ min: at, max: at }, radius))])
  let best: PieceLayout | undefined
  let least = Number.POSITIVE_INFINITY
  ways.forEach((size, way) => {
    for (const words of spots(size, paper, shown, whole, folds, lines)) {
      // A hole in an edge may be wider than the edge is high.
      if (holes.some(({ at, radius }) => meets(words, at, radius))) continue
      const all = handy(union([paper, grown(words, 2)]), folds)
      const area = (all.max[0] - all.min[0]) * (all.max[1] - all.min[1])
      if (area >= least - NOISE_MM || !isIn(all, rooms)) continue
      best = { paper: all, words, way }
      least = area
    }
  })
  return best
}

/** Grown to a size that can be held, on sides without a fold: paper beyond those may lie in the way. */
function handy(rect: Rect, folds: readonly PieceFold[]): Rect {
  const isFree = (side: PieceEdge): boolean => !folds.some((fold) => fold.side === side)
  const grownAlong = (axis: 0 | 1): readonly [number, number] => {
    const [low, high] = axis === 0 ? [isFree('x0'), isFree('x1')] : [isFree('y0'), isFree('y1')]
    const lack = Math.max(0, LEAST_SIDE - (rect.max[axis] - rect.min[axis]))
    if (!low && !high) return [rect.min[axis], rect.max[axis]]
    const below = low && high ? lack / 2 : low ? lack : 0
    return [rect.min[axis] - below, rect.max[axis] + (lack - below)]
  }
  const [x, y] = [grownAlong(0), grownAlong(1)]
  return { min: [x[0], y[0]], max: [x[1], y[1]] }
}

function meets({ min, max }: Rect, [x, y]: FacePoint, radius: number): boolean {
  return Math.hypot(Math.max(min[0] - x, 0, x - max[0]), Math.max(min[1] - y, 0, y - max[1])) < radius
}

/** Places for a block of words: on each side of what is shown, at its ends and beside the lines that it must not cross. */
function spots(
  { width, height }: Size,
  paper: Rect,
  shown: Rect,
  whole: Rect,
  folds: readonly PieceFold[],
  lines: readonly (0 | 1)[],
): Rect[] {
  const free = freeOf(folds)
  const starts = (axis: 0 | 1, long: number): number[] => {
    const beside = lines.includes(axis === 0 ? 1 : 0) ? [OFF_LINE, 0 - OFF_LINE - long] : []
    const ends = [shown.min[axis], shown.max[axis] - long, (shown.min[axis] + shown.max[axis] - long) / 2]
    const inPaper = [paper.min[axis] + 2, paper.max[axis] - long - 2]
    return [...beside, ...ends, ...inPaper, free.min[axis], free.max[axis] - long].filter(Number.isFinite)
  }
  const beside = (axis: 0 | 1, long: number): number[] =>
    [shown, whole].flatMap(({ min, max }) => [max[axis] + BESIDE, min[axis] - BESIDE - long])
  const corners: FacePoint[] = [
    ...beside(0, width).flatMap((x) => starts(1, height).map((y): FacePoint => [x, y])),
    ...beside(1, height).flatMap((y) => starts(0, width).map((x): FacePoint => [x, y])),
  ]
  return corners
    .map((min): Rect => ({ min, max: [min[0] + width, min[1] + height] }))
    .filter((rect) => lies(rect, free) && lines.every((line) => isOff(rect, line)))
}

/** Inside all folds. */
function freeOf(folds: readonly PieceFold[]): Rect {
  const bound = (side: PieceEdge): number => {
    const fold = folds.find((one) => one.side === side)
    const out = signOf(side)
    return fold === undefined ? out * Number.POSITIVE_INFINITY : out * (fold.mm - OFF_LINE)
  }
  return { min: [bound('x0'), bound('y0')], max: [bound('x1'), bound('y1')] }
}

const lies = (inner: Rect, outer: Rect): boolean =>
  ([0, 1] as const).every((k) => inner.min[k] >= outer.min[k] - NOISE_MM && inner.max[k] <= outer.max[k] + NOISE_MM)

/** A level line runs at y = 0, an upright one at x = 0. */
function isOff({ min, max }: Rect, line: 0 | 1): boolean {
  const across = line === 0 ? 1 : 0
  return min[across] >= OFF_LINE - NOISE_MM || max[across] <= NOISE_MM - OFF_LINE
}

function isIn({ min, max }: Rect, { upright, lying }: Rooms): boolean {
  const [wide, high] = [max[0] - min[0], max[1] - min[1]]
  return [upright, lying].some(({ width, height }) => wide <= width && high <= height)
}

const grown = ({ min, max }: Rect, by: number): Rect => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
})

function union(rects: readonly Rect[]): Rect {
  return {
    min: [Math.min(...rects.map(({ min }) => min[0])), Math.min(...rects.map(({ min }) => min[1]))],
    max: [Math.max(...rects.map(({ max }) => max[0])), Math.max(...rects.map(({ max }) => max[1]))],
  }
}
