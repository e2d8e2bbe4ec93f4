import type { EdgeSide } from '../assembly/index.ts'
import { roundMm } from '../geometry/index.ts'
import type { Sink } from '../hardware/index.ts'
import { formatInch, formatMm, MM_PER_INCH, type Units } from '../length/index.ts'
import { type Bore, distancesFromDatum, type EdgeName, type Groove, type Panel } from '../panel/index.ts'
import { purposesOf, type Run } from './runs.ts'

/** A bit or depth is called by its inch fraction only where it is that fraction to this, mm; else by its mm. */
const SAME_BIT_MM = 0.005

/**
 * A place or size as people read it: mm to 0.01 without a unit, or inches to the nearest 1/64 with the unit (and what
 * remains, where that is more than a scribed line).
 */
export function placeWords(mm: number, units: Units): string {
  return units === 'in' ? formatInch(mm) : formatMm(Math.round(mm * 100) / 100)
}

/** A bit's diameter or a depth: in inch projects the fraction where it is one (`1/4 in`), else `35 mm`. */
export function bitWords(mm: number, units: Units): string {
  if (units === 'mm') return placeWords(mm, units)
  const nearest = (Math.round((mm / MM_PER_INCH) * 64) / 64) * MM_PER_INCH
  return Math.abs(nearest - mm) <= SAME_BIT_MM ? formatInch(mm) : `${formatMm(Math.round(mm * 100) / 100)} mm`
}

/** Name of an edge, and whether a surface is one. */
export function edgeOf(panel: Panel, bore: Bore): { side: EdgeSide; name: EdgeName } | undefined {
  const { surface } = bore
  return surface === 'A' || surface === 'B' ? undefined : { side: surface, name: panel.edges[surface] }
}

/** Bores of a run from the end that is measured from. */
export function inDatumOrder(panel: Panel, run: Run): readonly [Bore, ...Bore[]] {
  const away = run.along === 'x' ? panel.datum.x === 'x0' : panel.datum.y === 'y0'
  if (away) return run.bores
  const [first, ...rest] = [...run.bores].reverse()
  return first ? [first, ...rest] : run.bores
}

/** `5 × 13 deep`, `7 through`, `pocket 15°, bit 9.5, collar at 18.1`; with what widens the mouth. */
function madeBy(bore: Bore, units: Units): string {
  if (bore.leanDeg !== undefined) return pocketWords(bore, units)
  const bit = bitWords(bore.diameter, units)
  const hole = bore.through ? `${bit} through` : `${bit} × ${bitWords(bore.depth, units)} deep`
  return bore.sink ? `${hole}, ${sinkWords(bore.sink, units)}` : hole
}

/** A collar is set with a rule: 0.1 mm. */
function pocketWords(bore: Bore, units: Units): string {
  const collar = units === 'in' ? formatInch(bore.depth) : formatMm(Math.round(bore.depth * 10) / 10)
  return `pocket ${formatMm(bore.leanDeg ?? 0)}°, bit ${bitWords(bore.diameter, units)}, collar at ${collar}`
}

/** `countersunk to 9, 90°`, `counterbored 10 × 5 deep`. */
function sinkWords(sink: Sink, units: Units): string {
  return sink.shape === 'cone'
    ? `countersunk to ${bitWords(sink.diameter, units)}, ${formatMm(sink.angleDeg)}°`
    : `counterbored ${bitWords(sink.diameter, units)} × ${bitWords(sink.depth, units)} deep`
}

/**
 * What a pointer resting on a bore reads: `shelf pin 5 × 13 deep, 37 from front, 96 from bottom`; for an edge
 * `dowel 8 × 21 deep in the front edge, 9 from face A, 50 from left`. Distances from the panel's datum edges.
 */
export function boreTitle(panel: Panel, bore: Bore, units: Units): string {
  const from = distancesFromDatum(panel, bore.at)
  const y = `${placeWords(from.y, units)} from ${panel.edges[panel.datum.y]}`
  const x = `${placeWords(from.x, units)} from ${panel.edges[panel.datum.x]}`
  const what = `${purposesOf(bore).join(' and ')} ${madeBy(bore, units)}`
  const edge = edgeOf(panel, bore)
  if (!edge) return `${what}, ${y}, ${x}`
  const along = edge.side === 'x0' || edge.side === 'x1' ? y : x
  return `${what} in the ${edge.name} edge, ${placeWords(-bore.at[2], units)} from face A, ${along}`
}

/** What the widened mouth of a bore reads. */
export function sinkTitle(panel: Panel, bore: Bore, sink: Sink, units: Units): string {
  const words = sinkWords(sink, units)
  return `${words.replace(/^countersunk to/, 'countersink').replace(/^counterbored/, 'counterbore')} for: ${boreTitle(panel, bore, units)}`
}

/** `groove for the back 6.2 wide × 8 deep, 12 to 18.2 from back, 0 to 720 from bottom`. */
export function grooveTitle(panel: Panel, groove: Groove, units: Units): string {
  const { x, y } = grooveSpans(panel, groove, units)
  const size = `${bitWords(grooveWidth(groove), units)} wide × ${bitWords(groove.depth, units)} deep`
  return `${groove.purpose} ${size}, ${y} from ${panel.edges[panel.datum.y]}, ${x} from ${panel.edges[panel.datum.x]}`
}

/** The shorter side of a groove: across the way of the cutter, mm. */
export function grooveWidth(groove: Groove): number {
  return Math.min(groove.max[0] - groove.min[0], groove.max[1] - groove.min[1])
}

/** From where to where a groove runs, from the datum edges. */
export function grooveSpans(panel: Panel, groove: Groove, units: Units): { x: string; y: string } {
  const a = distancesFromDatum(panel, groove.min)
  const b = distancesFromDatum(panel, groove.max)
  const span = (p: number, q: number): string =>
    `${placeWords(Math.min(p, q), units)} to ${placeWords(Math.max(p, q), units)}`
  return { x: span(a.x, b.x), y: span(a.y, b.y) }
}

/** The words beside a run: `14 × 5 deep 13, every 32`, `hinge cup 35 deep 12.5`, `4 × 8 deep 21 in this edge, 9 from face A`. */
export function runLabel(panel: Panel, run: Run, units: Units): string {
  const [bore] = run.bores
  const count = run.bores.length
  const what = count === 1 ? `${run.purpose} ` : `${count} × `
  if (bore.leanDeg !== undefined) return `${count === 1 ? '' : what}${pocketWords(bore, units)}`
  const hole = `${what}${bitWords(bore.diameter, units)} ${bore.through ? 'through' : `deep ${bitWords(bore.depth, units)}`}`
  const edge = edgeOf(panel, bore)
  if (edge) return `${hole} in this edge, ${placeWords(-bore.at[2], units)} from face A`
  const sink = bore.sink ? `, ${sinkWords(bore.sink, units).replace(/, \d.*°$/, '')}` : ''
  const step =
    count === 1
      ? ''
      : `, ${count === 2 ? `${placeWords(run.step, units)} apart` : `every ${placeWords(run.step, units)}`}`
  return `${hole}${sink}${step}`
}

/** The words beside a groove: `groove for the back, 6.2 wide, 8 deep`. */
export function grooveLabel(groove: Groove, units: Units): string {
  return `${groove.purpose}, ${bitWords(grooveWidth(groove), units)} wide, ${bitWords(groove.depth, units)} deep`
}

/** One line of the table below a panel. */
export interface ScheduleRow {
  readonly tag: string
  readonly count: string
  readonly bit: string
  readonly depth: string
  /** From the datum edges across and along the grain. */
  readonly fromY: string
  readonly fromX: string
  readonly purpose: string
}

/** The line of a run: everything that a person with a rule and a drill needs. */
export function runRow(panel: Panel, run: Run, tag: string, units: Units): ScheduleRow {
  const bores = inDatumOrder(panel, run)
  const [bore] = bores
  const from = bores.map((one) => distancesFromDatum(panel, one.at))
  const edge = edgeOf(panel, bore)
  const inEdge = edge ? `${edge.name} edge, ${placeWords(-bore.at[2], units)} from face A` : ''
  const edgeAxis = edge ? (edge.side === 'x0' || edge.side === 'x1' ? 'x' : 'y') : undefined
  const column = (axis: 'x' | 'y'): string =>
    edgeAxis === axis
      ? inEdge
      : placesWords(
          from.map((one) => one[axis]),
          run.step,
          units,
        )
  return {
    tag,
    count: String(bores.length),
    bit: bitWords(bore.diameter, units),
    depth: depthCell(bore, units),
    fromY: column('y'),
    fromX: column('x'),
    purpose: runPurpose(run),
  }
}

/** The line of a groove or rebate. */
export function grooveRow(panel: Panel, groove: Groove, tag: string, units: Units): ScheduleRow {
  const { x, y } = grooveSpans(panel, groove, units)
  return {
    tag,
    count: '',
    bit: `${bitWords(grooveWidth(groove), units)} wide`,
    depth: bitWords(groove.depth, units),
    fromY: y,
    fromX: x,
    purpose: groove.roundEnds ? `${groove.purpose}, ends round` : groove.purpose,
  }
}

function depthCell(bore: Bore, units: Units): string {
  if (bore.leanDeg !== undefined) return pocketWords(bore, units).replace(/, bit [^,]*/, '')
  const depth = bore.through ? 'through' : bitWords(bore.depth, units)
  return bore.sink ? `${depth}, ${sinkWords(bore.sink, units)}` : depth
}

/** Up to three places are written out, more as first … last and the step; one place where all are the same. */
function placesWords(places: readonly number[], step: number, units: Units): string {
  const first = places[0] ?? 0
  const last = places.at(-1) ?? first
  if (roundMm(last - first) === 0) return placeWords(first, units)
  if (places.length <= 3) return places.map((place) => placeWords(place, units)).join(', ')
  return `${placeWords(first, units)} … ${placeWords(last, units)}, every ${placeWords(step, units)}`
}

/** `shelf pin; 2 also hinge plate`. */
function runPurpose(run: Run): string {
  const shared = run.purpose.split(' and ')
  const others = new Map<string, number>()
  for (const bore of run.bores) {
    for (const purpose of purposesOf(bore)) {
      if (!shared.includes(purpose)) others.set(purpose, (others.get(purpose) ?? 0) + 1)
    }
  }
  return [run.purpose, ...[...others].map(([purpose, count]) => `${count} also ${purpose}`)].join('; ')
}

const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** A to Z without I and O, which read as figures; then AA, AB and so on. */
export function tagOf(index: number): string {
  const letter = LETTERS[index % LETTERS.length] ?? ''
  return index < LETTERS.length ? letter : tagOf(Math.floor(index / LETTERS.length) - 1) + letter
}
