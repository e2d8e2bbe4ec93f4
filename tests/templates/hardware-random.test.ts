import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { distanceToCurve } from '../../src/geometry/index.ts'
import { openDefinition } from '../../src/outputs/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { type HardwarePiece, type HardwarePlace, hardwarePieces } from '../../src/templates/index.ts'
import { anyDefinition } from '../support/random.ts'
import { crowdedPanel } from '../support/random-work.ts'

const A4 = { upright: { width: 179, height: 238 }, lying: { width: 266, height: 151 } }
/** So little that grooves and cutouts of a small panel must be parted. */
const SMALL = { upright: { width: 120, height: 160 }, lying: { width: 200, height: 100 } }

type Point = readonly [number, number]
/** Half a nanometre of float noise for each of two positions. */
const NOISE = 1e-6

/** Where a point of the paper comes to lie on the face, by the turn's cosine and sine. */
function laid([x, y]: Point, { at, turns }: HardwarePlace): Point {
  const angle = (turns * Math.PI) / 2
  return [at[0] + x * Math.cos(angle) - y * Math.sin(angle), at[1] + x * Math.sin(angle) + y * Math.cos(angle)]
}

/** Where the paper shows a bore when it lies on the panel and is wrapped over its edges: for a bore in an edge, unfolded. */
function paperPlaces(panel: Panel, face: 'A' | 'B', bore: Bore): Point {
  const x = face === 'A' ? bore.at[0] : panel.length - bore.at[0]
  const deep = face === 'A' ? -bore.at[2] : panel.thickness + bore.at[2]
  const seen = face === 'A' ? 1 : -1
  if (bore.surface === 'x0') return [x - seen * deep, bore.at[1]]
  if (bore.surface === 'x1') return [x + seen * deep, bore.at[1]]
  if (bore.surface === 'y0') return [x, bore.at[1] - deep]
  if (bore.surface === 'y1') return [x, bore.at[1] + deep]
  return [x, bore.at[1]]
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** What is wrong with the pieces of a face: a hole where none is wanted, or a distance that is not what it says. */
function faultsOf(panel: Panel, pieces: readonly HardwarePiece[], done: Set<string>): string[] {
  const byId = new Map(panel.bores.map((bore) => [bore.id, bore]))
  return pieces.flatMap((piece) =>
    piece.places.flatMap((place) => {
      const where = `${panel.id} ${piece.face} ${piece.pattern.name} at ${place.at}`
      const holes = piece.pattern.holes.flatMap((hole, k): string[] => {
        const bore = byId.get(place.bores[k] ?? '')
        if (bore === undefined) return [`${where}: no bore under hole ${k}`]
        done.add(bore.id)
        const sunk = JSON.stringify(bore.sink) === JSON.stringify(hole.bore.sink)
        const alike =
          Math.abs(bore.diameter - hole.bore.diameter) <= NOISE &&
          Math.abs(bore.depth - hole.bore.depth) <= NOISE &&
          bore.through === hole.bore.through &&
          sunk
        const off = apart(laid(hole.at, place), paperPlaces(panel, piece.face, bore))
        return [
          ...(alike ? [] : [`${where}: another bit or depth than ${bore.id}`]),
          ...(off <= NOISE ? [] : [`${where}: ${off} off ${bore.id}`]),
        ]
      })
      for (const id of place.cuts) done.add(id)
      return [...holes, ...placeFaults(panel, piece, place).map((fault) => `${where}: ${fault}`)]
    }),
  )
}

/** Along each axis of the face either a fold lies on an edge, or the distance from the datum edge is said. */
function placeFaults(panel: Panel, piece: HardwarePiece, place: HardwarePlace): string[] {
  const [x, y] = [piece.face === 'A' ? place.at[0] : panel.length - place.at[0], place.at[1]]
  const toEdge = { x0: place.at[0], x1: panel.length - place.at[0], y0: y, y1: panel.width - y }
  const fromDatum = {
    [panel.edges[panel.datum.x]]: panel.datum.x === 'x0' ? x : panel.length - x,
    [panel.edges[panel.datum.y]]: panel.datum.y === 'y0' ? y : panel.width - y,
  }
  const folds = place.folds.flatMap(({ side, edge }) => {
    const fold = piece.folds.find((one) => one.side === side)
    if (fold === undefined) return ['a fold that is not on the piece']
    if (fold.shoulder) return []
    return Math.abs(fold.mm - toEdge[edge]) <= NOISE ? [] : [`fold at ${fold.mm}, edge ${edge} at ${toEdge[edge]}`]
  })
  const measured = place.measured.flatMap(({ edge, mm }) =>
    Math.abs((fromDatum[edge] ?? Number.NaN) - mm) <= NOISE ? [] : [`${mm} from ${edge} is ${fromDatum[edge]}`],
  )
  const axes = new Set([
    ...place.folds.map(({ edge }) => edge[0]),
    ...place.measured.map(({ edge }) => (edge === panel.edges[panel.datum.x] ? 'x' : 'y')),
  ])
  return [...folds, ...measured, ...(axes.size === 2 ? [] : [`nothing says where it lies along both axes`])]
}

/** Points of grooves and cutouts that some piece must show: the middle of each end, the corners of each contour. */
function cutFaults(panel: Panel, face: 'A' | 'B', pieces: readonly HardwarePiece[]): string[] {
  const seen = ([x, y]: Point): Point => [face === 'A' ? x : panel.length - x, y]
  const curves = pieces.flatMap((piece) =>
    piece.places.flatMap((place) =>
      piece.pattern.cuts.flatMap((cut) =>
        cut.curves.map(({ from, to, bulge }) => ({ from: laid(from, place), to: laid(to, place), bulge })),
      ),
    ),
  )
  const wanted = [
    ...panel.grooves
      .filter((groove) => groove.face === face)
      .flatMap(({ min, max }): Point[] => {
        const along = max[0] - min[0] >= max[1] - min[1]
        const middle: Point = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
        return [min, max].map((end) => (along ? [end[0], middle[1]] : [middle[0], end[1]]))
      }),
    ...panel.cutouts.filter((cutout) => cutout.face === face).flatMap(({ path }) => path.map(({ at }) => at)),
  ]
  return wanted
    .map(seen)
    .filter((point) => !curves.some((curve) => distanceToCurve(point, curve) <= 1e-5))
    .map((point) => `${panel.id} ${face}: no piece shows the rim at ${point}`)
}

/** Paper and words: inside the room, and the words on no hole, fold or line. */
function layoutFaults({ paper, words, folds, lines, pattern }: HardwarePiece, rooms: typeof A4): string[] {
  const [wide, high] = [paper.max[0] - paper.min[0], paper.max[1] - paper.min[1]]
  const fits = [rooms.upright, rooms.lying].some(({ width, height }) => wide <= width + 1e-9 && high <= height + 1e-9)
  const crosses = (axis: 0 | 1, at: number): boolean => words.min[axis] < at && words.max[axis] > at
  const onHole = pattern.holes.some(({ at, radius }) => {
    const dx = Math.max(words.min[0] - at[0], 0, at[0] - words.max[0])
    const dy = Math.max(words.min[1] - at[1], 0, at[1] - words.max[1])
    return Math.hypot(dx, dy) < radius
  })
  const onFold = folds.some(({ side, mm }) => crosses(side[0] === 'x' ? 0 : 1, side[1] === '0' ? -mm : mm))
  const onLine = lines.some((line) => crosses(line === 0 ? 1 : 0, 0))
  return [
    ...(fits ? [] : ['larger than a sheet']),
    ...(onHole ? ['words on a hole'] : []),
    ...(onFold ? ['words on a fold'] : []),
    ...(onLine ? ['words on a line'] : []),
  ].map((fault) => `${pattern.name}: ${fault}`)
}

function allFaults(panel: Panel, rooms: typeof A4): string[] {
  const done = new Set<string>()
  const faults = (['A', 'B'] as const).flatMap((face) => {
    const pieces = hardwarePieces(panel, face, {
      rooms,
      ways: (_, scarce) =>
        scarce
          ? [{ width: 40, height: 9 }]
          : [
              { width: 50, height: 30 },
              { width: 70, height: 22 },
            ],
    })
    return [
      ...faultsOf(panel, pieces, done),
      ...cutFaults(panel, face, pieces),
      ...pieces.flatMap((piece) => layoutFaults(piece, rooms)),
    ]
  })
  const missed = [...panel.bores, ...panel.grooves, ...panel.cutouts].filter(({ id }) => !done.has(id))
  return [...faults, ...missed.map(({ id }) => `${panel.id}: nothing marks ${id}`)]
}

describe('pieces for one pattern', () => {
  test('mark every hole and rim of a crowded panel, and no hole where none is wanted', () => {
    fc.assert(
      fc.property(crowdedPanel, fc.constantFrom(A4, SMALL), (panel, rooms) => {
        expect(allFaults(panel, rooms)).toEqual([])
      }),
      { numRuns: 70 },
    )
  })

  test('and of every panel of whatever is built', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        const opened = openDefinition(text, 'random.yaml', new Map())
        if (!opened.ok) throw new Error('a random definition cannot be opened')
        expect(opened.built.panels.flatMap((panel) => allFaults(panel, A4))).toEqual([])
      }),
      { numRuns: 2 },
    )
  })
})
