import { NOISE_MM, roundMm } from '../geometry/index.ts'
import { type Bore, type Panel, purposesOf, runsOf } from '../panel/index.ts'
import type { PieceEdge } from './piece-use.ts'
import type { FacePoint, Round } from './types.ts'

/** A bore as a strip shows it, in the face's own frame: seen on it, x right, y up, mm. A bore in an edge lies on its flap. */
export interface StripHole extends Round {
  readonly id: string
  /** Holes with equal words are made with one bit at one setting. */
  readonly tool: string
  /** Made square to its surface, so that a strip turned half round marks it as well. */
  readonly square: boolean
}

/** Rows of holes that one strip holds: all on one line, or on lines close beside each other. */
export interface StripRow {
  /** The axis that the row follows: 0 level, 1 upright. */
  readonly along: 0 | 1
  /** Ascending along the row. */
  readonly holes: readonly [StripHole, ...StripHole[]]
  /** The edge that its bores are in. */
  readonly edge?: PieceEdge
  /** What they are for, each once. */
  readonly purposes: readonly string[]
}

/** The face of a panel that is looked at. */
export interface StripFace {
  readonly panel: Panel
  readonly face: 'A' | 'B'
}

/** Lines nearer to each other than this share a strip, mm: two strips would lie on each other's holes. */
const BESIDE_MM = 30
/** From the first to the last line of a strip at most, mm. */
const MOST_ACROSS_MM = 45

/**
 * The rows of bores of a face; on face A those in the edges too, as they are marked from it. All bores on one line are one row,
 * whatever they are for; rows close beside each other are one. Rows of fewer than `least` bores are left out, and so is what
 * starts at the shoulder of a rebate: it cannot be reached before that is cut.
 */
export function stripRows(at: StripFace, least: number): StripRow[] {
  const lines = linesOf(
    at,
    at.panel.bores.filter((bore) => isShown(at, bore)),
  )
  return beside(lines).filter(({ holes }) => holes.length >= least)
}

/** Each run of a row for itself, and bores without one in rows of their own. */
export function runsIn(at: StripFace, row: StripRow): StripRow[] {
  const own = new Set(row.holes.map(({ id }) => id))
  const runs = runsOf(at.panel.bores.filter(({ id }) => own.has(id)))
  return runs.map((run) => rowOf(at, run.bores, row.along, [run.purpose]))
}

function isShown({ panel, face }: StripFace, bore: Bore): boolean {
  if (bore.surface === face) return true
  if (bore.surface === 'A' || bore.surface === 'B' || face === 'B' || bore.leanDeg !== undefined) return false
  const { x0, x1, y0, y1 } = edgeDistances(panel, bore)
  return Math.abs({ x0, x1, y0, y1 }[bore.surface]) < NOISE_MM
}

const edgeDistances = (panel: Panel, { at }: Bore): Record<PieceEdge, number> => ({
  x0: at[0],
  x1: panel.length - at[0],
  y0: at[1],
  y1: panel.width - at[1],
})

/** Which way out of the face an edge looks. */
export const EDGE_OUT: Readonly<Record<PieceEdge, FacePoint>> = { x0: [-1, 0], x1: [1, 0], y0: [0, -1], y1: [0, 1] }

function holeOf({ panel, face }: StripFace, bore: Bore): StripHole {
  const { surface, sink, diameter } = bore
  const mirrored = face === 'B'
  const place: FacePoint = [mirrored ? panel.length - bore.at[0] : bore.at[0], bore.at[1]]
  const out = surface === 'A' || surface === 'B' ? undefined : EDGE_OUT[surface]
  const down = -bore.at[2]
  const at: FacePoint = out === undefined ? place : [place[0] + out[0] * down, place[1] + out[1] * down]
  const lean = bore.leanDeg === undefined ? [] : [bore.leanDeg, (mirrored ? -1 : 1) * bore.axis[0], bore.axis[1]]
  const tool = [out === undefined ? 'face' : 'edge', roundMm(diameter), bore.through ? 'through' : roundMm(bore.depth)]
  return {
    id: bore.id,
    at,
    radius: Math.max(diameter, sink?.diameter ?? 0) / 2,
    tool: JSON.stringify([...tool, ...lean.map(roundMm), sink ?? 'plain']),
    square: bore.leanDeg === undefined,
  }
}

/** All bores of a face that a strip may show. */
export function facesHoles(at: StripFace): StripHole[] {
  return at.panel.bores.filter((bore) => isShown(at, bore)).map((bore) => holeOf(at, bore))
}

function rowOf(at: StripFace, bores: readonly Bore[], along: 0 | 1, purposes: readonly string[]): StripRow {
  const sorted = bores.map((bore) => holeOf(at, bore)).sort((a, b) => a.at[along] - b.at[along])
  const [first, ...rest] = sorted
  if (first === undefined) throw new Error('a row without a hole')
  const surface = bores[0]?.surface
  const edge = surface === undefined || surface === 'A' || surface === 'B' ? undefined : surface
  return { along, holes: [first, ...rest], purposes: [...new Set(purposes)], ...(edge !== undefined && { edge }) }
}

/** Bores on common lines, each bore on one: the line with the most bores first, of equal ones the shortest. */
function linesOf(at: StripFace, bores: readonly Bore[]): StripRow[] {
  const rows: StripRow[] = []
  let left = bores
  for (;;) {
    const line = bestLine(left)
    if (line === undefined) return rows
    rows.push(rowOf(at, line.bores, line.along, line.bores.flatMap(purposesOf)))
    const taken = new Set(line.bores)
    left = left.filter((bore) => !taken.has(bore))
  }
}

interface Line {
  readonly along: 0 | 1
  readonly bores: readonly Bore[]
}

function bestLine(bores: readonly Bore[]): Line | undefined {
  const lines = new Map<string, { along: 0 | 1; bores: Bore[] }>()
  for (const bore of bores) {
    for (const along of axesOf(bore)) {
      const key = [bore.surface, along, roundMm(bore.at[otherWay(along)]), roundMm(bore.at[2])].join(' ')
      const line = lines.get(key)
      if (line === undefined) lines.set(key, { along, bores: [bore] })
      else line.bores.push(bore)
    }
  }
  let best: Line | undefined
  for (const line of lines.values()) {
    if (line.bores.length < 2) continue
    const more = line.bores.length - (best?.bores.length ?? 0)
    if (best === undefined || more > 0 || (more === 0 && extent(line) < extent(best) - NOISE_MM)) best = line
  }
  return best
}

const otherWay = (along: 0 | 1): 0 | 1 => (along === 0 ? 1 : 0)

/** A row in an edge follows that edge. */
function axesOf({ surface }: Bore): readonly (0 | 1)[] {
  if (surface === 'A' || surface === 'B') return [0, 1]
  return surface === 'x0' || surface === 'x1' ? [1] : [0]
}

function extent({ along, bores }: Line): number {
  const places = bores.map(({ at }) => at[along])
  return Math.max(...places) - Math.min(...places)
}

/** Rows that lie close beside each other, made one. */
function beside(rows: readonly StripRow[]): StripRow[] {
  const merged: StripRow[] = []
  for (const row of rows) {
    const k = merged.findIndex((other) => areBeside(row, other))
    const other = merged[k]
    if (other === undefined) merged.push(row)
    else merged[k] = together(other, row)
  }
  return merged.length === rows.length ? merged : beside(merged)
}

function together(one: StripRow, other: StripRow): StripRow {
  const sorted = [...one.holes, ...other.holes].sort((a, b) => a.at[one.along] - b.at[one.along])
  const [first = one.holes[0], ...rest] = sorted
  return { ...one, holes: [first, ...rest], purposes: [...new Set([...one.purposes, ...other.purposes])] }
}

function areBeside(a: StripRow, b: StripRow): boolean {
  if (a.along !== b.along || a.edge !== b.edge) return false
  const across = a.along === 0 ? 1 : 0
  const [p, q] = [spanOf(a.holes, across), spanOf(b.holes, across)]
  const [s, t] = [spanOf(a.holes, a.along), spanOf(b.holes, b.along)]
  if (Math.max(p[1], q[1]) - Math.min(p[0], q[0]) > MOST_ACROSS_MM) return false
  return p[0] - q[1] < BESIDE_MM && q[0] - p[1] < BESIDE_MM && s[0] < t[1] + BESIDE_MM && t[0] < s[1] + BESIDE_MM
}

/** From the least to the greatest of the holes' middles along an axis, mm. */
export function spanOf(holes: readonly StripHole[], axis: 0 | 1): readonly [from: number, to: number] {
  const places = holes.map(({ at }) => at[axis])
  return [Math.min(...places), Math.max(...places)]
}
