import { NOISE_MM, same } from '../geometry/index.ts'
import type { Bore, Panel } from '../panel/index.ts'
import type { Flap, Pattern, PatternHole } from './hardware-types.ts'
import type { PieceEdge } from './piece-use.ts'
import type { FacePoint } from './types.ts'

/** A point of the panel as it is seen on a face: on face B, x becomes length − x. */
export function seenPoint(panel: Panel, face: 'A' | 'B', [x, y]: readonly [number, number, ...unknown[]]): FacePoint {
  return [face === 'B' ? panel.length - x : x, y]
}

/** An edge of the panel as it is seen on a face. */
export function seenEdge(face: 'A' | 'B', side: PieceEdge): PieceEdge {
  if (face === 'A') return side
  return side === 'x0' ? 'x1' : side === 'x1' ? 'x0' : side
}

/**
 * Patterns of the holes of a face, and of those in the edges that its pieces reach: for each piece of hardware one, the
 * holes that its grip makes there. A hole that belongs to several is in each of their patterns, but a pattern of which
 * every hole is in larger ones, or `marked` already, is left out.
 */
export function holePatterns(panel: Panel, face: 'A' | 'B', marked: ReadonlySet<string>): Pattern[] {
  const groups = new Map<string, { bore: Bore; purpose: string; item: string | undefined }[]>()
  const add = (key: string, one: { bore: Bore; purpose: string; item: string | undefined }): void => {
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else if (!group.some(({ bore }) => bore === one.bore)) group.push(one)
  }
  const ours = panel.bores.filter((bore) => faceOf(panel, bore) === face)
  for (const bore of ours) {
    if (bore.uses.length === 0) add(bore.id, { bore, purpose: bore.purpose, item: undefined })
    for (const { hardware, item, purpose } of bore.uses)
      add(`${hardware} ${edgeKey(panel, ours, bore, hardware)}`, { bore, purpose, item })
  }
  const patterns = [...groups.values()].map((group): Pattern => {
    const holes = group.map(({ bore }) => holeOf(panel, face, bore))
    const [main] = [...group].sort((a, b) => b.bore.diameter - a.bore.diameter)
    const item = main?.item
    return {
      name: main?.purpose ?? '',
      ...(item !== undefined && { item }),
      holes,
      cuts: [],
      reference: referenceOf(holes, panel, face),
    }
  })
  return needed(patterns, marked)
}

/** One grip may bore a face and one edge beside it (a cam and its bolt); holes in two edges are two patterns. */
function edgeKey(panel: Panel, ours: readonly Bore[], bore: Bore, hardware: string): string {
  const mine = ours.filter(({ uses }) => uses.some((use) => use.hardware === hardware))
  const inEdges = mine.filter(({ surface }) => surface !== 'A' && surface !== 'B')
  const foldOf = (one: Bore): string => `${one.surface} ${fine(shoulderDepth(panel, one))}`
  return new Set(inEdges.map(foldOf)).size <= 1 ? 'all' : foldOf(bore)
}

/** Without those that are marked with larger ones already. */
function needed(patterns: readonly Pattern[], before: ReadonlySet<string>): Pattern[] {
  const marked = new Set(before)
  const kept = new Set<Pattern>()
  for (const pattern of [...patterns].sort((a, b) => b.holes.length - a.holes.length)) {
    if (pattern.holes.every(({ bore }) => marked.has(bore.id))) continue
    kept.add(pattern)
    for (const { bore } of pattern.holes) marked.add(bore.id)
  }
  return patterns.filter((pattern) => kept.has(pattern))
}

/**
 * The face from which a hole is marked: its own; of a hole in an edge, the face that its piece of hardware is bored into
 * besides, or that the rebate is cut into at whose shoulder it starts; else A.
 */
export function faceOf(panel: Panel, bore: Bore): 'A' | 'B' {
  if (bore.surface === 'A' || bore.surface === 'B') return bore.surface
  if (shoulderDepth(panel, bore) > NOISE_MM) return rebateAt(panel, bore)?.face ?? 'A'
  const hardware = new Set(bore.uses.map((use) => use.hardware))
  const other = panel.bores.find(
    ({ surface, uses }) => (surface === 'A' || surface === 'B') && uses.some((use) => hardware.has(use.hardware)),
  )
  return other?.surface === 'B' ? 'B' : 'A'
}

/** The rebate at whose shoulder a bore starts. */
function rebateAt(panel: Panel, bore: Bore): Panel['grooves'][number] | undefined {
  return panel.grooves.find(({ min, max }) => touches(min, max, bore.at))
}

const touches = (min: FacePoint, max: FacePoint, [x, y]: readonly [number, number, ...unknown[]]): boolean =>
  x >= min[0] - NOISE_MM && x <= max[0] + NOISE_MM && y >= min[1] - NOISE_MM && y <= max[1] + NOISE_MM

/** From the plane of the edge to where the bore starts, mm: more than 0 at the shoulder of a rebate. */
function shoulderDepth(panel: Panel, { surface, at }: Bore): number {
  switch (surface) {
    case 'x0':
      return at[0]
    case 'x1':
      return panel.length - at[0]
    case 'y0':
      return at[1]
    case 'y1':
      return panel.width - at[1]
    case 'A':
    case 'B':
      return 0
    default:
      return surface satisfies never
  }
}

/** Unit direction from the face outward across an edge. */
export const OUT: Readonly<Record<PieceEdge, FacePoint>> = { x0: [-1, 0], x1: [1, 0], y0: [0, -1], y1: [0, 1] }

function holeOf(panel: Panel, face: 'A' | 'B', bore: Bore): PatternHole {
  const at = seenPoint(panel, face, bore.at)
  const radius = Math.max(bore.diameter, bore.sink?.diameter ?? 0) / 2
  if (bore.surface !== 'A' && bore.surface !== 'B') {
    const fromFace = face === 'A' ? 0 - bore.at[2] : panel.thickness + bore.at[2]
    const side = seenEdge(face, bore.surface)
    const rebate = shoulderDepth(panel, bore) > NOISE_MM ? rebateAt(panel, bore) : undefined
    const flap: Flap = {
      side,
      fromFace,
      shoulder: shoulderDepth(panel, bore) > NOISE_MM,
      deep: rebate?.depth ?? panel.thickness,
    }
    const [dx, dy] = OUT[side]
    return { at: [at[0] + dx * fromFace, at[1] + dy * fromFace], radius, bore, tool: toolOf(bore, flap), flap }
  }
  const hole = { at, radius, bore, tool: toolOf(bore, undefined) }
  if (bore.leanDeg === undefined) return hole
  const [x, y] = bore.axis
  const run = Math.hypot(x, y)
  return run <= NOISE_MM ? hole : { ...hole, lean: [((face === 'B' ? -1 : 1) * x) / run, y / run] }
}

const fine = (mm: number): number => Math.round(mm / NOISE_MM) + 0

/** All that tells the bit, its depth and how it is held. */
function toolOf(bore: Bore, flap: Flap | undefined): string {
  const depth = bore.through ? 'through' : fine(bore.depth)
  const edge = flap === undefined ? 'face' : [fine(flap.fromFace), flap.shoulder]
  return JSON.stringify([fine(bore.diameter), depth, bore.leanDeg ?? 'square', bore.sink ?? 'plain', edge])
}

/** A hole this many times wider than all the others is the one to measure to, as a cup beside its dowels. */
const WIDER = 1.5

/**
 * The point of a pattern that a person measures to: the one wide hole; of more than two holes on one line the first one, seen
 * from the datum edge, and of a `stretch` of them; else the middle between the outermost holes. Holes in an edge count where they stand on the fold.
 */
export function referenceOf(holes: readonly PatternHole[], panel: Panel, face: 'A' | 'B', stretch = false): FacePoint {
  const flat = holes.filter(({ flap }) => flap === undefined)
  const some = flat.length > 0 ? flat : holes
  const [widest, next] = [...some].sort((a, b) => b.bore.diameter - a.bore.diameter)
  if (widest === undefined) throw new Error('a pattern without holes')
  if (next === undefined || widest.bore.diameter > WIDER * next.bore.diameter) return onFold(widest)
  const points = some.map(onFold)
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  if ((some.length > 2 || stretch) && (same(left, right) || same(low, high))) {
    const datumX = seenEdge(face, panel.datum.x)
    return [datumX === 'x0' ? left : right, panel.datum.y === 'y0' ? low : high]
  }
  return [(left + right) / 2, (low + high) / 2]
}

function onFold({ at, flap }: PatternHole): FacePoint {
  if (flap === undefined) return at
  const [dx, dy] = OUT[flap.side]
  return [at[0] - dx * flap.fromFace, at[1] - dy * flap.fromFace]
}
