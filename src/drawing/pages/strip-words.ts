import { same } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Run } from '../../panel/index.ts'
import type { PieceEdge, PiecePlace, PieceUse, Rect } from '../../templates/index.ts'
import type { Point } from '../types.ts'
import { exactPitch, placeWords } from '../words.ts'
import type { Sheet } from './sheet.ts'
import { endsAxis } from './strip-lines.ts'
import { datumPoint, type FaceView } from './view.ts'
import { figures } from './words.ts'

/** One thing that a piece says; `bold` where the eye must find it first. */
export interface Saying {
  readonly text: string
  readonly bold?: boolean
}

/** What is said on a strip besides the figures of its holes: its name, how it is laid, where else, and how it is moved on; `run`: the figures of its one kind of holes. */
export function stripSayings({ view, page, units }: Sheet, use: PieceUse, run: Run | undefined): Saying[] {
  const { panel, face } = view
  const [first, ...others] = use.places
  // Of a strip of several pieces, the one that is measured to says how to lay it.
  const speaks = holdsPoint(page.window, use.origin)
  const part = page.joins.length > 0 ? ' (tape its pieces first, hairline on hairline along a rule)' : ''
  return [
    { text: `${page.label} ${panel.name}, face ${face}`, bold: true },
    ...(use.hand === undefined || !speaks ? [] : handSayings(view, use.hand)),
    ...(speaks ? [{ text: `${layWords(view, use, first, units)}${part}` }] : []),
    ...(speaks ? others.map((place) => ({ text: `Also: ${layWords(view, use, place, units)}` })) : []),
    ...(use.repeat === undefined ? [] : [{ text: repeatWords(view, use, use.repeat, units), bold: true }]),
    ...(run === undefined ? [] : [{ text: holesWords(view, use, run, units) }]),
    { text: `${panel.moduleName}; ${use.name}. Cut out along the frame.` },
  ]
}

/** `9 × 5 deep 13, every 32 (of a row of 18): shelf pin`. */
function holesWords({ panel }: FaceView, { repeat }: PieceUse, run: Run, units: Units): string {
  const all = repeat === undefined ? '' : ` (of a row of ${repeat.times * repeat.pitches + repeat.last})`
  return `${figures(panel, run, run.bores, units)}${all}: ${run.purpose}`
}

const holdsPoint = ({ min, max }: Rect, [x, y]: Point): boolean =>
  x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1]

function handSayings({ panel }: FaceView, { other, turned }: NonNullable<PieceUse['hand']>): Saying[] {
  const there = turned ? 'turn it half round' : 'the same way up'
  return [{ text: `${panel.name.toUpperCase()}: this way up. ${other.toUpperCase()}: ${there}.`, bold: true }]
}

/** `fold over the front edge, stop at the bottom edge`; `row on a pencil line 450 from front, first hole 96 from bottom`. */
function layWords(view: FaceView, use: PieceUse, { at, turned, folds }: PiecePlace, units: Units): string {
  const along = use.along ?? 0
  const across = along === 0 ? 1 : 0
  const edge = (axis: 0 | 1): PieceEdge | undefined => folds.find((one) => endsAxis(one) === axis)
  const [side, end] = [edge(across), edge(along)]
  const measured = (axis: 0 | 1): string => {
    const datum = axis === 0 ? view.datum.x : view.datum.y
    return `${placeWords(Math.abs(at[axis] - datumPoint(view)[axis]), units)} from ${view.edges[datum]}`
  }
  const lay = side === undefined ? `row on a pencil line ${measured(across)}` : `fold over the ${view.edges[side]} edge`
  const stop =
    end === undefined
      ? `hole with the line across ${measured(along)}${othersWords(view, use, turned)}`
      : `stop at the ${view.edges[end]} edge, folded over it`
  const turn = turned ? 'turned half round, ' : ''
  const other =
    side !== undefined && usesSecond(view, use, { at, turned, folds }, across) ? ' at the other fold line' : ''
  return `${turn}${lay}${other}, ${stop}`
}

/** Where no end of the panel says which way round the strip lies, its other holes do: `, the others toward right`. */
function othersWords({ edges }: FaceView, { along = 0, ahead }: PieceUse, turned: boolean): string {
  if (ahead === undefined) return ''
  const toHigh = ahead > 0 !== turned
  const edge: PieceEdge = along === 0 ? (toHigh ? 'x1' : 'x0') : toHigh ? 'y1' : 'y0'
  return `, the others toward ${edges[edge]}`
}

/** Whether the piece is folded over its second line there. */
function usesSecond(view: FaceView, use: PieceUse, { at, turned, folds }: PiecePlace, across: 0 | 1): boolean {
  if (use.secondFold === undefined) return false
  const from = use.secondFold.at - use.origin[across]
  const line = at[across] + (turned ? -from : from)
  const place = { x0: 0, x1: view.width, y0: 0, y1: view.height }
  return folds.some((edge) => endsAxis(edge) === across && same(place[edge], line))
}

/**
 * `Then move it 9 pitches (288 mm) toward top: first hole on the last one marked; 2 times, the last time up to its hole 6.`
 * Where it is turned half round it goes the other way: `toward right (turned half round: toward left)`.
 */
function repeatWords(
  { edges }: FaceView,
  { places }: PieceUse,
  repeat: NonNullable<PieceUse['repeat']>,
  units: Units,
): string {
  const { pitches, step, move, times, last, holes } = repeat
  const ends: readonly [PieceEdge, PieceEdge] = move[0] === 0 ? ['y0', 'y1'] : ['x0', 'x1']
  const [on, back] = move[0] + move[1] > 0 ? [ends[1], ends[0]] : ends
  const turnedWay = places.some(({ turned }) => turned) ? ` (turned half round: toward ${edges[back]})` : ''
  const exact = exactPitch(step, units) === undefined ? undefined : exactPitch(step * pitches, units)
  const far = exact === undefined ? '' : ` (${exact}${units === 'mm' ? ' mm' : ''})`
  const until =
    last === holes ? '' : times === 1 ? `, up to its hole ${last}` : `, the last time up to its hole ${last}`
  const often = times === 1 ? 'once' : `${times} times`
  return `Then move it ${pitches} pitches${far} toward ${edges[on]}${turnedWay}: first hole on the last one marked; ${often}${until}.`
}

/** The other hand's panel, and over which of its edges the second line is folded where that has another name. */
function handFold({ other, turned, edge }: NonNullable<PieceUse['hand']>): string {
  if (turned) return `${other}, turned half round`
  return edge === undefined ? other : `${other}, ${edge} edge`
}

/** What stands beside the second fold line. */
export function secondFoldWords(view: FaceView, use: PieceUse): string | undefined {
  if (use.secondFold === undefined) return undefined
  const across = use.secondFold.axis
  const hand = use.hand === undefined ? [] : [handFold(use.hand)]
  const edges = use.places
    .filter((place) => usesSecond(view, use, place, across))
    .flatMap(({ folds }) => folds.filter((edge) => endsAxis(edge) === across))
    .map((edge) => `${view.edges[edge]} edge`)
  return `${[...hand, ...edges].join('; ')}: fold here`
}
