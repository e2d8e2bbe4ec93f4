import { roundMm } from '../geometry/index.ts'
import type { Units } from '../length/index.ts'
import { type Bore, distancesFromDatum, type Groove, type Panel, purposesOf, type Run } from '../panel/index.ts'
import {
  bitWords,
  edgeOf,
  exactPitch,
  grooveSpans,
  grooveWidth,
  inDatumOrder,
  placeWords,
  pocketWords,
  sinkWords,
} from './words.ts'

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
  const inEdge = edge ? `${edgeWords(edge, units)}, ${placeWords(-bore.at[2], units)} from face A` : ''
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

/** `back edge`, or of a bore that starts at the shoulder of a rebate `back rebate once cut (6.2 from the edge)`. */
function edgeWords(edge: { readonly name: string; readonly inFrom: number }, units: Units): string {
  return edge.inFrom > 0
    ? `${edge.name} rebate once cut (${bitWords(edge.inFrom, units)} from the edge)`
    : `${edge.name} edge`
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

/** So many places at most are written out where their pitch would have to be rounded. */
const FEW_PLACES = 6

/**
 * Up to three places are written out, more as first … last and the step; one place where all are the same. Where the
 * step would be rounded, or there is none: up to six places, or how many lie evenly between which ends.
 */
function placesWords(places: readonly number[], step: number, units: Units): string {
  const first = places[0] ?? 0
  const last = places.at(-1) ?? first
  if (roundMm(last - first) === 0) return placeWords(first, units)
  const pitch = step > 0 ? exactPitch(step, units) : undefined
  if (places.length <= (pitch === undefined ? FEW_PLACES : 3))
    return places.map((place) => placeWords(place, units)).join(', ')
  const ends = [placeWords(first, units), placeWords(last, units)]
  return pitch === undefined
    ? `${places.length} evenly from ${ends.join(' to ')}`
    : `${ends.join(' … ')}, every ${pitch}`
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
