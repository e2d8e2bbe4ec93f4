import type { Dowel, Drilling, Item, JointScrew, PocketScrew } from '../types.ts'

const COAXIAL = (a: string, b: string) => [{ relation: 'coaxial', a: [a, 'hole'], b: [b, 'hole'] } as const]

/**
 * A screw through one board into the edge of the next. `clearance` is the hole in the first board; `pilot` the one in
 * the edge, which goes 1 mm deeper than the screw's tip.
 */
export function throughScrew(figures: {
  id: string
  title: string
  source: string
  clearance: number
  pilot: number
  length: number
  head: number
  angleDeg: 90 | 82
  /** Least wood beside the hole, mm. */
  wall: number
}): JointScrew {
  const { clearance, pilot, length, head, angleDeg, wall } = figures
  return {
    kind: 'through screw',
    id: figures.id,
    title: figures.title,
    source: figures.source,
    length,
    parts: {
      head: [
        {
          key: 'hole',
          x: 0,
          y: 0,
          enter: 'far',
          diameter: clearance,
          depth: 'through',
          sink: { shape: 'cone', diameter: head, angleDeg },
          edgeWall: wall,
          purpose: 'screw',
        },
      ],
      tip: [
        {
          key: 'hole',
          x: 0,
          y: 0,
          enter: 'contact',
          diameter: pilot,
          depth: { reach: length + 1, from: 'head' },
          edgeWall: 2,
          purpose: 'screw pilot',
        },
      ],
    },
    mates: COAXIAL('head', 'tip'),
  }
}

export const CHIPBOARD =
  'heads 2 × d: S31; pilot 0.7 d, clearance d + 0.5: common practice; countersink 90° ' +
  '(ISO): from memory; pilot 1 mm deeper than the screw: S28'
export const INCH_WOOD =
  'pilot and shank hole for hardwood: wood screw chart, plate 6B (S30); countersink 82° (ASME): from memory; ' +
  'head diameters: common practice'

/**
 * A dowel keeps about its own radius of wood to the faces of the board [S25]; half a millimetre less is let pass, since
 * boards of 16 mm, for which 8 mm dowels are meant, always measure less (common practice).
 */
const dowelHole = (diameter: number, depth: number): Drilling => ({
  key: 'hole',
  x: 0,
  y: 0,
  enter: 'contact',
  diameter,
  depth,
  edgeWall: diameter / 2 - 0.5,
  purpose: 'dowel',
})

const dowel = (id: string, diameter: number, length: number, face: number, edge: number, source: string): Dowel => ({
  kind: 'dowel',
  id,
  title: id,
  source,
  length,
  parts: { face: [dowelHole(diameter, face)], edge: [dowelHole(diameter, edge)] },
  mates: COAXIAL('face', 'edge'),
})

const ONE_PIECE: JointScrew = {
  kind: 'one-piece screw',
  id: 'one-piece screw 7x50',
  title: 'one-piece connector screw 7 × 50 (confirmat type)',
  source:
    'major 7, core 4, pilot 5: S27; stepped bit 5/7/10, ' +
    'countersink 10 × 5, pilot depth 50 − t + 3: common practice',
  length: 50,
  parts: {
    head: [
      {
        key: 'hole',
        x: 0,
        y: 0,
        enter: 'far',
        diameter: 7,
        depth: 'through',
        sink: { shape: 'counterbore', diameter: 10, depth: 5 },
        edgeWall: 3,
        purpose: 'one-piece screw',
      },
    ],
    tip: [
      {
        key: 'hole',
        x: 0,
        y: 0,
        enter: 'contact',
        diameter: 5,
        depth: { reach: 53, from: 'head' },
        edgeWall: 4,
        purpose: 'one-piece screw pilot',
      },
    ],
  },
  mates: COAXIAL('head', 'tip'),
}

const pocketScrew = (id: string, length: number, min: number, max: number): PocketScrew => ({
  kind: 'pocket screw',
  id,
  title: `${id} mm, in a slanted pocket`,
  source:
    'angle 15°: S32; step bit 9.5 mm: common practice; screw length by board: pocket-hole jig charts, from memory',
  length,
  board: { min, max },
  parts: {
    pocket: [
      {
        key: 'hole',
        x: 0,
        y: 0,
        enter: 'contact',
        diameter: 9.5,
        depth: { setting: 'collar' },
        leanDeg: 15,
        purpose: 'pocket screw',
      },
    ],
    tip: [],
  },
  mates: [],
})

/** What holds the carcase together, and backs on. */
export const connectors: readonly Item[] = [
  throughScrew({
    id: 'screw 4.5x45',
    title: 'countersunk screw 4.5 × 45',
    source: CHIPBOARD,
    clearance: 5,
    pilot: 3,
    length: 45,
    head: 9,
    angleDeg: 90,
    wall: 3,
  }),
  throughScrew({
    id: 'screw 5x50',
    title: 'countersunk screw 5 × 50',
    source: CHIPBOARD,
    clearance: 5.5,
    pilot: 3.5,
    length: 50,
    head: 10,
    angleDeg: 90,
    wall: 3,
  }),
  throughScrew({
    id: 'screw 3.5x25',
    title: 'countersunk screw 3.5 × 25',
    source: CHIPBOARD,
    clearance: 4,
    pilot: 2.5,
    length: 25,
    head: 7,
    angleDeg: 90,
    wall: 2,
  }),
  throughScrew({
    id: 'screw #8x1-3/4',
    title: 'countersunk wood screw #8 × 1-3/4 in',
    source: INCH_WOOD,
    clearance: 4.366,
    pilot: 2.778,
    length: 44.45,
    head: 8.731,
    angleDeg: 82,
    wall: 3,
  }),
  throughScrew({
    id: 'screw #6x1',
    title: 'countersunk wood screw #6 × 1 in',
    source: INCH_WOOD,
    clearance: 3.572,
    pilot: 2.381,
    length: 25.4,
    head: 7.144,
    angleDeg: 82,
    wall: 2,
  }),
  ONE_PIECE,
  dowel('dowel 8x30', 8, 30, 11, 21, 'edge 21, face 11 with room for glue: S25'),
  pocketScrew('pocket screw 25', 25, 12, 17),
  pocketScrew('pocket screw 32', 32, 17, 19.6),
  pocketScrew('pocket screw 38', 38, 19.6, 26),
]
