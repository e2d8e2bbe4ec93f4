import type { EdgeSide } from '../assembly/index.ts'
import { NOISE_MM, same } from '../geometry/index.ts'
import type { Sink } from '../hardware/index.ts'
import { formatInch, formatMm, MM_PER_INCH, type Units } from '../length/index.ts'
import {
  type Bore,
  coreOf,
  distancesFromDatum,
  type EdgeName,
  type Groove,
  isUneven,
  type Panel,
  purposesOf,
  type Run,
} from '../panel/index.ts'

/** A bit or depth is called by its inch fraction only where it is that fraction to this, mm; else by its mm. */
const SAME_BIT_MM = 0.005

const roundedToHundredth = (mm: number): number => Math.round(mm * 100) / 100
const roundedToFraction = (mm: number): number => (Math.round((mm / MM_PER_INCH) * 64) / 64) * MM_PER_INCH

/**
 * A place or size as people read it: mm to 0.01 without a unit, or inches to the nearest 1/64 with the unit (and what
 * remains, where that is more than a scribed line).
 */
export function placeWords(mm: number, units: Units): string {
  return units === 'in' ? formatInch(mm) : formatMm(roundedToHundredth(mm))
}

/** A bit's diameter or a depth: in inch projects the fraction where it is one (`1/4 in`), else `35 mm`. */
export function bitWords(mm: number, units: Units): string {
  if (units === 'mm') return placeWords(mm, units)
  return Math.abs(roundedToFraction(mm) - mm) <= SAME_BIT_MM ? formatInch(mm) : `${formatMm(roundedToHundredth(mm))} mm`
}

/** A pitch that can be stepped off as it is printed, since nothing is rounded: `32`, `1 1/4 in`, `32 mm`; else nothing. */
export function exactPitch(mm: number, units: Units): string | undefined {
  if (units === 'in' && same(roundedToFraction(mm), mm)) return formatInch(mm)
  if (!same(roundedToHundredth(mm), mm)) return undefined
  return units === 'in' ? `${formatMm(mm)} mm` : formatMm(mm)
}

/**
 * How the bores of a row lie: `24 apart`, `every 32`. A rounded pitch adds up when it is stepped off, so where the
 * printed one would be rounded the ends are said instead: `evenly 50 to 493.33 from front`; and all places of an uneven
 * run: `at 82, 240, 334, 492 from front`.
 */
export function spacingWords(panel: Panel, run: Run, units: Units): string {
  const bores = inDatumOrder(panel, run)
  const place = (bore: Bore): string => placeWords(distancesFromDatum(panel, bore.at)[run.along], units)
  const edge = panel.edges[panel.datum[run.along]]
  if (isUneven(run)) return `at ${bores.map(place).join(', ')} from ${edge}`
  const pitch = exactPitch(run.step, units)
  if (bores.length < 2) return ''
  if (bores.length === 2) return `${pitch ?? placeWords(run.step, units)} apart`
  if (pitch !== undefined) return `every ${pitch}`
  const last = bores.at(-1) ?? bores[0]
  return `evenly ${place(bores[0])} to ${place(last)} from ${edge}`
}

/**
 * Name of the edge that a bore enters, and how far in from its plane, mm: more than 0 where the bore starts at the
 * shoulder of a rebate, and so can be made only when that is cut. Nothing for bores in a face.
 */
export function edgeOf(
  panel: Panel,
  bore: Bore,
): { readonly side: EdgeSide; readonly name: EdgeName; readonly inFrom: number } | undefined {
  const { surface, at } = bore
  if (surface === 'A' || surface === 'B') return undefined
  const inFrom = { x0: at[0], x1: panel.length - at[0], y0: at[1], y1: panel.width - at[1] }[surface]
  return { side: surface, name: panel.edges[surface], inFrom: inFrom > NOISE_MM ? inFrom : 0 }
}

/** Bores of a run from the end that is measured from. */
export function inDatumOrder(panel: Panel, run: Run): readonly [Bore, ...Bore[]] {
  const away = run.along === 'x' ? panel.datum.x === 'x0' : panel.datum.y === 'y0'
  if (away) return run.bores
  const [first, ...rest] = [...run.bores].reverse()
  return first ? [first, ...rest] : run.bores
}

/**
 * What is set on the tool: `5 deep 13`, `7 through`, `pocket 15°, bit 9.5, collar at 18.1`; with what widens the mouth.
 * No `×`: in all words about holes it means a count.
 */
export function toolWords(bore: Bore, units: Units): string {
  if (bore.leanDeg !== undefined) return pocketWords(bore, units)
  const bit = bitWords(bore.diameter, units)
  const hole = bore.through ? `${bit} through` : `${bit} deep ${bitWords(bore.depth, units)}`
  return bore.sink ? `${hole}, ${sinkWords(bore.sink, units)}` : hole
}

/** A collar is set with a rule: 0.1 mm. */
export function pocketWords(bore: Bore, units: Units): string {
  const collar = units === 'in' ? formatInch(bore.depth) : formatMm(Math.round(bore.depth * 10) / 10)
  return `pocket ${formatMm(bore.leanDeg ?? 0)}°, bit ${bitWords(bore.diameter, units)}, collar at ${collar}`
}

/** `countersunk to 9, 90°`, `counterbored 10 deep 5`. */
export function sinkWords(sink: Sink, units: Units): string {
  return sink.shape === 'cone'
    ? `countersunk to ${bitWords(sink.diameter, units)}, ${formatMm(sink.angleDeg)}°`
    : `counterbored ${bitWords(sink.diameter, units)} deep ${bitWords(sink.depth, units)}`
}

/**
 * What a pointer resting on a bore reads: `shelf pin 5 deep 13, 37 from front, 96 from bottom`; for an edge
 * `dowel 8 deep 21 in the front edge, 9 from face A, 50 from left`; for the shoulder of a rebate
 * `screw pilot 2.5 deep 20 in the back rebate once it is cut (6.2 from the edge), 4 from face A, 50 from bottom`.
 * Distances from the panel's datum edges.
 */
export function boreTitle(panel: Panel, bore: Bore, units: Units): string {
  const from = distancesFromDatum(panel, bore.at)
  const y = `${placeWords(from.y, units)} from ${panel.edges[panel.datum.y]}`
  const x = `${placeWords(from.x, units)} from ${panel.edges[panel.datum.x]}`
  const what = `${purposesOf(bore).join(' and ')} ${toolWords(bore, units)}`
  const edge = edgeOf(panel, bore)
  if (!edge) return `${what}, ${y}, ${x}`
  const along = edge.side === 'x0' || edge.side === 'x1' ? y : x
  const where =
    edge.inFrom > 0
      ? `${edge.name} rebate once it is cut (${bitWords(edge.inFrom, units)} from the edge)`
      : `${edge.name} edge`
  return `${what} in the ${where}, ${placeWords(-bore.at[2], units)} from face A, ${along}`
}

/** What the widened mouth of a bore reads. */
export function sinkTitle(panel: Panel, bore: Bore, sink: Sink, units: Units): string {
  const words = sinkWords(sink, units)
  return `${words.replace(/^countersunk to/, 'countersink').replace(/^counterbored/, 'counterbore')} for: ${boreTitle(panel, bore, units)}`
}

/** `groove for the back, 6.2 wide, 8 deep, 12 to 18.2 from back, 0 to 720 from bottom`. */
export function grooveTitle(panel: Panel, groove: Groove, units: Units): string {
  const { x, y } = grooveSpans(panel, groove, units)
  return `${grooveLabel(groove, units)}, ${y} from ${panel.edges[panel.datum.y]}, ${x} from ${panel.edges[panel.datum.x]}`
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

/**
 * The words beside a run: `14 × 5 deep 13, every 32`, `hinge cup 35 deep 12.5`,
 * `4 × 8 deep 21 in this edge, 9 from face A`, `6 × 2.5 deep 20 in the rebate once it is cut, 4 from face A`.
 */
export function runLabel(panel: Panel, run: Run, units: Units): string {
  const [bore] = run.bores
  const count = run.bores.length
  if (bore.leanDeg !== undefined) return `${count === 1 ? '' : `${count} × `}${pocketWords(bore, units)}`
  // The table has the angle.
  const tool = `${count === 1 ? `${run.purpose} ` : `${count} × `}${toolWords(bore, units).replace(/, \d[\d.]*°$/, '')}`
  const edge = edgeOf(panel, bore)
  if (edge) {
    const where = edge.inFrom > 0 ? 'the rebate once it is cut' : 'this edge'
    return `${tool} in ${where}, ${placeWords(-bore.at[2], units)} from face A`
  }
  return count === 1 ? tool : `${tool}, ${spacingWords(panel, run, units)}`
}

/** The words beside a groove: `groove for the back, 6.2 wide, 8 deep`. */
export function grooveLabel(groove: Groove, units: Units): string {
  return `${groove.purpose}, ${bitWords(grooveWidth(groove), units)} wide, ${bitWords(groove.depth, units)} deep`
}

/** What is cut from the sheet where edges are lipped: `cut 780.2 × 531.8 before lipping`, and what distances count from. */
export function cutParts(panel: Panel, units: Units): string[] {
  if (panel.lipping === undefined) return []
  const { length, width } = coreOf(panel)
  return [
    `cut ${placeWords(length, units)} × ${placeWords(width, units)} before lipping`,
    'all distances from the finished edges',
  ]
}

/** The name of an edge, with its lipping: `front, lipped 2`. */
export function edgeWords(panel: Panel, edge: EdgeSide, units: Units): string {
  const thick = panel.lipping?.[edge]
  return thick === undefined ? panel.edges[edge] : `${panel.edges[edge]}, lipped ${bitWords(thick, units)}`
}

const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** A to Z without I and O, which read as figures; then AA, AB and so on. */
export function tagOf(index: number): string {
  const letter = LETTERS[index % LETTERS.length] ?? ''
  return index < LETTERS.length ? letter : tagOf(Math.floor(index / LETTERS.length) - 1) + letter
}
