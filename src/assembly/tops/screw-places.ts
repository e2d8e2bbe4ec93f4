import { NOISE_MM } from '../../geometry/index.ts'
import { fastenerOffsets } from '../joints.ts'
import { type Area, grown } from './plan.ts'

/** Kept between the axis of a screw and an upright beside which it is driven, or a cut above its tip, mm; common practice. */
const CLEAR_MM = 15
/** Screws of one panel that were moved are no nearer to each other than this, mm; common practice. */
const APART_MM = 32

type Point = readonly [x: number, y: number]

/**
 * Places of the screws around an area, module frame, mm: at the end distance from its edges, in one line where it is
 * narrow, and nowhere in its middle. A screw that would meet one of the areas that are `taken` moves to the nearest
 * place that is free, toward the middle where two are as near; without one it is left out.
 */
export function screwPlaces(
  area: Area,
  taken: readonly Area[],
  spread: { readonly endDistance: number; readonly spacing: number },
): Point[] {
  const middle: Point = [(area.x0 + area.x1) / 2, (area.y0 + area.y1) / 2]
  const xs = lineOffsets(area.x1 - area.x0, spread).map((offset) => middle[0] + offset)
  const ys = lineOffsets(area.y1 - area.y0, spread).map((offset) => middle[1] + offset)
  const outer = (k: number, all: readonly number[]): boolean => k === 0 || k === all.length - 1
  const wanted = ys.flatMap((y, j) => xs.flatMap((x, i): Point[] => (outer(i, xs) || outer(j, ys) ? [[x, y]] : [])))
  // Nearer areas only, so that a search does not grow with the module.
  const shut = taken.map((one) => grown(one, CLEAR_MM))
  const chosen: Point[] = []
  for (const point of wanted) {
    const place = isFree(point, shut) ? point : nearestFree(point, area, middle, shut)
    if (place !== undefined && chosen.every((other) => distance(other, place) >= APART_MM - NOISE_MM))
      chosen.push(place)
  }
  return chosen
}

function lineOffsets(length: number, spread: { readonly endDistance: number; readonly spacing: number }): number[] {
  return length < 3 * spread.endDistance ? [0] : fastenerOffsets(length, spread)
}

const isFree = ([x, y]: Point, shut: readonly Area[]): boolean =>
  shut.every(
    ({ x0, x1, y0, y1 }) => x <= x0 + NOISE_MM || x >= x1 - NOISE_MM || y <= y0 + NOISE_MM || y >= y1 - NOISE_MM,
  )

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The nearest free place is on the border of what shuts the wanted one out, on one axis or on both. */
function nearestFree(point: Point, area: Area, middle: Point, shut: readonly Area[]): Point | undefined {
  const xs = [point[0], ...shut.flatMap(({ x0, x1 }) => [x0, x1])].filter((x) => within(x, area.x0, area.x1))
  const ys = [point[1], ...shut.flatMap(({ y0, y1 }) => [y0, y1])].filter((y) => within(y, area.y0, area.y1))
  const free = xs.flatMap((x) => ys.map((y): Point => [x, y])).filter((place) => isFree(place, shut))
  let best: Point | undefined
  for (const place of free) if (best === undefined || isBetter(place, best, point, middle)) best = place
  return best
}

const within = (value: number, low: number, high: number): boolean =>
  value >= low + CLEAR_MM - NOISE_MM && value <= high - CLEAR_MM + NOISE_MM

function isBetter(a: Point, b: Point, wanted: Point, middle: Point): boolean {
  const nearer = distance(a, wanted) - distance(b, wanted)
  return Math.abs(nearer) > NOISE_MM ? nearer < 0 : distance(a, middle) < distance(b, middle) - NOISE_MM
}
