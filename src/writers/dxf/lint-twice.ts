import type { Point } from '../../drawing/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import type { Report } from './lint-file.ts'

export interface Circle {
  readonly at: Point
  readonly radius: number
  readonly line: number
}

/** A straight segment, or an arc; the arc runs counter-clockwise from its start, whatever the sense of the segment. */
export interface Segment {
  readonly from: Point
  readonly to: Point
  readonly arc?: {
    readonly centre: Point
    readonly radius: number
    readonly startDeg: number
    readonly sweepDeg: number
  }
  /** 1 when the segment runs as its arc does, -1 against it. */
  readonly sense?: 1 | -1
  readonly line: number
}

/** Two lines this near each other are one cut; rounding to six decimals puts them no further apart. */
const SAME_PLACE = 10 * NOISE_MM
/** Less common length than this is two ends that meet. */
const MEETING = 100 * NOISE_MM

/** Circles with one centre and one radius. Sorted first, so that thousands are no trouble. */
export function twiceCircles(circles: readonly Circle[], report: Report): void {
  const sorted = circles.toSorted((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1])
  sorted.forEach((a, i) => {
    for (let k = i + 1; k < sorted.length; k++) {
      const b = sorted[k]
      if (b === undefined || b.at[0] - a.at[0] > SAME_PLACE) return
      const apart = Math.max(Math.abs(b.at[1] - a.at[1]), Math.abs(b.radius - a.radius))
      if (apart <= SAME_PLACE) report('twice', `lines ${a.line} and ${b.line}: one circle at ${a.at}`)
    }
  })
}

/** Segments that run over each other, in either direction, for more than a point. */
export function twiceSegments(segments: readonly Segment[], report: Report): void {
  const left = (s: Segment) => (s.arc === undefined ? Math.min(s.from[0], s.to[0]) : s.arc.centre[0] - s.arc.radius)
  const right = (s: Segment) => (s.arc === undefined ? Math.max(s.from[0], s.to[0]) : s.arc.centre[0] + s.arc.radius)
  const sorted = segments.toSorted((a, b) => left(a) - left(b))
  sorted.forEach((a, i) => {
    for (let k = i + 1; k < sorted.length; k++) {
      const b = sorted[k]
      if (b === undefined || left(b) - right(a) > SAME_PLACE) return
      if (overlap(a, b) > MEETING) report('twice', `lines ${a.line} and ${b.line}: one cut at ${b.from}`)
    }
  })
}

/** Length that two segments share. */
function overlap(a: Segment, b: Segment): number {
  if (a.arc === undefined && b.arc === undefined) return straightOverlap(a, b)
  return a.arc !== undefined && b.arc !== undefined ? arcOverlap(a.arc, b.arc) : 0
}

function straightOverlap(a: Segment, b: Segment): number {
  const [dx, dy] = [a.to[0] - a.from[0], a.to[1] - a.from[1]]
  const length = Math.hypot(dx, dy)
  if (length === 0) return 0
  const along = (p: Point) => ((p[0] - a.from[0]) * dx + (p[1] - a.from[1]) * dy) / length
  const beside = (p: Point) => Math.abs((p[0] - a.from[0]) * dy - (p[1] - a.from[1]) * dx) / length
  if (beside(b.from) > SAME_PLACE || beside(b.to) > SAME_PLACE) return 0
  const [s, t] = [along(b.from), along(b.to)]
  return Math.min(length, Math.max(s, t)) - Math.max(0, Math.min(s, t))
}

type Turn = NonNullable<Segment['arc']>

function arcOverlap(a: Turn, b: Turn): number {
  const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1])
  if (apart > MEETING || Math.abs(a.radius - b.radius) > MEETING) return 0
  // b's start, seen from a's; b may run past a's start again.
  const start = (((b.startDeg - a.startDeg) % 360) + 360) % 360
  const shared = (from: number) => Math.max(0, Math.min(a.sweepDeg, from + b.sweepDeg) - Math.max(0, from))
  return ((shared(start) + shared(start - 360)) * Math.PI * a.radius) / 180
}
