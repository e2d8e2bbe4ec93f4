import type { ClosedPath, Entity, Layer, Point, Text } from '../../drawing/index.ts'
import { MM_PER_INCH } from '../../length/index.ts'
import { type Arc, arcOf, turningPoints } from '../arc.ts'
import { segmentsOf } from '../check-drawing.ts'
import { asciiLabel } from './labels.ts'
import { CAPITAL_SHARE, textCorners } from './text-box.ts'

/** An entity as the file has it: numbers in the file's unit, already rounded. */
export type Shape = { readonly layer: string } & (
  | { readonly type: 'CIRCLE'; readonly at: Point; readonly radius: number }
  | { readonly type: 'LWPOLYLINE'; readonly vertices: readonly (readonly [x: number, y: number, bulge: number])[] }
  | { readonly type: 'LINE'; readonly from: Point; readonly to: Point }
  | {
      readonly type: 'ARC'
      readonly at: Point
      readonly radius: number
      readonly fromDeg: number
      readonly toDeg: number
    }
  | {
      readonly type: 'TEXT'
      readonly at: Point
      readonly height: number
      readonly turnDeg: number
      readonly anchor: Text['anchor']
      readonly text: string
    }
)

export interface ShapeOptions {
  readonly units: 'mm' | 'in'
  readonly contours: 'bulges' | 'lines and arcs'
}

/** Coordinates and radii. */
export const PLACES = 6
/** What is worked out from coordinates: bulges, arc centres and angles. Finer, so that ends still meet within 1e-6. */
export const DERIVED_PLACES = 9

/** The entities of one layer, in order. Texts that fold to nothing are left out. */
export function shapesOf(layer: Layer, options: ShapeOptions): Shape[] {
  return layer.entities.flatMap((entity) => shapes(layer.name, entity, options))
}

function shapes(layer: string, entity: Entity, options: ShapeOptions): Shape[] {
  const length = (mm: number) => round(options.units === 'in' ? mm / MM_PER_INCH : mm, PLACES)
  const point = ([x, y]: Point): Point => [length(x), length(y)]
  switch (entity.kind) {
    case 'circle':
      return [{ layer, type: 'CIRCLE', at: point(entity.at), radius: length(entity.radius) }]
    case 'line':
      return [{ layer, type: 'LINE', from: point(entity.from), to: point(entity.to) }]
    case 'path':
      return contour(layer, entity, point, options)
    case 'text': {
      const text = asciiLabel(entity.text)
      if (text === '') return []
      const { anchor, turnDeg = 0 } = entity
      return [
        {
          layer,
          type: 'TEXT',
          at: point(entity.at),
          height: length(entity.height * CAPITAL_SHARE),
          turnDeg,
          anchor,
          text,
        },
      ]
    }
    default:
      return entity satisfies never
  }
}

/** Each vertex is rounded once and used by both segments that meet there. */
function contour(layer: string, path: ClosedPath, point: (p: Point) => Point, options: ShapeOptions): Shape[] {
  const segments = segmentsOf(path).map(({ from, to, bulge }) => ({ from: point(from), to: point(to), bulge }))
  if (options.contours === 'bulges') {
    const vertices = segments.map(({ from, bulge }) => [from[0], from[1], round(bulge, DERIVED_PLACES)] as const)
    return [{ layer, type: 'LWPOLYLINE', vertices }]
  }
  return segments.map(({ from, to, bulge }) => {
    if (bulge === 0) return { layer, type: 'LINE', from, to }
    const { centre, radius } = arcOf(from, to, bulge)
    const angle = (p: Point) => degrees(Math.atan2(p[1] - centre[1], p[0] - centre[0]))
    // A DXF arc always runs counter-clockwise.
    const [first, last] = bulge > 0 ? [from, to] : [to, from]
    const at: Point = [round(centre[0], DERIVED_PLACES), round(centre[1], DERIVED_PLACES)]
    return { layer, type: 'ARC', at, radius: round(radius, DERIVED_PLACES), fromDeg: angle(first), toDeg: angle(last) }
  })
}

/** 0 or more and less than 360, also after rounding. */
function degrees(radians: number): number {
  const value = round((radians * 180) / Math.PI, DERIVED_PLACES)
  return value < 0 ? round(value + 360, DERIVED_PLACES) % 360 : value
}

/** Rounded to decimal places; never -0. Throws when it does not fit six digits before the point. */
export function round(value: number, places: number): number {
  if (!(Math.abs(value) < 999_999)) throw new RangeError(`${value} does not fit a DXF file`)
  const rounded = Number(value.toFixed(places))
  return rounded === 0 ? 0 : rounded
}

/** The box around all shapes, texts with the room that they take; undefined when there are none. */
export function boxOf(all: readonly Shape[]): { min: Point; max: Point } | undefined {
  if (all.length === 0) return undefined
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const shape of all) {
    for (const [x, y] of reach(shape)) {
      if (x < left) left = x
      if (x > right) right = x
      if (y < low) low = y
      if (y > high) high = y
    }
  }
  return {
    min: [round(left, PLACES), round(low, PLACES)],
    max: [round(right, PLACES), round(high, PLACES)],
  }
}

function reach(shape: Shape): Point[] {
  switch (shape.type) {
    case 'CIRCLE':
      return [
        [shape.at[0] - shape.radius, shape.at[1] - shape.radius],
        [shape.at[0] + shape.radius, shape.at[1] + shape.radius],
      ]
    case 'LINE':
      return [shape.from, shape.to]
    case 'TEXT':
      return textCorners(shape)
    case 'ARC':
      return arcReach(arcFrom(shape))
    case 'LWPOLYLINE':
      return shape.vertices.flatMap(([x, y, bulge], i) => {
        const next = shape.vertices[(i + 1) % shape.vertices.length]
        const from: Point = [x, y]
        return bulge === 0 || next === undefined
          ? [from]
          : [from, ...turningPoints(arcOf(from, [next[0], next[1]], bulge))]
      })
    default:
      return shape satisfies never
  }
}

function arcReach(arc: Arc): Point[] {
  const end = (angle: number): Point => [
    arc.centre[0] + arc.radius * Math.cos(angle),
    arc.centre[1] + arc.radius * Math.sin(angle),
  ]
  return [end(arc.start), end(arc.start + arc.sweep), ...turningPoints(arc)]
}

/** An ARC entity as an arc, counter-clockwise. */
function arcFrom(shape: Extract<Shape, { type: 'ARC' }>): Arc {
  const turn = shape.toDeg - shape.fromDeg
  return {
    centre: shape.at,
    radius: shape.radius,
    start: (shape.fromDeg * Math.PI) / 180,
    sweep: ((turn <= 0 ? turn + 360 : turn) * Math.PI) / 180,
  }
}
