import type { ClosedPath, Drawing, Entity, Layer, Operation, Point } from '../drawing/index.ts'
import { areaOf, NOISE_MM } from '../geometry/index.ts'
import { arcOf, turningPoints } from './arc.ts'

const LAYER_NAME = /^[A-Z0-9][A-Z0-9_-]{0,30}$/
const ID = /^[a-z][a-z0-9_-]*$/
/** Coordinates stay under 100 m, so that six digits before the point always do. */
const FURTHEST_MM = 100_000
const LEAST_RADIUS_MM = 0.05
const LEAST_SEGMENT_MM = 0.001
const LEAST_AREA_MM2 = 1
/** A nearly full turn as one segment: tan(355° / 4) is 22.9. */
const LARGEST_BULGE = 23

/** What a machine cuts; `mark`, `note` and `finding` are for people. */
export const isCut = (operation: Operation): boolean =>
  operation !== 'mark' && operation !== 'note' && operation !== 'finding'

/**
 * Makes sure that a drawing keeps the promises of its types before it is written: names and ids, kinds of entity a
 * layer, finite coordinates, least sizes, and cuts and marks inside the view. A breach is a mistake of the program, so
 * it throws, naming the drawing, layer, entity, field and value. One that was found sound is not looked at again, since
 * drawings never change: SVG and DXF are written of the same one.
 */
export function checkDrawing(drawing: Drawing): void {
  if (sound.has(drawing)) return
  lookThrough(drawing)
  sound.add(drawing)
}

const sound = new WeakSet<Drawing>()

function lookThrough(drawing: Drawing): void {
  const fail = (what: string): never => {
    throw new Error(`drawing ${JSON.stringify(drawing.title)}: ${what}`)
  }
  const { min, max } = drawing.view
  for (const v of [...min, ...max, drawing.flipHeight ?? 0]) checkNumber(v, 'view', fail)
  if (!(max[0] > min[0] && max[1] > min[1])) fail(`the view from ${min} to ${max} is empty`)
  const names = new Set<string>()
  const ids = new Set<string>()
  for (const layer of drawing.layers) {
    if (!LAYER_NAME.test(layer.name))
      fail(`layer name ${JSON.stringify(layer.name)} is not made of A-Z 0-9 _ -, 31 at most`)
    if (names.has(layer.name)) fail(`two layers are named ${layer.name}`)
    names.add(layer.name)
    layer.entities.forEach((entity, index) => {
      const failHere = (what: string): never => fail(`layer ${layer.name}, ${entity.kind} ${index + 1}: ${what}`)
      checkKind(layer, entity, failHere)
      checkId(entity, ids, failHere)
      checkEntity(layer, entity, failHere)
      if (layer.operation !== 'note') checkInside(drawing, entity, failHere)
    })
  }
}

type Fail = (what: string) => never

function checkNumber(value: number, field: string, fail: Fail): void {
  if (!Number.isFinite(value) || Math.abs(value) >= FURTHEST_MM) fail(`${field} is ${value}`)
}

function checkKind(layer: Layer, entity: Entity, fail: Fail): void {
  const cut = isCut(layer.operation)
  if (cut && (entity.kind === 'line' || entity.kind === 'text')) fail(`not allowed on a layer for ${layer.operation}`)
  const words = layer.operation === 'note' || layer.operation === 'finding'
  if (entity.kind === 'text' && !words) fail('text stands only on layers of notes and findings')
  if (cut && entity.kind === 'path' && entity.filled === true) fail('filled shapes stand only on mark and note layers')
}

function checkId(entity: Entity, ids: Set<string>, fail: Fail): void {
  if (entity.kind === 'line' || entity.kind === 'text' || entity.id === undefined) return
  if (!ID.test(entity.id) || entity.id.startsWith('layer-')) fail(`id ${JSON.stringify(entity.id)} cannot be used`)
  if (ids.has(entity.id)) fail(`id ${entity.id} is used twice`)
  ids.add(entity.id)
}

function checkEntity(layer: Layer, entity: Entity, fail: Fail): void {
  const at = ([x, y]: Point, field: string) => {
    checkNumber(x, `${field} x`, fail)
    checkNumber(y, `${field} y`, fail)
  }
  switch (entity.kind) {
    case 'circle':
      at(entity.at, 'centre')
      checkNumber(entity.radius, 'radius', fail)
      if (entity.radius < LEAST_RADIUS_MM) fail(`radius is ${entity.radius}, at least ${LEAST_RADIUS_MM} mm is drawn`)
      return
    case 'line':
      at(entity.from, 'from')
      at(entity.to, 'to')
      if (distance(entity.from, entity.to) < LEAST_SEGMENT_MM) fail(`no length at ${entity.from}`)
      return
    case 'text':
      at(entity.at, 'place')
      checkNumber(entity.height, 'height', fail)
      if (entity.height < LEAST_RADIUS_MM) fail(`height is ${entity.height}`)
      return
    case 'path':
      checkPath(entity, at, fail)
      if (isCut(layer.operation)) checkArea(entity, fail)
      return
    default:
      entity satisfies never
  }
}

function checkPath(path: ClosedPath, at: (p: Point, field: string) => void, fail: Fail): void {
  if (path.vertices.length < 2) fail(`${path.vertices.length} vertices do not make a contour`)
  for (const { from, to, bulge } of segmentsOf(path)) {
    at(from, 'vertex')
    if (!Number.isFinite(bulge) || Math.abs(bulge) > LARGEST_BULGE) fail(`bulge is ${bulge} at ${from}`)
    if (distance(from, to) < LEAST_SEGMENT_MM) fail(`a segment without length at ${from}`)
    const flat = (Math.abs(bulge) * distance(from, to)) / 2 < NOISE_MM
    if (!flat && arcOf(from, to, bulge).radius >= FURTHEST_MM / 2)
      fail(`bulge ${bulge} at ${from} is too flat for an arc`)
  }
}

function checkArea(path: ClosedPath, fail: Fail): void {
  const area = Math.abs(areaOf(path.vertices))
  if (area < LEAST_AREA_MM2) fail(`area is ${area} mm²`)
}

/** The segments of a contour in order, the closing one last; a bulge too flat to tell from a line is 0. */
export function segmentsOf(path: ClosedPath): { from: Point; to: Point; bulge: number }[] {
  return path.vertices.map(({ at, bulge }, i) => {
    const to = path.vertices[(i + 1) % path.vertices.length]?.at ?? at
    const rise = (Math.abs(bulge) * distance(at, to)) / 2
    return { from: at, to, bulge: rise < NOISE_MM ? 0 : bulge }
  })
}

function checkInside(drawing: Drawing, entity: Entity, fail: Fail): void {
  const { min, max } = drawing.view
  for (const [x, y] of reachOf(entity)) {
    const out = Math.max(min[0] - x, x - max[0], min[1] - y, y - max[1])
    if (out > NOISE_MM) fail(`(${x}, ${y}) lies ${out} mm outside the view from ${min} to ${max}`)
  }
}

function reachOf(entity: Entity): Point[] {
  if (entity.kind === 'line') return [entity.from, entity.to]
  if (entity.kind === 'text') return [entity.at]
  if (entity.kind === 'circle') {
    const { at, radius } = entity
    return [
      [at[0] - radius, at[1] - radius],
      [at[0] + radius, at[1] + radius],
    ]
  }
  return segmentsOf(entity).flatMap(({ from, to, bulge }) =>
    bulge === 0 ? [from] : [from, ...turningPoints(arcOf(from, to, bulge))],
  )
}

const distance = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])
