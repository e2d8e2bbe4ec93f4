import { packPieces, type Rooms } from './packing.ts'
import type { Paper, Size } from './paper.ts'
import type { LoosePiece } from './strips.ts'
import type { Piece } from './types.ts'

/** The sheet that pieces are laid on, upright, mm; what its furniture keeps free inside the margins. */
export interface SheetSpec {
  readonly paper: Paper
  readonly margin: number
  readonly reserve: { readonly left: number; readonly bottom: number }
}

/** Kept between the cut lines of two pieces, mm. */
const GAP = 3

/** What a sheet has free for pieces; a roll is not turned, since its width is fixed. */
export function packRooms({ paper, margin, reserve }: SheetSpec): Rooms {
  const room = ({ width, height }: Size): Size => ({
    width: width - 2 * margin - reserve.left,
    height: height - 2 * margin - reserve.bottom,
  })
  const upright = room(paper)
  return { upright, lying: paper.roll === true ? upright : room({ width: paper.height, height: paper.width }) }
}

/** Loose pieces on as few sheets as they need, those of one sheet after each other; sheets are numbered from `first`. */
export function laidOnSheets(pieces: readonly LoosePiece[], spec: SheetSpec, first: number): Piece[] {
  const { paper, margin, reserve } = spec
  const rooms = packRooms(spec)
  const sizes = pieces.map(({ window: { min, max } }) => ({ width: max[0] - min[0], height: max[1] - min[1] }))
  const packed = packPieces(sizes, rooms, GAP)
  const laid = pieces.map((piece, k): Piece => {
    const place = packed[k]
    if (place === undefined) throw new Error('a piece was not laid')
    const lies = place.landscape && paper.roll !== true
    // From a roll as much is cut off as the pieces of the sheet need.
    const lowest = Math.min(...packed.filter(({ sheet }) => sheet === place.sheet).map(({ at }) => at[1]))
    const spare = paper.roll === true ? lowest : 0
    const [width, height] = lies ? [paper.height, paper.width] : [paper.width, paper.height - spare]
    return {
      ...piece,
      row: place.sheet,
      column: 0,
      sheet: first + place.sheet,
      paper: { width, height },
      at: [margin + reserve.left + place.at[0], margin + reserve.bottom + place.at[1] - spare],
    }
  })
  return laid.sort((a, b) => a.sheet - b.sheet)
}
