import type { EdgeSide } from '../../assembly/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Run } from '../../panel/index.ts'
import { type Bore, distancesFromDatum, type Panel } from '../../panel/index.ts'
import type { Point } from '../types.ts'
import { bitWords, grooveLabel, grooveSpans, placeWords, spacingWords, toolWords } from '../words.ts'
import { datumPoint, type EdgeBore, type FaceGroove, type FaceView } from './view.ts'

/** A bit wider than this, mm, takes no stop collar: its depth is set on the machine. Own choice. */
const WIDEST_COLLAR = 16

/** The setting of the stop for a blind bore, `collar at 13`; a pocket's words have theirs, a through bore needs none. */
function stopWords({ through, leanDeg, diameter, depth }: Bore, units: Units): string[] {
  if (through || leanDeg !== undefined) return []
  return [`${diameter > WIDEST_COLLAR ? 'depth stop' : 'collar'} at ${bitWords(depth, units)}`]
}

/**
 * What is set on the tool, and how the bores lie that a page shows: `7 through`, `14 × 5 deep 13, collar at 13, every 32`;
 * where they are a part of the run, `6 × 5 deep 13, collar at 13, every 32 (6 of 14)`. `shown` in the order of the run.
 */
export function figures(panel: Panel, run: Run, shown: readonly [Bore, ...Bore[]], units: Units): string {
  const count = shown.length
  const many = count === 1 ? '' : `${count} × `
  const spacing = count === 1 ? [] : [spacingWords(panel, { ...run, bores: shown }, units)]
  const part = count === run.bores.length ? '' : ` (${count} of ${run.bores.length})`
  const words = [toolWords(shown[0], units), ...stopWords(shown[0], units), ...spacing]
  return `${many}${words.join(', ')}${part}`
}

/** `in the edge`, or of a bore that starts at the shoulder of a rebate `in the rebate once it is cut`; and how deep down. */
export function edgePlace({ panel }: FaceView, { side, inFrom, fromFace }: EdgeBore, units: Units): string[] {
  const face = `${placeWords(fromFace, units)} from this face`
  return inFrom > 0
    ? ['in the rebate once it is cut', `${bitWords(inFrom, units)} from the edge`, face]
    : [panel.lipping?.[side] === undefined ? 'in the edge' : 'in the lipped edge', face]
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
  return `${placeWords(Math.abs(at[axis] - datumPoint(view)[axis]), units)} from ${view.edges[side]}`
}

/** What a groove is, and where: `groove for the back, 6.2 wide, 8 deep`; `515 to 521.2 from front`; where it stops, `ends 20 and 700 from bottom`. */
export function grooveFigures(view: FaceView, { groove }: FaceGroove, units: Units): string[] {
  const { panel } = view
  const along = groove.max[0] - groove.min[0] >= groove.max[1] - groove.min[1] ? 'x' : 'y'
  const across = along === 'x' ? 'y' : 'x'
  const edge = (axis: 'x' | 'y'): string => panel.edges[panel.datum[axis]]
  const stops = stopsOf(panel, groove, along).map((mm) => placeWords(mm, units))
  const round = groove.roundEnds ? ', round' : ''
  return [
    grooveLabel(groove, units),
    `${grooveSpans(panel, groove, units)[across]} from ${edge(across)}`,
    ...(stops.length === 0
      ? []
      : [`${stops.length === 1 ? 'end' : 'ends'} ${stops.join(' and ')} from ${edge(along)}${round}`]),
  ]
}

/** The ends of a groove that lie inside the panel: distances from the datum edge, the nearer first; mm. */
function stopsOf(panel: Panel, groove: FaceGroove['groove'], along: 'x' | 'y'): number[] {
  const axis = along === 'x' ? 0 : 1
  const long = along === 'x' ? panel.length : panel.width
  return [groove.min, groove.max]
    .filter((corner) => corner[axis] > NOISE_MM && corner[axis] < long - NOISE_MM)
    .map((corner) => distancesFromDatum(panel, corner)[along])
    .sort((a, b) => a - b)
}
