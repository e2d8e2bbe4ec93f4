import { NOISE_MM } from '../geometry/index.ts'
import type { Size } from './paper.ts'
import type { FacePoint } from './types.ts'

/** What a sheet has free for pieces, as it stands and on its side, mm. */
export interface Rooms {
  readonly upright: Size
  readonly lying: Size
}

/** Where one piece is printed. */
export interface Packed {
  /** 0 first; sheets are in the order of the first piece that each of them holds. */
  readonly sheet: number
  /** Whether that sheet lies on its side; the same for all pieces of a sheet. */
  readonly landscape: boolean
  /** Lower left corner of the piece, from the lower left corner of the sheet's room, mm. */
  readonly at: FacePoint
}

interface Item extends Size {
  readonly index: number
}

interface Spot {
  readonly index: number
  readonly at: FacePoint
}

interface Filled {
  readonly landscape: boolean
  readonly spots: readonly Spot[]
}

/** Sheets of this turn first; `either`: the turn that leaves less of each sheet empty. */
type Turn = 'upright' | 'lying' | 'either'

const ORDERS: readonly ((a: Item, b: Item) => number)[] = [
  // As they come, first: pieces that are taped together stay together where that costs no sheet.
  (a, b) => a.index - b.index,
  (a, b) => b.height - a.height || b.width - a.width || a.index - b.index,
  (a, b) => b.width - a.width || b.height - a.height || a.index - b.index,
  (a, b) => areaOf(b) - areaOf(a) || a.index - b.index,
]
const TURNS: readonly Turn[] = ['either', 'upright', 'lying']

/**
 * Lays cut-out pieces on as few sheets as rows (or columns) of pieces, tried in a few orders and both ways round for the
 * sheet, can do with; pieces are never turned, and are at least `gap` mm apart. The answer is in the order of `sizes`; pieces
 * hang from the top left corner of the room. Throws RangeError when a piece is larger than the room whichever way the sheet lies.
 */
export function packPieces(sizes: readonly Size[], rooms: Rooms, gap: number): Packed[] {
  const items = sizes.map((size, index): Item => ({ width: size.width, height: size.height, index }))
  for (const item of items) {
    if (fits(item, rooms.upright) || fits(item, rooms.lying)) continue
    throw new RangeError(`a piece of ${item.width} × ${item.height} mm is larger than the room of a sheet`)
  }
  let best: Filled[] | undefined
  for (const order of ORDERS) {
    const sorted = [...items].sort(order)
    for (const turn of TURNS) {
      const filled = fillAll(sorted, rooms, gap, turn)
      if (best === undefined || filled.length < best.length) best = filled
    }
  }
  return numbered(best ?? [], items.length)
}

const areaOf = ({ width, height }: Size): number => width * height

const fits = (piece: Size, room: Size): boolean =>
  piece.width <= room.width + NOISE_MM && piece.height <= room.height + NOISE_MM

function fillAll(items: readonly Item[], rooms: Rooms, gap: number, turn: Turn): Filled[] {
  const sheets: Filled[] = []
  let left = [...items]
  while (left.length > 0) {
    const filled = fillOne(left, rooms, gap, turn)
    sheets.push(filled)
    const done = new Set(filled.spots.map(({ index }) => index))
    left = left.filter(({ index }) => !done.has(index))
  }
  return sheets
}

/** One sheet, filled by rows or by columns; the other way round where the wanted one holds nothing. */
function fillOne(items: readonly Item[], rooms: Rooms, gap: number, turn: Turn): Filled {
  const ways = [false, true].flatMap((landscape): Filled[] => {
    const room = landscape ? rooms.lying : rooms.upright
    return [inRows(items, room, gap), inColumns(items, room, gap)].map((spots) => ({ landscape, spots }))
  })
  const held = ({ spots }: Filled): number =>
    spots.reduce((sum, { index }) => sum + areaOf(items.find((item) => item.index === index) ?? NOTHING), 0)
  const wanted = ways.filter(({ landscape, spots }) => spots.length > 0 && landscape === (turn === 'lying'))
  const among = turn === 'either' || wanted.length === 0 ? ways : wanted
  return among.reduce((best, way) => (held(way) > held(best) + NOISE_MM ? way : best))
}

const NOTHING: Size = { width: 0, height: 0 }

interface Row {
  /** From the top of the room to the top of the row, mm. */
  readonly top: number
  readonly height: number
  /** From the left of the room to where the next piece may begin. */
  next: number
}

/** Rows from the top: each piece goes into the first row with room for it, or begins a new one. */
function inRows(items: readonly Item[], room: Size, gap: number): Spot[] {
  const rows: Row[] = []
  const spots: Spot[] = []
  let bottom = 0
  for (const { width, height, index } of items) {
    let row = rows.find((one) => height <= one.height + NOISE_MM && one.next + width <= room.width + NOISE_MM)
    if (row === undefined) {
      if (bottom + height > room.height + NOISE_MM || width > room.width + NOISE_MM) continue
      row = { top: bottom, height, next: 0 }
      rows.push(row)
      bottom += height + gap
    }
    spots.push({ index, at: [row.next, room.height - row.top - height] })
    row.next += width + gap
  }
  return spots
}

/** The same with columns from the left: rows of everything turned over its diagonal. */
function inColumns(items: readonly Item[], room: Size, gap: number): Spot[] {
  const over = ({ width, height }: Size): Size => ({ width: height, height: width })
  const spots = inRows(
    items.map((item) => ({ ...over(item), index: item.index })),
    over(room),
    gap,
  )
  const byIndex = new Map(items.map((item) => [item.index, item]))
  return spots.map(({ index, at }) => {
    const { width, height } = byIndex.get(index) ?? NOTHING
    // Turned over, the room's width runs down: what hung from its top now begins at the left.
    return { index, at: [room.width - at[1] - width, room.height - at[0] - height] }
  })
}

function numbered(sheets: readonly Filled[], count: number): Packed[] {
  const first = ({ spots }: Filled): number => Math.min(...spots.map(({ index }) => index))
  const packed = new Array<Packed | undefined>(count)
  for (const [sheet, { landscape, spots }] of [...sheets].sort((a, b) => first(a) - first(b)).entries())
    for (const { index, at } of spots) packed[index] = { sheet, landscape, at }
  return packed.map((place) => {
    if (place === undefined) throw new Error('a piece was not laid')
    return place
  })
}
