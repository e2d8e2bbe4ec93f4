import type { Drilling, JointScrew, Mate, PocketScrew } from '../types.ts'
import { type Fault, faultIf, figure, kindBuilder, type Show } from './kind.ts'

/** The two bores of a part each named `hole` share an axis. */
export const coaxial = (a: string, b: string): readonly Mate[] => [
  { relation: 'coaxial', a: [a, 'hole'], b: [b, 'hole'] },
]

type ThroughScrew = {
  readonly length: number
  readonly clearance: number
  readonly pilot: number
  readonly headDiameter: number
  readonly sinkDeg: number
  /** Least wood beside the hole of the first board, mm. */
  readonly edgeWall: number
}

type OnePieceScrew = Omit<ThroughScrew, 'sinkDeg' | 'edgeWall'> & { readonly headDepth: number }

/** A pilot goes so much deeper than the tip, mm: through screws by S28, one-piece screws by common practice. */
const PILOT_BEYOND_MM = { 'through screw': 1, 'one-piece screw': 3 } as const
/** Least wood beside a one-piece screw's hole and its pilot, mm; common practice. */
const ONE_PIECE_WALL_MM = { head: 3, tip: 4 } as const

const headHole = (
  clearance: number,
  edgeWall: number,
  sink: NonNullable<Drilling['sink']>,
  purpose: string,
): Drilling => ({
  key: 'hole',
  x: 0,
  y: 0,
  enter: 'far',
  diameter: clearance,
  depth: 'through',
  sink,
  edgeWall,
  purpose,
})

const tipHole = (pilot: number, edgeWall: number, reach: number, purpose: string): Drilling => ({
  key: 'hole',
  x: 0,
  y: 0,
  enter: 'contact',
  diameter: pilot,
  depth: { reach, from: 'head' },
  edgeWall,
  purpose,
})

function screwFaults(figures: Pick<ThroughScrew, 'clearance' | 'pilot' | 'headDiameter'>, show: Show): Fault[] {
  const { clearance, pilot, headDiameter } = figures
  return [
    ...faultIf(
      pilot >= clearance,
      'pilot diameter',
      `a pilot of ${show(pilot)} gives no hold to a screw that passes a hole of ${show(clearance)}`,
      `less than ${show(clearance)}`,
    ),
    ...faultIf(
      headDiameter <= clearance,
      'head diameter',
      `a head of ${show(headDiameter)} falls through a hole of ${show(clearance)}`,
      `more than ${show(clearance)}`,
    ),
  ]
}

const LENGTH = figure.length('length', 'above 0', 'Length of the screw or dowel.')
const CLEARANCE = figure.length('clearance', 'above 0', 'Diameter of the hole, or of each hole.')
const PILOT = figure.length('pilot', 'above 0', 'Diameter of the pilot hole that the thread holds in.')
const HEAD = figure.length('headDiameter', 'above 0', 'Diameter of the head, or of the washer below it.')

/** Countersunk screws through one board into the edge of the next. */
export const throughScrew = kindBuilder<ThroughScrew, JointScrew>({
  kind: 'through screw',
  figures: {
    length: LENGTH,
    'hole diameter': CLEARANCE,
    'pilot diameter': PILOT,
    'head diameter': HEAD,
    'countersink angle': figure.degrees('sinkDeg', 'Included angle of the countersink, degrees: 90 metric, 82 inch.'),
    'edge wall': figure.length('edgeWall', '0 or more', 'Least wood from the hole to an edge of its board.'),
  },
  build: (identity, figures) => ({
    ...identity,
    kind: 'through screw',
    length: figures.length,
    parts: {
      head: [
        headHole(
          figures.clearance,
          figures.edgeWall,
          { shape: 'cone', diameter: figures.headDiameter, angleDeg: figures.sinkDeg },
          'screw',
        ),
      ],
      tip: [tipHole(figures.pilot, 2, figures.length + PILOT_BEYOND_MM['through screw'], 'screw pilot')],
    },
    mates: coaxial('head', 'tip'),
  }),
  faults: (figures, show) => [
    ...screwFaults(figures, show),
    ...faultIf(
      figures.sinkDeg >= 180,
      'countersink angle',
      `${figures.sinkDeg} degrees is no cone`,
      'less than 180, usually 90 or 82',
    ),
  ],
})

/** One-piece connector screws: a stepped bore, a flat-bottomed widening for the head. */
export const onePieceScrew = kindBuilder<OnePieceScrew, JointScrew>({
  kind: 'one-piece screw',
  figures: {
    length: LENGTH,
    'hole diameter': CLEARANCE,
    'pilot diameter': PILOT,
    'head diameter': HEAD,
    'head depth': figure.length('headDepth', 'above 0', 'Depth of the widening for the head.'),
  },
  build: (identity, figures) => ({
    ...identity,
    kind: 'one-piece screw',
    length: figures.length,
    parts: {
      head: [
        headHole(
          figures.clearance,
          ONE_PIECE_WALL_MM.head,
          { shape: 'counterbore', diameter: figures.headDiameter, depth: figures.headDepth },
          'one-piece screw',
        ),
      ],
      tip: [
        tipHole(
          figures.pilot,
          ONE_PIECE_WALL_MM.tip,
          figures.length + PILOT_BEYOND_MM['one-piece screw'],
          'one-piece screw pilot',
        ),
      ],
    },
    mates: coaxial('head', 'tip'),
  }),
  faults: (figures, show) => [
    ...screwFaults(figures, show),
    ...faultIf(
      figures.headDepth >= figures.length,
      'head depth',
      `${show(figures.headDepth)} is as deep as the whole screw is long`,
      `less than ${show(figures.length)}, usually 5 mm`,
    ),
  ],
})

type PocketFigures = {
  readonly length: number
  readonly board: { readonly min: number; readonly max: number }
  readonly pocketDiameter: number
}

/** Screws in slanted pockets of 15° (S32); the collar of the bit is set when they are placed. */
export const pocketScrew = kindBuilder<PocketFigures, PocketScrew>({
  kind: 'pocket screw',
  figures: {
    length: LENGTH,
    board: figure.limits('board', 'above 0', 'Thickness of the boards that the screw suits, least and most.'),
    'pocket diameter': figure.length('pocketDiameter', 'above 0', 'Diameter of the pocket: the step of the bit.'),
  },
  build: (identity, { length, board, pocketDiameter }) => ({
    ...identity,
    kind: 'pocket screw',
    length,
    board,
    parts: {
      pocket: [
        {
          key: 'hole',
          x: 0,
          y: 0,
          enter: 'contact',
          diameter: pocketDiameter,
          depth: { setting: 'collar' },
          leanDeg: 15,
          purpose: 'pocket screw',
        },
      ],
      tip: [],
    },
    mates: [],
  }),
  faults: ({ board }, show) =>
    faultIf(
      board.min >= board.max,
      'board',
      `no board is at least ${show(board.min)} and at most ${show(board.max)}`,
      'the thinnest board first, such as {least: 17, most: 19.6}',
    ),
})
