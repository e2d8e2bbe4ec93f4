import { same } from '../geometry/index.ts'
import { fromDatum, type Panel } from '../panel/index.ts'
import { cutPatterns } from './hardware-cuts.ts'
import {
  type Choice,
  choicesOf,
  type Member,
  NEAR_EDGE_MM,
  neededFolds,
  type Option,
  optionOf,
} from './hardware-folds.ts'
import { handsOf } from './hardware-hands.ts'
import { holePatterns, referenceOf, seenEdge, seenPoint } from './hardware-holes.ts'
import { axisOf, FEW_WORDS, fitsSheet, layoutOf } from './hardware-layout.ts'
import { asLaid, asPiece, layings, turnedSide } from './hardware-turns.ts'
import type {
  EdgeWord,
  HardwarePiece,
  HardwarePlace,
  Pattern,
  PatternHole,
  PieceFold,
  Turns,
} from './hardware-types.ts'
import type { Rooms } from './packing.ts'
import type { Size } from './paper.ts'
import type { PieceEdge } from './piece-use.ts'

/** A piece before it is known how large its paper is. */
export type PieceSketch = Omit<HardwarePiece, 'paper' | 'words' | 'way' | 'scarce'>

/**
 * The rectangles that the words of a piece take when they are set in one way or another, mm. `scarce`: of the shortest words
 * that name it, where it has no room for more.
 */
export type WordWays = (piece: PieceSketch, scarce: boolean) => readonly Size[]

export interface PieceOptions {
  /** What a sheet of paper has free. */
  readonly rooms: Rooms
  readonly ways: WordWays
  /** An edge no further than this from the nearest hole is shown as a fold, mm. */
  readonly nearEdge?: number
  /** Whether a piece may have a second fold, square to the first, so that nothing is measured; true when absent. */
  readonly corners?: boolean
  /** The panels of the module: those of the other hand are named on pieces that serve them too. */
  readonly others?: readonly Panel[]
  /** Ids of what is marked already: a pattern with nothing else in it is left out. */
  readonly marked?: ReadonlySet<string>
}

/**
 * One piece for each pattern of holes of a face and of the edges that are marked from it, for each end of a groove and for
 * each cutout or corner of one, with all places where the panel has it. Places that the same piece cannot reach in the same
 * way, folded over an edge at the same distance, get a piece of their own. Every hole of the face is under a hole of a
 * piece at one of its places, and each hole of a piece lies on a hole of the panel at all of them.
 * Throws RangeError where the sheet has no room for a single hole with its words.
 */
export function hardwarePieces(panel: Panel, face: 'A' | 'B', options: PieceOptions): HardwarePiece[] {
  const { rooms, nearEdge = NEAR_EDGE_MM, marked = new Set() } = options
  const patterns = [
    ...holePatterns(panel, face, marked).flatMap((pattern) => parted(panel, face, pattern, rooms)),
    ...cutPatterns(panel, face, fitsSheet(rooms)).filter(({ cuts }) => !cuts.every(({ id }) => marked.has(id))),
  ]
  return alike(panel, patterns, nearEdge).flatMap(({ pattern, members }) => {
    const pieces: HardwarePiece[] = []
    let left: readonly Member[] = members
    while (left.length > 0) {
      const { piece, done } = firstPiece(panel, face, pattern, left, options)
      pieces.push(piece)
      left = left.filter((member) => !done.includes(member))
    }
    return pieces
  })
}

interface Alike {
  /** In the frame of the piece. */
  readonly pattern: Pattern
  readonly members: Member[]
}

/** Patterns that one piece of paper can show, moved and turned. */
function alike(panel: Panel, patterns: readonly Pattern[], nearEdge: number): Alike[] {
  const kinds: Alike[] = []
  for (const pattern of patterns) {
    const known = kinds
      .map((kind) => ({ kind, ways: layings(kind.pattern, pattern) }))
      .find(({ ways }) => ways.length > 0)
    const kind = known?.kind ?? { pattern: asPiece(pattern), members: [] }
    if (known === undefined) kinds.push(kind)
    const ways = known?.ways ?? layings(kind.pattern, pattern)
    kind.members.push(ways.map((laying) => optionOf(panel, kind.pattern, laying, nearEdge)))
  }
  return kinds
}

/** A pattern that is too long for a sheet in stretches: holes in their order along it, as many as fit. */
function parted(panel: Panel, face: 'A' | 'B', pattern: Pattern, rooms: Rooms): Pattern[] {
  if (pattern.holes.length === 1 || fitsAlone(pattern, rooms)) return [pattern]
  const stretchOf = (holes: readonly PatternHole[]): Pattern => ({
    ...pattern,
    holes,
    reference: referenceOf(holes, panel, face, true),
  })
  const axis = longSideOf(pattern)
  const stretches: PatternHole[][] = []
  for (const hole of [...pattern.holes].sort((a, b) => a.at[axis] - b.at[axis])) {
    const last = stretches.at(-1)
    if (last !== undefined && fitsAlone(stretchOf([...last, hole]), rooms)) last.push(hole)
    else stretches.push([hole])
  }
  return stretches.map(stretchOf)
}

function longSideOf({ holes }: Pattern): 0 | 1 {
  const long = (axis: 0 | 1): number => {
    const places = holes.map(({ at }) => at[axis])
    return Math.max(...places) - Math.min(...places)
  }
  return long(0) >= long(1) ? 0 : 1
}

/** Whether a sheet has room for it with the folds that it cannot do without, and a few words. */
function fitsAlone(pattern: Pattern, rooms: Rooms): boolean {
  const piece = asPiece(pattern)
  const folds = neededFolds(piece)
  return layoutOf(piece, folds, linesBeside(folds), [FEW_WORDS], rooms) !== undefined
}

/** Across a fold nothing is measured; along an axis without one, the line square to it is laid on a mark. */
function linesBeside(folds: readonly PieceFold[]): (0 | 1)[] {
  const fixed = new Set(folds.map(({ side }) => axisOf(side)))
  return ([1, 0] as const).filter((line) => !fixed.has(line === 0 ? 1 : 0))
}

/**
 * The first choice for which a sheet has room; where the list of places is too long for any, for half of them, and where the
 * words for one place are, with its name alone.
 */
function firstPiece(
  panel: Panel,
  face: 'A' | 'B',
  pattern: Pattern,
  members: readonly Member[],
  options: PieceOptions,
  scarce = false,
): { piece: HardwarePiece; done: readonly Member[] } {
  const { rooms, ways, corners = true, others = [] } = options
  for (const choice of choicesOf(pattern, members, corners)) {
    const sketch = sketchOf(panel, face, pattern, choice, others)
    const layout = layoutOf(sketch.pattern, sketch.folds, sketch.lines, ways(sketch, scarce), rooms)
    if (layout !== undefined) {
      return { piece: { ...sketch, ...layout, scarce }, done: choice.chosen.map(({ member }) => member) }
    }
  }
  if (members.length === 1 && scarce) throw new RangeError(`no sheet has room for ${pattern.name} of ${panel.id}`)
  if (members.length === 1) return firstPiece(panel, face, pattern, members, options, true)
  return firstPiece(panel, face, pattern, members.slice(0, Math.ceil(members.length / 2)), options)
}

/** The piece as it lies at its first place. */
function sketchOf(
  panel: Panel,
  face: 'A' | 'B',
  pattern: Pattern,
  { folds, chosen }: Choice,
  others: readonly Panel[],
): PieceSketch {
  const [first, ...more] = chosen
  if (first === undefined) throw new Error('a piece without a place')
  const turns = first.option.laying.turns
  const laid = asLaid(pattern, [0, 0], turns)
  const seen = folds.map((fold) => ({ ...fold, side: turnedSide(fold.side, turns) }))
  const [main] = seen
  const lines = linesBeside(seen)
  const arrow = main?.side ?? 'y1'
  const placeOf = ({ option }: { option: Option }): HardwarePlace =>
    placeAt(panel, face, seen, lines, arrow, option, ((option.laying.turns - turns + 4) % 4) as Turns, turns)
  return {
    panel,
    face,
    pattern: laid,
    folds: seen,
    lines,
    arrow,
    anyTurn: seen.length === 0 && isRound(pattern),
    hands: handsOf(asPiece(laid), seen, arrow, face, others),
    places: [placeOf(first), ...more.map(placeOf)],
  }
}

const isRound = ({ holes: [hole, ...more], cuts }: Pattern): boolean =>
  hole !== undefined && hole.lean === undefined && more.length === 0 && cuts.length === 0

function placeAt(
  panel: Panel,
  face: 'A' | 'B',
  folds: PieceSketch['folds'],
  lines: readonly (0 | 1)[],
  arrow: PieceEdge,
  { laying, near }: Option,
  turns: Turns,
  firstTurns: Turns,
): HardwarePlace {
  const { at } = laying
  const nameOf = (side: PieceEdge): EdgeWord => panel.edges[seenEdge(face, side)]
  const from = fromDatum(panel, seenPoint(panel, face, at))
  // A fold that carries holes lies on an edge at every place; one of two for both hands on one side only.
  const used = folds.filter(
    ({ side, mm, needed }) => needed || same(near.get(turnedSide(side, 4 - firstTurns)) ?? Number.NaN, mm),
  )
  return {
    at,
    turns,
    folds: used.map(({ side }) => {
      const edge = turnedSide(side, turns)
      return { side, edge, name: nameOf(edge) }
    }),
    measured: lines.map((line) => ((line === 1) === (turns % 2 === 0) ? from.x : from.y)),
    toward: nameOf(turnedSide(arrow, turns)),
    bores: laying.bores,
    cuts: laying.cuts,
  }
}
