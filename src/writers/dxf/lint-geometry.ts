import type { Operation, Point } from '../../drawing/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import { isCut } from '../check-drawing.ts'
import type { LintFile, Located, Report } from './lint-file.ts'
import { type Circle, type Segment, twiceCircles, twiceSegments } from './lint-twice.ts'
import { firstOf, type Pair } from './pairs.ts'
import { type FileText, textCorners } from './text-box.ts'

/** What one entity draws, read back from its pairs; lengths in the file's unit. */
interface Drawn {
  readonly kind: string
  readonly layer: string
  readonly operation: Operation | undefined
  readonly line: number
  readonly circles: readonly Circle[]
  readonly segments: readonly Segment[]
  readonly points: readonly Point[]
}

const LEAST_RADIUS_MM = 0.05
const LEAST_SEGMENT_MM = 0.001
const LEAST_AREA_MM2 = 1
/** What six decimals leave of a length that is exactly the least one. */
const ROUNDING = 2 * NOISE_MM

/** How far the finished panel reaches beyond the outline at each side, as drawn. */
export type Lippings = Readonly<Record<'left' | 'right' | 'low' | 'high', number>>

export const NO_LIPPINGS: Lippings = { left: 0, right: 0, low: 0, high: 0 }

/** Rules `contours`, `sizes`, `angles`, `twice`, `place` and the extents of `header`. */
export function geometryFaults(file: LintFile, report: Report, lippings: Lippings): void {
  const mm = file.header.get('$INSUNITS')?.[0]?.value === '1' ? 25.4 : 1
  const drawn = (file.sections.get('ENTITIES')?.slice(1) ?? []).map((entity) => read(entity, file, report))
  for (const entity of drawn) sizeFaults(entity, mm, report)
  for (const layer of new Set(drawn.map((d) => d.layer)))
    loopFaults(
      drawn.filter((d) => d.layer === layer),
      mm,
      report,
    )
  twiceFaults(drawn, report)
  placeFaults(drawn, report, lippings)
  extentFaults(drawn, file, report)
}

const real = (record: readonly Pair[], code: number): number => Number(firstOf(record, code) ?? Number.NaN)

function read(entity: Located, file: LintFile, report: Report): Drawn {
  const { kind, record, line } = entity
  const layer = firstOf(record, 8) ?? ''
  const none = { kind, layer, operation: file.operations.get(layer), line, circles: [], segments: [], points: [] }
  const at: Point = [real(record, 10), real(record, 20)]
  if (kind === 'CIRCLE') return { ...none, circles: [{ at, radius: real(record, 40), line }] }
  if (kind === 'TEXT') return { ...none, points: textCorners(readText(record, at)) }
  if (kind === 'LINE') return { ...none, segments: [{ from: at, to: [real(record, 11), real(record, 21)], line }] }
  if (kind === 'ARC') return { ...none, segments: [readArc(record, at, line, report)] }
  if (kind === 'LWPOLYLINE') return { ...none, segments: readPolyline(record, line, report) }
  return none
}

/** Alignment by code 72 (DXF reference, TEXT; from memory). */
function readText(record: readonly Pair[], at: Point): FileText {
  const anchor = (['start', 'middle', 'end'] as const)[real(record, 72)] ?? 'start'
  return { at, height: real(record, 40), turnDeg: real(record, 50), anchor, text: firstOf(record, 1) ?? '' }
}

function readArc(record: readonly Pair[], centre: Point, line: number, report: Report): Segment {
  const [radius, start, end] = [real(record, 40), real(record, 50), real(record, 51)]
  const bad = (angle: number) => !(angle >= 0 && angle < 360)
  if (bad(start) || bad(end) || start === end) report('angles', `line ${line}: from ${start} to ${end}`)
  const sweep = end > start ? end - start : end - start + 360
  const on = (deg: number): Point => [
    centre[0] + radius * Math.cos((deg * Math.PI) / 180),
    centre[1] + radius * Math.sin((deg * Math.PI) / 180),
  ]
  return { from: on(start), to: on(end), arc: { centre, radius, startDeg: start, sweepDeg: sweep }, sense: 1, line }
}

function readPolyline(record: readonly Pair[], line: number, report: Report): Segment[] {
  const vertices: { x: number; y: number; bulge: number }[] = []
  for (const { code, value } of record) {
    const last = vertices[vertices.length - 1]
    if (code === 10) vertices.push({ x: Number(value), y: Number.NaN, bulge: 0 })
    if (code === 20 && last !== undefined) last.y = Number(value)
    if (code === 42 && last !== undefined) last.bulge = Number(value)
  }
  const flags = real(record, 70)
  if (!(flags % 2 === 1)) report('contours', `line ${line}: LWPOLYLINE is open`)
  if (vertices.length < 2 || vertices.length !== real(record, 90)) {
    report('contours', `line ${line}: ${vertices.length} vertices, ${firstOf(record, 90)} by its own count`)
  }
  return vertices.map((v, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? v
    const [from, to]: [Point, Point] = [
      [v.x, v.y],
      [next.x, next.y],
    ]
    return v.bulge === 0 ? { from, to, line } : { from, to, line, ...bulged(from, to, v.bulge) }
  })
}

/** Worked out from the angle at the centre, apart from the way of the writer: half a chord is r·sin(sweep / 2). */
function bulged(from: Point, to: Point, bulge: number): Pick<Required<Segment>, 'arc' | 'sense'> {
  const half = 2 * Math.atan(Math.abs(bulge))
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const radius = Math.hypot(dx, dy) / 2 / Math.sin(half)
  const sense = bulge > 0 ? 1 : -1
  const apothem = (Math.cos(half) / Math.sin(half) / 2) * sense
  const centre: Point = [(from[0] + to[0]) / 2 - dy * apothem, (from[1] + to[1]) / 2 + dx * apothem]
  const first = sense > 0 ? from : to
  const startDeg = (Math.atan2(first[1] - centre[1], first[0] - centre[0]) * 180) / Math.PI
  return { arc: { centre, radius, startDeg, sweepDeg: (half * 360) / Math.PI }, sense }
}

function sizeFaults(entity: Drawn, mm: number, report: Report): void {
  for (const { radius } of entity.circles) {
    if (!(radius * mm >= LEAST_RADIUS_MM - ROUNDING * mm)) report('sizes', `line ${entity.line}: radius ${radius}`)
  }
  entity.segments.forEach(({ from, to, arc }, i) => {
    const short = !(Math.hypot(to[0] - from[0], to[1] - from[1]) * mm >= LEAST_SEGMENT_MM - ROUNDING * mm)
    const closing = entity.kind === 'LWPOLYLINE' && i === entity.segments.length - 1
    if (short) report(closing ? 'contours' : 'sizes', `line ${entity.line}: no length from ${from} to ${to}`)
    if (arc !== undefined && !(arc.radius * mm >= LEAST_RADIUS_MM))
      report('sizes', `line ${entity.line}: radius ${arc.radius}`)
  })
  if (entity.kind === 'LWPOLYLINE' && entity.operation !== undefined && isCut(entity.operation)) {
    const area = Math.abs(areaOf(entity.segments)) * mm * mm
    if (!(area >= LEAST_AREA_MM2 - ROUNDING)) report('sizes', `line ${entity.line}: area ${area} mm²`)
  }
}

function areaOf(segments: readonly Segment[]): number {
  return segments.reduce((sum, { from, to, arc, sense = 1 }) => {
    const polygon = (from[0] * to[1] - to[0] * from[1]) / 2
    if (arc === undefined) return sum + polygon
    const sweep = (arc.sweepDeg * Math.PI) / 180
    return sum + polygon + (sense * arc.radius ** 2 * (sweep - Math.sin(sweep))) / 2
  }, 0)
}

/** On a cutting layer, each end of a LINE or ARC meets exactly one other end. */
function loopFaults(layer: readonly Drawn[], mm: number, report: Report): void {
  const operation = layer[0]?.operation
  if (operation === undefined || !isCut(operation)) return
  const loose = layer.filter((d) => d.kind === 'LINE' || d.kind === 'ARC').flatMap((d) => d.segments)
  const ends = loose.flatMap(({ from, to, line }) => [from, to].map((at) => ({ at, line })))
  for (const { at, line } of ends) {
    const meeting = ends.filter((e) => Math.hypot(e.at[0] - at[0], e.at[1] - at[1]) * mm <= 2 * NOISE_MM * mm)
    if (meeting.length !== 2) report('contours', `line ${line}: ${meeting.length - 1} other ends meet at ${at}`)
  }
}

/** Contours that cut through are compared with each other, other operations layer by layer; circles over an operation. */
function twiceFaults(drawn: readonly Drawn[], report: Report): void {
  const cuts = drawn.filter((d) => d.operation !== undefined && isCut(d.operation))
  const through = (d: Drawn) => d.operation === 'outline' || d.operation === 'cutout'
  for (const key of new Set(cuts.map((d) => (through(d) ? '' : d.layer)))) {
    const together = cuts.filter((d) => (key === '' ? through(d) : d.layer === key))
    twiceSegments(
      together.flatMap((d) => d.segments),
      report,
    )
  }
  for (const operation of new Set(cuts.map((d) => d.operation))) {
    twiceCircles(
      cuts.filter((d) => d.operation === operation).flatMap((d) => d.circles),
      report,
    )
  }
}

const onAxis = (points: readonly Point[], axis: 0 | 1, pick: (a: number, b: number) => number, start: number): number =>
  points.reduce((found, p) => pick(found, p[axis]), start)

function boxOf(points: readonly Point[]): { min: Point; max: Point } {
  const least = (axis: 0 | 1) => onAxis(points, axis, Math.min, Number.POSITIVE_INFINITY)
  const most = (axis: 0 | 1) => onAxis(points, axis, Math.max, Number.NEGATIVE_INFINITY)
  return { min: [least(0), least(1)], max: [most(0), most(1)] }
}

function reachOf(d: Drawn): Point[] {
  const circles = d.circles.flatMap(({ at: [x, y], radius }): Point[] => [
    [x - radius, y - radius],
    [x + radius, y + radius],
  ])
  const arcs = d.segments.flatMap(({ arc }) => {
    if (arc === undefined) return []
    const { centre, radius, startDeg, sweepDeg } = arc
    return [0, 90, 180, 270]
      .filter((deg) => (((deg - startDeg) % 360) + 360) % 360 < sweepDeg)
      .map((deg): Point => {
        const [x, y] =
          [
            [1, 0],
            [0, 1],
            [-1, 0],
            [0, -1],
          ][deg / 90] ?? []
        return [centre[0] + radius * (x ?? 0), centre[1] + radius * (y ?? 0)]
      })
  })
  return [...circles, ...arcs, ...d.segments.flatMap((s) => [s.from, s.to]), ...d.points]
}

function placeFaults(drawn: readonly Drawn[], report: Report, lippings: Lippings): void {
  const outlines = drawn.filter((d) => d.operation === 'outline')
  if (outlines.length === 0) return
  const core = boxOf(outlines.flatMap(reachOf))
  const { left, right, low, high } = lippings
  const box = { min: [core.min[0] - left, core.min[1] - low], max: [core.max[0] + right, core.max[1] + high] } as const
  const apart = Math.hypot(...box.min)
  if (!(apart <= ROUNDING)) report('place', `the outline begins at (${box.min.join(', ')}), not at (0, 0)`)
  for (const d of drawn) {
    if (d.operation === undefined || !isCut(d.operation)) continue
    for (const [x, y] of reachOf(d)) {
      const out = Math.max(box.min[0] - x, x - box.max[0], box.min[1] - y, y - box.max[1])
      if (!(out <= ROUNDING)) report('place', `line ${d.line}: (${x}, ${y}) on ${d.layer} lies outside the outline`)
    }
  }
}

function extentFaults(drawn: readonly Drawn[], file: LintFile, report: Report): void {
  const points = drawn.flatMap(reachOf)
  const box = points.length === 0 ? { min: [0, 0], max: [0, 0] } : boxOf(points)
  for (const [name, corner] of [
    ['$EXTMIN', box.min],
    ['$EXTMAX', box.max],
  ] as const) {
    const said = (file.header.get(name) ?? []).map((pair) => Number(pair.value))
    const near = said.length === 3 && corner.every((v, i) => Math.abs(v - (said[i] ?? Number.NaN)) <= ROUNDING)
    if (!near) report('header', `${name} is ${said.join(', ')}, the drawing's is ${corner.join(', ')}`)
  }
}
