import { NOISE_MM, same } from '../geometry/index.ts'
import type { Panel } from '../panel/index.ts'
import { axisOf, extentOf, signOf } from './hardware-layout.ts'
import { type Laying, turnedSide } from './hardware-turns.ts'
import type { Pattern, PieceFold } from './hardware-types.ts'
import type { PieceEdge } from './piece-use.ts'
import type { FacePoint } from './types.ts'

/** An edge of the panel no further than this from the nearest hole is shown as a fold, mm. */
export const NEAR_EDGE_MM = 120

const SIDES: readonly PieceEdge[] = ['x0', 'x1', 'y0', 'y1']

/** A way to lay a piece on, with the edges of the panel that lie near there: from the reference point, mm. */
export interface Option {
  readonly laying: Laying
  readonly near: ReadonlyMap<PieceEdge, number>
}

/** One place of the panel, with all ways to lay the piece on there. */
export type Member = readonly Option[]

/** What a piece is folded over, and how it is laid at each of its places. */
export interface Choice {
  readonly folds: readonly PieceFold[]
  readonly chosen: readonly { readonly member: Member; readonly option: Option }[]
}

/** The edges of the face that lie beyond a piece laid on, no more than `most` mm from its nearest hole. `pattern` is in the frame of the piece. */
export function optionOf(panel: Panel, pattern: Pattern, laying: Laying, most: number): Option {
  const { min, max } = centresOf(pattern)
  const near = new Map<PieceEdge, number>()
  for (const side of SIDES) {
    const mm = toEdge(panel, laying.at, turnedSide(side, laying.turns))
    const axis = axisOf(side)
    const reach = signOf(side) < 0 ? 0 - min[axis] : max[axis]
    if (mm >= reach - NOISE_MM && mm - reach <= most) near.set(side, mm)
  }
  return { laying, near }
}

/** Distance of a point of a face from one of its edges, mm. */
function toEdge(panel: Panel, at: FacePoint, side: PieceEdge): number {
  const axis = axisOf(side)
  return signOf(side) < 0 ? at[axis] : (axis === 0 ? panel.length : panel.width) - at[axis]
}

/** The rectangle around the centres of all that lies flat on the face. */
function centresOf(pattern: Pattern): { min: FacePoint; max: FacePoint } {
  return extentOf({ ...pattern, holes: pattern.holes.map((hole) => ({ ...hole, radius: 0 })) })
}

/** The folds that the holes in edges ask for. */
export function neededFolds({ holes }: Pattern): PieceFold[] {
  const folds: PieceFold[] = []
  for (const { at, flap } of holes) {
    if (flap === undefined) continue
    const mm = signOf(flap.side) * at[axisOf(flap.side)] - flap.fromFace + 0
    if (!folds.some((fold) => fold.side === flap.side))
      folds.push({ side: flap.side, mm, shoulder: flap.shoulder, needed: true })
  }
  return folds
}

/**
 * Choices for the first piece of these places, the most wanted first: a fold over an edge that most of them have at the same
 * distance, where that can be with a second fold (or one for each hand) that leaves nothing to measure; at last no fold at
 * all. Second folds only with `corners`. Each choice lays the piece on some of the places; the others need further pieces.
 */
export function* choicesOf(pattern: Pattern, members: readonly Member[], corners: boolean): Generator<Choice> {
  const needed = neededFolds(pattern)
  const [main] = needed
  if (main !== undefined) {
    const all = members.map((member) => ({ member, options: member }))
    yield* withSecond(needed, main.side, all, corners)
    return
  }
  for (const fold of sharedFolds(members)) {
    const having = members
      .map((member) => ({ member, options: member.filter((option) => has(option, fold)) }))
      .filter(({ options }) => options.length > 0)
    yield* withSecond([fold], fold.side, having, corners)
  }
  yield { folds: [], chosen: members.flatMap((member) => member.slice(0, 1).map((option) => ({ member, option }))) }
}

const has = ({ near }: Option, { side, mm }: { side: PieceEdge; mm: number }): boolean => same(near.get(side) ?? -1, mm)

/** Every fold that some place could have, those that the most places have first, then the nearest. */
function sharedFolds(members: readonly Member[]): PieceFold[] {
  const folds: { fold: PieceFold; count: number }[] = []
  for (const member of members) {
    for (const { near } of member) {
      for (const [side, mm] of near) {
        if (folds.some(({ fold }) => fold.side === side && same(fold.mm, mm))) continue
        const fold: PieceFold = { side, mm, shoulder: false, needed: false }
        const count = members.filter((one) => one.some((option) => has(option, fold))).length
        folds.push({ fold, count })
      }
    }
  }
  return folds
    .sort((a, b) => b.count - a.count || (same(a.fold.mm, b.fold.mm) ? 0 : a.fold.mm - b.fold.mm))
    .map(({ fold }) => fold)
}

interface Having {
  readonly member: Member
  /** Ways that have the folds so far. */
  readonly options: readonly Option[]
}

function* withSecond(
  folds: readonly PieceFold[],
  side: PieceEdge,
  having: readonly Having[],
  corners: boolean,
): Generator<Choice> {
  const level = axisOf(side) === 0
  const [low, high]: readonly [PieceEdge, PieceEdge] = level ? ['y0', 'y1'] : ['x0', 'x1']
  for (const more of corners ? secondFolds(low, high, having) : []) {
    const chosen = having.flatMap(({ member, options }) => {
      const option = options.find((one) => more.some((fold) => has(one, fold)))
      return option === undefined ? [] : [{ member, option }]
    })
    if (chosen.length === having.length) yield { folds: [...folds, ...more], chosen }
  }
  yield {
    folds,
    chosen: having.flatMap(({ member, options }) => options.slice(0, 1).map((option) => ({ member, option }))),
  }
}

/** One fold, or one on each side, so that the first place has one of them, and the first that has not has the other. */
function* secondFolds(low: PieceEdge, high: PieceEdge, having: readonly Having[]): Generator<readonly PieceFold[]> {
  const pairs: (readonly PieceFold[])[] = []
  for (const side of [low, high]) {
    for (const fold of foldsAt(having[0], side)) {
      const left = having.find(({ options }) => !options.some((option) => has(option, fold)))
      if (left === undefined) yield [fold]
      else for (const other of foldsAt(left, side === low ? high : low)) pairs.push([fold, other])
    }
  }
  yield* pairs
}

function foldsAt(having: Having | undefined, side: PieceEdge): PieceFold[] {
  const distances: number[] = []
  for (const { near } of having?.options ?? []) {
    const mm = near.get(side)
    if (mm !== undefined && !distances.some((other) => same(other, mm))) distances.push(mm)
  }
  return distances.sort((a, b) => a - b).map((mm) => ({ side, mm, shoulder: false, needed: false }))
}
