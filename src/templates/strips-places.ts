import { NOISE_MM, same } from '../geometry/index.ts'
import type { Panel } from '../panel/index.ts'
import type { EdgeWord } from './hardware-types.ts'
import type { PieceEdge, PieceHand, PiecePlace } from './piece-use.ts'
import { facesHoles, type StripFace, type StripHole, type StripRow, spanOf } from './strips-rows.ts'
import { edgePlace, edgesOf, isOneLine, otherAxis, type StripShape, sizeOfFace } from './strips-shape.ts'
import type { FacePoint } from './types.ts'

/** A place where a strip marks another row, and whether it is folded over its second line there. */
export interface OwnPlace {
  readonly place: PiecePlace
  readonly second: boolean
}

/** A printed line that is laid on an edge: where it lies from the piece's origin along its axis, mm. */
interface PrintedLine {
  readonly axis: 0 | 1
  readonly from: number
  readonly second: boolean
}

/** The strip as it is drawn. */
export function drawnPlace({ origin, fold, stop }: StripShape): PiecePlace {
  return { at: origin.at, turned: false, folds: [fold, stop].filter((edge) => edge !== undefined) }
}

/**
 * The place at which a strip marks all holes of another row with the right bits, the way round that leaves less to be measured;
 * or nothing, where it does not fit that row. `twice`: it may be folded over at either side of its row.
 */
export function placeOn(at: StripFace, shape: StripShape, row: StripRow, twice: boolean): OwnPlace | undefined {
  const lines = printedLines(at, shape, twice)
  const found = [false, true].flatMap((turned): OwnPlace[] => {
    const origin = movedOrigin(shape, row, turned)
    if (origin === undefined) return []
    const hits = lines.flatMap(({ axis, from, second }) => {
      const edge = edgeAt(at, axis, origin[axis] + (turned ? -from : from))
      return edge === undefined ? [] : [{ edge, second }]
    })
    // A strip over an edge lies right only when it is folded over that edge.
    if (row.edge !== undefined && !hits.some(({ edge }) => edge === row.edge)) return []
    const place = { at: origin, turned, folds: [...new Set(hits.map(({ edge }) => edge))] }
    return [{ place, second: hits.some(({ second }) => second) }]
  })
  return found.sort((a, b) => b.place.folds.length - a.place.folds.length)[0]
}

function printedLines(at: StripFace, { row, fold, stop, origin }: StripShape, twice: boolean): PrintedLine[] {
  const across = otherAxis(row.along)
  const line = (edge: PieceEdge | undefined, axis: 0 | 1): PrintedLine[] =>
    edge === undefined ? [] : [{ axis, from: edgePlace(at, edge) - origin.at[axis], second: false }]
  const folds = line(fold, across)
  const seconds = twice ? folds.map((one) => ({ ...one, from: -one.from, second: true })) : []
  return [...line(stop, row.along), ...folds, ...seconds]
}

function edgeAt(at: StripFace, axis: 0 | 1, place: number): PieceEdge | undefined {
  return edgesOf(axis).find((edge) => same(edgePlace(at, edge), place))
}

/** Where the origin comes to lie when the strip's holes are those of the row; nothing where they are not. */
function movedOrigin({ row: own, origin }: StripShape, row: StripRow, turned: boolean): FacePoint | undefined {
  if (own.along !== row.along || own.holes.length !== row.holes.length) return undefined
  if ((own.edge === undefined) !== (row.edge === undefined)) return undefined
  if (turned && !own.holes.every(({ square }) => square)) return undefined
  const shift = ([0, 1] as const).map((axis) =>
    turned
      ? spanOf(own.holes, axis)[0] + spanOf(row.holes, axis)[1]
      : spanOf(row.holes, axis)[0] - spanOf(own.holes, axis)[0],
  )
  const [dx = 0, dy = 0] = shift
  const moved = ([x, y]: FacePoint): FacePoint => (turned ? [dx - x, dy - y] : [x + dx, y + dy])
  return own.holes.every((hole) => has(row.holes, hole, moved(hole.at))) ? moved(origin.at) : undefined
}

/** What an edge is called that is seen on that side of a face. */
function nameOf({ panel: { edges }, face }: StripFace, side: PieceEdge): EdgeWord {
  if (face === 'A') return edges[side]
  return edges[side === 'x0' ? 'x1' : side === 'x1' ? 'x0' : side]
}

function has(holes: readonly StripHole[], { tool }: StripHole, [x, y]: FacePoint): boolean {
  return holes.some(
    (hole) => hole.tool === tool && Math.abs(hole.at[0] - x) < NOISE_MM && Math.abs(hole.at[1] - y) < NOISE_MM,
  )
}

/**
 * The panel of the other hand, if there is one among `others`: of the same size, with the mirror images of all holes of
 * `rows` on the same face. Where those lie mirrored along the row, its strip is turned half round there; where they lie
 * mirrored across it, the strip stays as it is. Only for holes on one line. A panel that has the very same holes is not the other hand.
 * What is said of edges must hold there as well: their names are mirrored with the holes; or, where every one of the `places` is
 * folded over an edge beside the row, only those beside it are not, since the second line says its own.
 */
export function handOf(
  at: StripFace,
  shape: StripShape,
  rows: readonly StripRow[],
  places: readonly PiecePlace[],
  others: readonly Panel[],
  twice: boolean,
): PieceHand | undefined {
  if (shape.row.edge !== undefined || !isOneLine(shape.row) || (shape.fold !== undefined && !twice)) return undefined
  const holes = rows.flatMap((row) => row.holes)
  const size = sizeOfFace(at)
  const mirror = (axis: 0 | 1, [x, y]: FacePoint): FacePoint => (axis === 0 ? [size[0] - x, y] : [x, size[1] - y])
  for (const panel of others) {
    if (panel.id === at.panel.id || !same(panel.length, size[0]) || !same(panel.width, size[1])) continue
    const theirs = facesHoles({ panel, face: at.face })
    if (holes.every((hole) => has(theirs, hole, hole.at))) continue
    const { along } = shape.row
    const across = otherAxis(along)
    const there: StripFace = { panel, face: at.face }
    // Edges of these ends have the same names there, or those of the mirror image.
    const areNamed = (axis: 0 | 1, mirrored: boolean): boolean => {
      const [low, high] = edgesOf(axis)
      const [first, second] = mirrored ? [high, low] : [low, high]
      return nameOf(there, first) === nameOf(at, low) && nameOf(there, second) === nameOf(at, high)
    }
    if (
      holes.every((hole) => has(theirs, hole, mirror(along, hole.at))) &&
      areNamed(along, true) &&
      areNamed(across, false)
    )
      return { other: panel.name, turned: true }
    const folded = places.every(({ folds }) => folds.some((edge) => edgesOf(across).includes(edge)))
    const isSaid = areNamed(along, false) && (areNamed(across, true) || (folded && areNamed(across, false)))
    if (shape.fold !== undefined && isSaid && holes.every((hole) => has(theirs, hole, mirror(across, hole.at)))) {
      const [low, high] = edgesOf(across)
      const edge = nameOf(there, shape.fold === low ? high : low)
      return { other: panel.name, turned: false, edge }
    }
  }
  return undefined
}
