import { NOISE_MM } from '../geometry/index.ts'
import type { PieceEdge } from './piece-use.ts'
import { type StripFace, type StripHole, type StripRow, spanOf } from './strips-rows.ts'
import type { FacePoint, Rect } from './types.ts'

/** Shown beyond an edge that a strip is folded over or stopped at, mm. */
export const STRIP_FLAP = 8
/** An edge no further than this from a row is its fold line, mm: further off, paper between them only costs. */
const FOLD_REACH = 120
/** The end of the panel is the stop of a strip whose first hole is no further from it, mm. */
const STOP_REACH = 150
/** A strip folded over at either side of its row grows by twice its distance; no further from the edge than this, mm. */
const SECOND_REACH = 60
/** Kept beyond the rim of the last hole, mm. */
const BEYOND_END = 15
const BEYOND_SIDE = 12
/** To each side of a row that lies on a pencil line, mm, and beyond its ends where they are measured. */
const ABOUT = 22
const ABOUT_ENDS = 30
/** Of the panel at least, mm, so that there is room for words. */
const LEAST_ACROSS = 42
const LEAST_ALONG = 100

/** How a row's strip lies: the printed lines that are laid on edges of the panel, and the hole that is measured to. */
export interface StripShape {
  readonly row: StripRow
  readonly origin: StripHole
  /** The edge beside the row. */
  readonly fold?: PieceEdge
  /** The edge at its end. */
  readonly stop?: PieceEdge
  /** The fold line is printed a second time, at the other side of the row. */
  readonly second: boolean
}

export const sizeOfFace = ({ panel }: StripFace): FacePoint => [panel.length, panel.width]

/** The low and the high edge across an axis. */
export const edgesOf = (axis: 0 | 1): readonly [PieceEdge, PieceEdge] => (axis === 0 ? ['x0', 'x1'] : ['y0', 'y1'])

export const otherAxis = (axis: 0 | 1): 0 | 1 => (axis === 0 ? 1 : 0)

/** The shape of a row's strip without a second fold line. */
export function shapeOf(at: StripFace, row: StripRow): StripShape {
  const { along } = row
  const fold = row.edge ?? nearEdge(at, row, otherAxis(along), FOLD_REACH)
  const stop = nearEdge(at, row, along, STOP_REACH)
  const ends = edgesOf(along)
  const last = row.holes.at(-1) ?? row.holes[0]
  const begin = stop ?? datumSide(at, along)
  return {
    row,
    origin: begin === ends[0] ? row.holes[0] : last,
    second: false,
    ...(fold !== undefined && { fold }),
    ...(stop !== undefined && { stop }),
  }
}

/** The edge of the face that distances along an axis are measured from. */
export function datumSide({ panel, face }: StripFace, axis: 0 | 1): PieceEdge {
  if (axis === 1) return panel.datum.y
  const [low, high] = edgesOf(0)
  return (panel.datum.x === 'x0') === (face === 'A') ? low : high
}

/** The edge across an axis within reach of the row's nearer holes: the one that is measured from, else the nearer one. */
function nearEdge(at: StripFace, row: StripRow, axis: 0 | 1, reach: number): PieceEdge | undefined {
  const [low, high] = edgesOf(axis)
  const [from, to] = spanOf(row.holes, axis)
  const distances = { [low]: from, [high]: sizeOfFace(at)[axis] - to } as Partial<Record<PieceEdge, number>>
  const within = [low, high].filter((edge) => (distances[edge] ?? Infinity) <= reach + NOISE_MM)
  if (axis === row.along && within.includes(datumSide(at, axis))) return datumSide(at, axis)
  return within.sort((a, b) => (distances[a] ?? 0) - (distances[b] ?? 0))[0]
}

/** Whether a second fold line can be printed: all holes on one line near an edge, each square to the face. */
export function mayFoldTwice(at: StripFace, { row, fold }: StripShape): boolean {
  if (fold === undefined || row.edge !== undefined || !isOneLine(row)) return false
  const away = Math.abs(edgePlace(at, fold) - row.holes[0].at[otherAxis(row.along)])
  // The second line must lie on the panel: past its far edge it would be no other line, but one in the air.
  return away <= SECOND_REACH && 2 * away < sizeOfFace(at)[otherAxis(row.along)] - NOISE_MM
}

export function isOneLine(row: StripRow): boolean {
  const [from, to] = spanOf(row.holes, otherAxis(row.along))
  return to - from < NOISE_MM && row.holes.every(({ square }) => square)
}

/** Where an edge lies along the axis that it ends, mm. */
export function edgePlace(at: StripFace, edge: PieceEdge): number {
  if (edge === 'x0' || edge === 'y0') return 0
  return sizeOfFace(at)[edge === 'x1' ? 0 : 1]
}

/** What a strip shows of its face. */
export function windowOf(at: StripFace, shape: StripShape): Rect {
  const { along } = shape.row
  const length = alongOf(at, shape)
  const across = acrossOf(at, shape)
  return along === 0
    ? { min: [length[0], across[0]], max: [length[1], across[1]] }
    : { min: [across[0], length[0]], max: [across[1], length[1]] }
}

function rims(holes: readonly StripHole[], axis: 0 | 1): readonly [number, number] {
  return [
    Math.min(...holes.map(({ at, radius }) => at[axis] - radius)),
    Math.max(...holes.map(({ at, radius }) => at[axis] + radius)),
  ]
}

function alongOf(at: StripFace, { row, stop }: StripShape): readonly [number, number] {
  const whole = sizeOfFace(at)[row.along]
  const [low, high] = rims(row.holes, row.along)
  const ends = edgesOf(row.along)
  if (stop === ends[0]) return [-STRIP_FLAP, Math.min(Math.max(high + BEYOND_END, LEAST_ALONG), whole + STRIP_FLAP)]
  if (stop === ends[1])
    return [Math.max(Math.min(low - BEYOND_END, whole - LEAST_ALONG), -STRIP_FLAP), whole + STRIP_FLAP]
  const more = Math.max(ABOUT_ENDS, (LEAST_ALONG - high + low) / 2)
  return [Math.max(low - more, -STRIP_FLAP), Math.min(high + more, whole + STRIP_FLAP)]
}

function acrossOf(at: StripFace, { row, fold, second }: StripShape): readonly [number, number] {
  const axis = otherAxis(row.along)
  const whole = sizeOfFace(at)[axis]
  const [low, high] = rims(row.holes, axis)
  // A strip over an edge shows all of that edge's surface.
  const flap = row.edge === undefined ? STRIP_FLAP : at.panel.thickness + STRIP_FLAP / 2
  const line = row.holes[0].at[axis]
  if (fold === undefined) return [Math.max(low - ABOUT, -STRIP_FLAP), Math.min(high + ABOUT, whole + STRIP_FLAP)]
  if (fold === edgesOf(axis)[0]) {
    const wished = second ? 2 * line + STRIP_FLAP : high + BEYOND_SIDE
    const to = Math.min(whole + STRIP_FLAP, Math.max(wished, LEAST_ACROSS))
    return [-flap, to]
  }
  const wished = second ? 2 * line - whole - STRIP_FLAP : low - BEYOND_SIDE
  const from = Math.max(-STRIP_FLAP, Math.min(wished, whole - LEAST_ACROSS))
  return [from, whole + flap]
}
