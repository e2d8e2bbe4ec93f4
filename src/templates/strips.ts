import { NOISE_MM } from '../geometry/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Rooms } from './packing.ts'
import type { Size } from './paper.ts'
import type { PieceHand, PiecePlace, PieceRepeat, PieceUse } from './piece-use.ts'
import { repeatedStrip } from './repeated.ts'
import { cutPieces } from './strips-cut.ts'
import { drawnPlace, handOf, type OwnPlace, placeOn } from './strips-places.ts'
import { runsIn, type StripFace, type StripRow, stripRows } from './strips-rows.ts'
import { STRIP_OVERLAP } from './strips-seams.ts'
import { edgePlace, mayFoldTwice, otherAxis, type StripShape, shapeOf, windowOf } from './strips-shape.ts'
import type { Piece, Rect } from './types.ts'

export interface StripOptions {
  readonly rooms: Rooms
  /** Rows of fewer bores are left to pages of the whole face. */
  readonly least: number
  /** A fold line at either side of a row that lies near an edge: the strip serves the other hand, and is wider. */
  readonly twice: boolean
  /** Rows that are longer than a piece: joined of pieces, or of a short piece that is moved along. */
  readonly long: 'joined' | 'repeated'
  /** Of a repeated piece, mm; as long as the sheet has room for when absent. */
  readonly longest?: number
  /** The panels of the module: a strip may serve the one of the other hand. */
  readonly others: readonly Panel[]
  /** How many strips the panel has already: they are numbered on. */
  readonly numbered?: number
}

/** A cut-out piece that is not yet laid on a sheet of paper. */
export type LoosePiece = Omit<Piece, 'sheet' | 'paper' | 'at' | 'row' | 'column'> & { readonly use: PieceUse }

export interface StripPlan {
  readonly pieces: readonly LoosePiece[]
  /** Ids of the bores that some strip marks. */
  readonly marked: ReadonlySet<string>
}

/** A strip with all the rows that it marks. */
interface Strip {
  readonly shape: StripShape
  readonly places: readonly [PiecePlace, ...PiecePlace[]]
  readonly hand?: PieceHand
  readonly repeat?: PieceRepeat
}

/**
 * Strips for the rows of bores of a face: a narrow window along each row, folded over the edge beside it or laid on a pencil line,
 * stopped at the end of the panel or measured from it. One strip serves all rows that have the same holes. A row that no sheet
 * has room for is left out of `marked`.
 */
export function planStrips(face: StripFace, options: StripOptions): StripPlan {
  const rows = stripRows(face, options.least).flatMap((row) =>
    options.long === 'repeated' && roomFor(face, shapeOf(face, row), options) === 'too long'
      ? runsIn(face, row)
      : [row],
  )
  const shapes = rows.map((row) => shapeOf(face, row)).filter((shape) => roomFor(face, shape, options) !== 'too wide')
  // A strip that is folded over an edge is drawn as it lies there, and measured where else it serves.
  shapes.sort((a, b) => ties(b) - ties(a))
  const marked = new Set<string>()
  const pieces: LoosePiece[] = []
  let strips = options.numbered ?? 0
  let marks = 0
  for (const shape of shapes) {
    if (shape.row.holes.every(({ id }) => marked.has(id))) continue
    const strip = stripOf(
      face,
      shape,
      shapes.map(({ row }) => row).filter((row) => isOpen(row, marked)),
      options,
    )
    for (const { id } of strip.rows.flatMap(({ holes }) => holes)) marked.add(id)
    const cut = cutPieces(face, looseOf(face, strip, `S${strips + 1}`), longestOf(face, strip.shape, options), marks)
    pieces.push(...cut)
    strips += 1
    marks += cut.reduce((sum, { joins }) => sum + joins.length, 0)
  }
  return { pieces, marked }
}

const ties = ({ fold, stop }: StripShape): number => (fold === undefined ? 0 : 2) + (stop === undefined ? 0 : 1)

const isOpen = (row: StripRow, marked: ReadonlySet<string>): boolean => !row.holes.some(({ id }) => marked.has(id))

function stripOf(
  face: StripFace,
  shape: StripShape,
  rows: readonly StripRow[],
  options: StripOptions,
): Strip & { readonly rows: readonly StripRow[] } {
  const twice =
    options.twice && mayFoldTwice(face, shape) && roomFor(face, { ...shape, second: true }, options) !== 'too wide'
  const served: { row: StripRow; found: OwnPlace }[] = []
  for (const row of rows) {
    if (row === shape.row) continue
    const found = placeOn(face, shape, row, twice)
    if (found !== undefined) served.push({ row, found })
  }
  const all = [shape.row, ...served.map(({ row }) => row)]
  const places: Strip['places'] = [drawnPlace(shape), ...served.map(({ found }) => found.place)]
  const hand = handOf(face, shape, all, places, options.others, twice)
  const second = (hand !== undefined && shape.fold !== undefined) || served.some(({ found }) => found.second)
  const whole = { ...shape, second }
  const short = shortened(face, whole, options)
  return {
    shape: short?.shape ?? whole,
    places,
    rows: all,
    ...(hand !== undefined && { hand }),
    ...(short !== undefined && { repeat: short.repeat }),
  }
}

/** The strip with as many of its holes as one piece has room for, where all of them are more. */
function shortened(face: StripFace, shape: StripShape, options: StripOptions): ReturnType<typeof repeatedStrip> {
  if (options.long !== 'repeated') return undefined
  const most = Math.min(longestOf(face, shape, options), options.longest ?? Infinity)
  if (lengthOf(windowOf(face, shape), shape) <= most + NOISE_MM) return undefined
  for (let count = shape.row.holes.length - 1; count > 2; count -= 1) {
    const short = repeatedStrip(shape, count)
    if (short === undefined) return undefined
    if (lengthOf(windowOf(face, short.shape), shape) <= most + NOISE_MM) return short
  }
  return undefined
}

function looseOf(face: StripFace, { shape, places, hand, repeat }: Strip, label: string): LoosePiece {
  return {
    kind: repeat === undefined ? 'strip' : 'repeated',
    label,
    window: windowOf(face, shape),
    marks: [],
    joins: [],
    use: {
      name: shape.row.purposes.join(' and '),
      bores: shape.row.holes.map(({ id }) => id),
      cuts: [],
      origin: shape.origin.at,
      places,
      along: shape.row.along,
      ...(shape.row.holes.length > 1 && { ahead: shape.origin === shape.row.holes[0] ? 1 : -1 }),
      ...(shape.second && { secondFold: secondFold(face, shape) }),
      ...(repeat !== undefined && { repeat }),
      ...(hand !== undefined && { hand }),
    },
  }
}

function secondFold(face: StripFace, { row, fold }: StripShape): NonNullable<PieceUse['secondFold']> {
  const axis = otherAxis(row.along)
  const line = row.holes[0].at[axis]
  return { axis, at: 2 * line - (fold === undefined ? line : edgePlace(face, fold)) }
}

const lengthOf = ({ min, max }: Rect, { row }: StripShape): number => max[row.along] - min[row.along]

/** The longest piece of a strip's width that some sheet has room for, mm; 0 where none is wide enough. */
function longestOf(face: StripFace, shape: StripShape, { rooms }: StripOptions): number {
  const { min, max } = windowOf(face, shape)
  const across = otherAxis(shape.row.along)
  const side = (room: Size, axis: 0 | 1): number => (axis === 0 ? room.width : room.height)
  return [rooms.upright, rooms.lying]
    .filter((room) => side(room, across) >= max[across] - min[across])
    .reduce((most, room) => Math.max(most, side(room, shape.row.along)), 0)
}

function roomFor(face: StripFace, shape: StripShape, options: StripOptions): 'enough' | 'too long' | 'too wide' {
  const most = longestOf(face, shape, options)
  if (most <= 3 * STRIP_OVERLAP) return 'too wide'
  return lengthOf(windowOf(face, shape), shape) > most + NOISE_MM ? 'too long' : 'enough'
}
