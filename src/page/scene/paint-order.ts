import { type Box, NOISE_MM, type Vec3 } from '../../geometry/index.ts'

/** In which order boxes are painted, and which lie before which; by their places in the list. */
export interface PaintOrder {
  /** From the furthest to the nearest. */
  readonly order: readonly number[]
  /** For each box, those that cover some of it. */
  readonly covers: readonly (readonly number[])[]
  /** How many had to be painted though they cover one that is not painted yet: boxes that lie over each other in a ring. */
  readonly rings: number
}

/**
 * The order for boxes along the axes that are looked at from (−1, −1, 1), which one sees from the front, from the left and from
 * above: of two that overlap on the drawing and are apart along some axis, the one on the eye's side of the plane between them is
 * nearer. Of two that reach into each other (a tongue in its groove) the plane is taken along the axis on which they do so least.
 */
export function paintOrder(boxes: readonly Box[]): PaintOrder {
  const covers: number[][] = boxes.map(() => [])
  const behind: number[] = boxes.map(() => 0)
  for (const [a, b] of overlapping(boxes)) {
    const [one, two] = [boxes[a], boxes[b]]
    if (one === undefined || two === undefined) continue
    const [far, near] = isNearer(one, two) ? [b, a] : [a, b]
    covers[far]?.push(near)
    behind[near] = (behind[near] ?? 0) + 1
  }
  return { ...sorted(boxes, covers, behind), covers }
}

/** What is the same all along a line of sight: two boxes overlap on the drawing where they share some of each of the three. */
const SIGHT: readonly ((v: Vec3, w: Vec3) => number)[] = [
  ([x], [, y]) => x - y,
  ([x], [, , z]) => x + z,
  ([, y], [, , z]) => y + z,
]

interface Span {
  readonly k: number
  readonly low: readonly number[]
  readonly high: readonly number[]
}

/** All pairs of boxes that overlap on the drawing; found by a sweep across it. */
function overlapping(boxes: readonly Box[]): [number, number][] {
  const spans = boxes
    .map(
      ({ min, max }, k): Span => ({
        k,
        low: SIGHT.map((of, n) => (n === 0 ? of(min, max) : of(min, min))),
        high: SIGHT.map((of, n) => (n === 0 ? of(max, min) : of(max, max))),
      }),
    )
    .sort((a, b) => (a.low[0] ?? 0) - (b.low[0] ?? 0))
  const pairs: [number, number][] = []
  let open: Span[] = []
  for (const span of spans) {
    open = open.filter((one) => shares(one, span, 0))
    for (const one of open) if (shares(one, span, 1) && shares(one, span, 2)) pairs.push([one.k, span.k])
    open.push(span)
  }
  return pairs
}

const shares = (a: Span, b: Span, n: number): boolean =>
  (a.high[n] ?? 0) - (b.low[n] ?? 0) > NOISE_MM && (b.high[n] ?? 0) - (a.low[n] ?? 0) > NOISE_MM

/** True where a lies before b. */
function isNearer(a: Box, b: Box): boolean {
  const before = (p: Box, q: Box): number => Math.max(q.min[0] - p.max[0], q.min[1] - p.max[1], p.min[2] - q.max[2])
  return before(a, b) > before(b, a)
}

/** What has nothing unpainted behind it comes next, in the order of the list; in a ring, what is furthest away. */
function sorted(
  boxes: readonly Box[],
  covers: readonly (readonly number[])[],
  behind: number[],
): Omit<PaintOrder, 'covers'> {
  const ready = behind.flatMap((count, k) => (count === 0 ? [k] : []))
  const done = boxes.map(() => false)
  const order: number[] = []
  let rings = 0
  const paint = (k: number): void => {
    done[k] = true
    order.push(k)
    for (const near of covers[k] ?? []) {
      behind[near] = (behind[near] ?? 0) - 1
      if (behind[near] === 0 && done[near] === false) ready.push(near)
    }
  }
  while (order.length < boxes.length) {
    for (let k = ready.shift(); k !== undefined; k = ready.shift()) paint(k)
    const left = boxes.flatMap((box, k) => (done[k] === true ? [] : [{ k, away: awayOf(box) }]))
    const [first, ...rest] = left
    if (first === undefined) break
    rings += 1
    paint(rest.reduce((best, one) => (one.away > best.away ? one : best), first).k)
  }
  return { order, rings }
}

/** How far the middle of a box lies along the line of sight. */
const awayOf = ({ min, max }: Box): number => min[0] + max[0] + min[1] + max[1] - min[2] - max[2]

/** True where a box lies between a point and the eye. */
export function coversPoint({ min, max }: Box, [x, y, z]: Vec3): boolean {
  const from = Math.max(0, x - max[0], y - max[1], min[2] - z)
  const to = Math.min(x - min[0], y - min[1], max[2] - z)
  return to - from > HIDES_MM
}

/** A box that is looked through along less than this hides nothing: its edge passes there. Own choice, mm. */
const HIDES_MM = 0.01
