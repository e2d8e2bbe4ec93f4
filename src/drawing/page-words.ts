import type { EdgeSide } from '../assembly/index.ts'
import { formatInch, formatMm, type Units } from '../length/index.ts'
import type { Bore } from '../panel/index.ts'
import { datumPoint, type FaceGroove, type FaceView } from './page-view.ts'
import type { Run } from './runs.ts'
import type { Point } from './types.ts'

/** Places and pitches are read off a tape: two decimals of a mm are more than enough. */
const TAPE_STEPS = 100

/** A size as it stands in a label: bare millimetres, or inches with their unit. */
export const size = (mm: number, units: Units): string => (units === 'in' ? formatInch(mm) : formatMm(mm))

/** A distance along the panel as it stands in a label. */
export const distance = (mm: number, units: Units): string => size(Math.round(mm * TAPE_STEPS) / TAPE_STEPS, units)

/**
 * `5 × 13 deep`, `7 through`, `pocket 15°, collar at 18.1`, with the countersink or counterbore behind it. For a run,
 * `14 × 5 deep 13, every 32`; where the page shows a part of it, `6 of 14 × 5 deep 13, every 32`, or, of one alone,
 * `5 × 13 deep, 1 of 14`.
 */
export function figures(run: Run, shown: number, units: Units): string {
  const [bore] = run.bores
  const count = run.bores.length
  const sink = sinkFigures(bore, units)
  if (shown === 1) {
    const hole = holeFigures(bore, units, (diameter, depth) => `${diameter} × ${depth} deep`)
    return `${hole}${sink}${count === 1 ? '' : `, 1 of ${count}`}`
  }
  const many = shown < count ? `${shown} of ${count}` : `${count}`
  const step = distance(run.step, units)
  const hole = holeFigures(bore, units, (diameter, depth) => `${diameter} deep ${depth}`)
  return `${many} × ${hole}${sink}, ${count === 2 ? `${step} apart` : `every ${step}`}`
}

function holeFigures(bore: Bore, units: Units, blind: (diameter: string, depth: string) => string): string {
  if (bore.leanDeg !== undefined) return `pocket ${formatMm(bore.leanDeg)}°, collar at ${size(bore.depth, units)}`
  const diameter = size(bore.diameter, units)
  return bore.through ? `${diameter} through` : blind(diameter, size(bore.depth, units))
}

function sinkFigures({ sink }: Bore, units: Units): string {
  if (sink === undefined) return ''
  const wide = size(sink.diameter, units)
  if (sink.shape === 'cone') return `, countersink ${wide} × ${formatMm(sink.angleDeg)}°`
  return `, counterbore ${wide} × ${size(sink.depth, units)} deep`
}

/** `37 from front, 96 from bottom`: distances of a place from the two edges that a person measures from. */
export function fromDatum(view: FaceView, at: Point, units: Units): string {
  return `${fromEdge(view, at, 0, units)}, ${fromEdge(view, at, 1, units)}`
}

/** `50 from front`: distance of a bore in an edge along that edge. */
export function alongEdge(view: FaceView, at: Point, side: EdgeSide, units: Units): string {
  return fromEdge(view, at, side === 'x0' || side === 'x1' ? 1 : 0, units)
}

function fromEdge(view: FaceView, at: Point, axis: 0 | 1, units: Units): string {
  const side = axis === 0 ? view.datum.x : view.datum.y
  return `${distance(Math.abs(at[axis] - datumPoint(view)[axis]), units)} from ${view.edges[side]}`
}

/** `groove 6.2 wide, 8 deep`. */
export function grooveFigures({ groove, min, max }: FaceGroove, units: Units): string {
  const wide = Math.min(max[0] - min[0], max[1] - min[1])
  return `${groove.kind} ${distance(wide, units)} wide, ${size(groove.depth, units)} deep`
}

/** `shelf pin: 5 × 13 deep`, for a pointer resting on the bore. */
export function boreTitle(bore: Bore, units: Units): string {
  return `${bore.purpose}: ${figures({ bores: [bore], step: 0, along: 'x', purpose: bore.purpose }, 1, units)}`
}
