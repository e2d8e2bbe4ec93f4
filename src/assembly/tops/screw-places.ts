import { NOISE_MM } from '../../geometry/index.ts'
import { fastenerOffsets } from '../joints/index.ts'
import type { Area } from './plan.ts'

/** From the edge of the panel to a screw that was moved, mm; common practice. */
const EDGE_MM = 15
/** Screws of one panel that were moved are no nearer to each other than this, mm; common practice. */
const APART_MM = 32

type Point = readonly [x: number, y: number]

/**
 * Places of the screws around an area, module frame, mm: at the end distance from its edges, in one line where it is
 * narrow, and nowhere in its middle. A screw whose axis would come into one of the areas that are `shut` moves to the nearest
 * place that is free, toward the middle where two are as near, and becomes two where it stood in the very middle; without
 * such a place it is left out.
 */
export function screwPlaces(
  area: Area,
  shut: readonly Area[],
  spread: { readonly endDistance: number; readonly spacing: number },
): Point[] {
  const middle: Point = [(area.x0 + area.x1) / 2, (area.y0 + area.y1) / 2]
  const xs = lineOffsets(area.x1 - area.x0, spread).map((offset) => middle[0] + offset)
  const ys = lineOffsets(area.y1 - area.y0, spread).map((offset) => middle[1] + offset)
  const outer = (k: number, all: readonly number[]): boolean => k === 0 || k === all.length - 1
  const wanted = ys.flatMap((y, j) => xs.flatMap((x, i): Point[] => (outer(i, xs) || outer(j, ys) ? [[x, y]] : [])))
  const chosen: Point[] = []
  for (const point of wanted) {
    const places = isFree(point, shut) ? [point] : nearestFree(point, area, middle, shut)
    // Measured against earlier screws alone: two that part from one middle stay together.
    const far = places.filter((place) => chosen.every((other) => distance(other, place) >= APART_MM - NOISE_MM))
    chosen.push(...far)
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

/**
 * The nearest free place; it is on the border of what shuts the wanted one out, on one axis or on both. Two of them
 * where they mirror each other, on both sides of a partition in the middle.
 */
function nearestFree(point: Point, area: Area, middle: Point, shut: readonly Area[]): Point[] {
  const xs = bordersIn([point[0], ...shut.flatMap(({ x0, x1 }) => [x0, x1])], area.x0, area.x1)
  const ys = bordersIn([point[1], ...shut.flatMap(({ y0, y1 }) => [y0, y1])], area.y0, area.y1)
  const free = xs.flatMap((x) => ys.map((y): Point => [x, y])).filter((place) => isFree(place, shut))
  return least(
    least(free, (place) => distance(place, point)),
    (place) => distance(place, middle),
  )
}

/** Each value once that lies far enough inside. */
function bordersIn(values: readonly number[], low: number, high: number): number[] {
  const inside = values.filter((value) => value >= low + EDGE_MM - NOISE_MM && value <= high - EDGE_MM + NOISE_MM)
  return inside.filter((value, k) => inside.findIndex((other) => Math.abs(other - value) <= NOISE_MM) === k)
}

/** All places whose figure is the least, but for float noise. */
function least(places: readonly Point[], figure: (place: Point) => number): Point[] {
  const best = Math.min(...places.map(figure))
  return places.filter((place) => figure(place) <= best + NOISE_MM)
}
