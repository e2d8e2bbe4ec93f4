import type { Panel } from '../panel/index.ts'
import type { HardwarePlanner } from './budget.ts'
import { NEAR_EDGE_MM } from './hardware-folds.ts'
import { othersOf } from './hardware-hands.ts'
import { faceOf } from './hardware-holes.ts'
import { hardwarePieces, type WordWays } from './hardware-pieces.ts'
import type { HardwarePiece, HardwarePlace } from './hardware-types.ts'
import { laidOnSheets, packRooms, type SheetSpec } from './packing-sheets.ts'
import type { PiecePlace, PieceUse } from './piece-use.ts'
import type { LoosePiece } from './strips.ts'
import type { FacePoint } from './types.ts'

/** How far from an edge its fold is shown, mm, and whether a second one may spare the last measuring: tried in this order. */
const WAYS_TO_FOLD = [
  { nearEdge: NEAR_EDGE_MM, corners: true },
  { nearEdge: NEAR_EDGE_MM, corners: false },
  { nearEdge: NEAR_EDGE_MM / 2, corners: true },
  { nearEdge: NEAR_EDGE_MM / 2, corners: false },
  { nearEdge: NEAR_EDGE_MM / 4, corners: false },
]

/**
 * The last stage of a budget: cut-out pieces for each pattern of a face, called `HA1`, `HA2` and so on (`HB1` on face B).
 * `ways` tells the sizes of their words, `panels` are those of the module.
 */
export function hardwarePlanner(
  panel: Panel,
  sheet: SheetSpec,
  ways: WordWays,
  panels: readonly Panel[] = [],
): HardwarePlanner {
  const others = othersOf(panel, panels)
  return (face, marked) => {
    const options = { rooms: packRooms(sheet), ways, marked, others }
    const pieces = fewest(sheet, (folding) => hardwarePieces(panel, face, { ...options, ...folding }))
    const done = pieces.flatMap(
      ({ use }) => use.hardware?.places.flatMap(({ bores, cuts }) => [...bores, ...cuts]) ?? [],
    )
    // Holes in edges that the other face's pieces reach need no page of this one.
    const inEdges = panel.bores.filter(({ surface }) => surface !== 'A' && surface !== 'B')
    const elsewhere = inEdges.filter((bore) => faceOf(panel, bore) !== face)
    return { pieces, marked: new Set([...done, ...elsewhere.map(({ id }) => id)]) }
  }
}

/** Folds far from the holes spare measuring but make large pieces: fewer sheets come first. */
function fewest(
  sheet: SheetSpec,
  piecesFor: (folding: (typeof WAYS_TO_FOLD)[number]) => HardwarePiece[],
): LoosePiece[] {
  let best: LoosePiece[] = []
  let least = Number.POSITIVE_INFINITY
  for (const folding of WAYS_TO_FOLD) {
    const pieces = piecesFor(folding).map((piece, k) => looseOf(piece, k + 1))
    const sheets = new Set(laidOnSheets(pieces, sheet, 0).map((page) => page.sheet)).size
    if (sheets < least) [best, least] = [pieces, sheets]
    if (least <= 1) break
  }
  return best
}

function looseOf(piece: HardwarePiece, number: number): LoosePiece {
  const [origin] = piece.places
  const onFace = (p: FacePoint): FacePoint => [p[0] + origin.at[0], p[1] + origin.at[1]]
  return {
    kind: 'hardware',
    label: `H${piece.face}${number}`,
    window: { min: onFace(piece.paper.min), max: onFace(piece.paper.max) },
    marks: [],
    joins: [],
    use: useOf(piece),
  }
}

function useOf(piece: HardwarePiece): PieceUse {
  const { pattern, places } = piece
  const [first, ...others] = places
  return {
    name: pattern.item === undefined ? pattern.name : `${pattern.name}, ${pattern.item}`,
    bores: first.bores,
    cuts: first.cuts,
    origin: first.at,
    places: [placeOf(first), ...others.map(placeOf)],
    hardware: piece,
  }
}

function placeOf({ at, turns, folds }: HardwarePlace): PiecePlace {
  return {
    at,
    turned: turns === 2,
    ...((turns === 1 || turns === 3) && { quarter: turns }),
    folds: folds.map(({ edge }) => edge),
  }
}
