import { type Curve, NOISE_MM, same } from '../geometry/index.ts'
import type { Pattern, PatternCut, PatternHole, Turns } from './hardware-types.ts'
import type { PieceEdge } from './piece-use.ts'
import type { FacePoint } from './types.ts'

export const ALL_TURNS: readonly Turns[] = [0, 1, 2, 3]

/** The sides of a piece in the order in which a quarter turn to the left takes one to the next. */
const ROUND: readonly PieceEdge[] = ['x1', 'y1', 'x0', 'y0']

/** A side after so many quarter turns to the left. */
export function turnedSide(side: PieceEdge, turns: number): PieceEdge {
  return ROUND[(ROUND.indexOf(side) + turns + 4) % 4] ?? side
}

/** A point or direction turned about (0, 0), exactly. */
export function turnedPoint([x, y]: FacePoint, turns: Turns): FacePoint {
  switch (turns) {
    case 0:
      return [x, y]
    case 1:
      return [0 - y, x]
    case 2:
      return [0 - x, 0 - y]
    case 3:
      return [y, 0 - x]
    default:
      return turns satisfies never
  }
}

/** A point of a piece where it lies on the face when it is turned and its reference point moved to `at`. */
export function laidOn([x, y]: FacePoint, at: FacePoint, turns: Turns): FacePoint {
  const [dx, dy] = turnedPoint([x, y], turns)
  return [at[0] + dx, at[1] + dy]
}

/** The pattern as a piece has it: its reference point at (0, 0). */
export function asPiece(pattern: Pattern): Pattern {
  const [x, y] = pattern.reference
  return moved(pattern, [0 - x, 0 - y], 0, [0, 0])
}

/** The pattern of a piece laid on the face. */
export function asLaid(pattern: Pattern, at: FacePoint, turns: Turns): Pattern {
  return moved(pattern, at, turns, at)
}

function moved(pattern: Pattern, by: FacePoint, turns: Turns, reference: FacePoint): Pattern {
  const place = (p: FacePoint): FacePoint => laidOn(p, by, turns)
  return {
    ...pattern,
    reference,
    holes: pattern.holes.map((hole) => ({
      ...hole,
      at: place(hole.at),
      ...(hole.lean !== undefined && { lean: turnedPoint(hole.lean, turns) }),
      ...(hole.flap !== undefined && { flap: { ...hole.flap, side: turnedSide(hole.flap.side, turns) } }),
    })),
    cuts: pattern.cuts.map((cut) => ({
      ...cut,
      curves: cut.curves.map(({ from, to, bulge }) => ({ from: place(from), to: place(to), bulge })),
    })),
  }
}

/** How a piece must lie so that it shows a pattern of the face. */
export interface Laying {
  readonly at: FacePoint
  readonly turns: Turns
  /** The holes of the face under those of the piece, in their order. */
  readonly bores: readonly string[]
  readonly cuts: readonly string[]
}

/** All ways to lay a piece on, so that each of its holes and rims is one of the pattern and none of those is left over. */
export function layings(piece: Pattern, pattern: Pattern): Laying[] {
  if (piece.name !== pattern.name || piece.item !== pattern.item) return []
  if (piece.holes.length !== pattern.holes.length || piece.cuts.length !== pattern.cuts.length) return []
  return ALL_TURNS.flatMap((turns): Laying[] => {
    const laying = layingOf(piece, pattern, turns)
    return laying === undefined ? [] : [laying]
  })
}

function layingOf(piece: Pattern, pattern: Pattern, turns: Turns): Laying | undefined {
  const own = anchor(piece)
  const tried = pattern.holes.length > 0 ? pattern.holes.map(({ at }) => at) : ends(pattern.cuts)
  const [dx, dy] = turnedPoint(own, turns)
  for (const point of tried) {
    const at: FacePoint = [point[0] - dx, point[1] - dy]
    const laid = asLaid(piece, at, turns)
    const bores = pairs(laid.holes, pattern.holes, sameHole)
    const cuts = pairs(laid.cuts, pattern.cuts, sameCut)
    if (bores === undefined || cuts === undefined) continue
    return { at, turns, bores: bores.map(({ bore }) => bore.id), cuts: cuts.map(({ id }) => id) }
  }
  return undefined
}

/** A hole, else an end of a rim. */
function anchor({ holes, cuts }: Pattern): FacePoint {
  const at = holes[0]?.at ?? ends(cuts)[0]
  if (at === undefined) throw new Error('a pattern with nothing in it')
  return at
}

const ends = (cuts: readonly PatternCut[]): FacePoint[] => cuts.flatMap(({ curves }) => curves.map(({ from }) => from))

/** For each of `own` the one of `others` that it is the same as, none of them twice; nothing where one is left. */
function pairs<One>(
  own: readonly One[],
  others: readonly One[],
  equal: (a: One, b: One) => boolean,
): One[] | undefined {
  const left = [...others]
  const found: One[] = []
  for (const one of own) {
    const index = left.findIndex((other) => equal(one, other))
    const [other] = index < 0 ? [] : left.splice(index, 1)
    if (other === undefined) return undefined
    found.push(other)
  }
  return found
}

/** Half of float noise each way, so that a hole under another's place is never off by more than float noise. */
const near = (a: FacePoint, b: FacePoint): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= NOISE_MM / 2

function sameHole(a: PatternHole, b: PatternHole): boolean {
  if (!near(a.at, b.at) || a.tool !== b.tool || a.flap?.side !== b.flap?.side) return false
  if (a.lean === undefined || b.lean === undefined) return a.lean === b.lean
  return near(a.lean, b.lean)
}

function sameCut(a: PatternCut, b: PatternCut): boolean {
  if (a.kind !== b.kind || a.whole !== b.whole || (a.depth === undefined) !== (b.depth === undefined)) return false
  if (!same(a.depth ?? 0, b.depth ?? 0) || !same(a.width ?? 0, b.width ?? 0)) return false
  return a.curves.length === b.curves.length && pairs(a.curves, b.curves, sameCurve) !== undefined
}

/** Either way along. */
function sameCurve(a: Curve, b: Curve): boolean {
  if (near(a.from, b.from) && near(a.to, b.to)) return same(a.bulge, b.bulge)
  return near(a.from, b.to) && near(a.to, b.from) && same(a.bulge, 0 - b.bulge)
}
