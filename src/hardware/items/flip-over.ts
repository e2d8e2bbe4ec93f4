import type { Axle, Drilling, Item, LockingBolt } from '../types.ts'

/** The channel in the core is so much wider than the axle, and the core at least so much thicker, mm; common practice. */
const CHANNEL_PLAY_MM = 0.5
const CORE_PLAY_MM = 0.2

const axle = (id: string, title: string, diameter: number, bore: number, source: string): Axle => {
  const hole: Drilling = {
    key: 'hole',
    x: 0,
    y: 0,
    enter: 'contact',
    diameter: bore,
    depth: 'through',
    // The platform bears down, away from the ends of the sides: half a diameter of wood above is enough.
    edgeWall: bore / 2,
    purpose: 'axle',
  }
  return {
    kind: 'axle',
    id,
    title,
    source: `${source}; channel 0.5 wider, core 0.2 thicker or more: common practice`,
    diameter,
    channel: diameter + CHANNEL_PLAY_MM,
    coreLeast: diameter + CORE_PLAY_MM,
    parts: { left: [hole], right: [hole] },
    mates: [{ relation: 'coaxial', a: ['left', 'hole'], b: ['right', 'hole'] }],
  }
}

const BAR = 'bar sizes as sold, bore 0.5 more than the bar: common practice'
const INCH_BAR = 'bar sizes as sold, bore 1/32 in more than the bar: common practice'
const INCH = (inches: number): number => inches * 25.4

/** The core's skins lie against the bored end on both faces, so less wood beside the hole does than elsewhere, mm. */
const CORE_WALL_MM = 3

const lockingBolt = (figures: {
  id: string
  title: string
  source: string
  clearance: number
  coreBore: number
  coreDepth: number
}): LockingBolt => {
  const core: Drilling = {
    key: 'hole',
    x: 0,
    y: 0,
    enter: 'contact',
    diameter: figures.coreBore,
    depth: figures.coreDepth,
    edgeWall: CORE_WALL_MM,
    purpose: 'locking bolt',
  }
  return {
    kind: 'locking bolt',
    id: figures.id,
    title: figures.title,
    source: figures.source,
    coreDepth: figures.coreDepth,
    parts: {
      side: [
        {
          key: 'hole',
          x: 0,
          y: 0,
          enter: 'far',
          diameter: figures.clearance,
          depth: 'through',
          purpose: 'locking bolt',
        },
      ],
      core: [core],
      turned: [core],
    },
    mates: [{ relation: 'coaxial', a: ['side', 'hole'], b: ['core', 'hole'] }],
  }
}

const INSERT =
  'bore for a screw-in threaded insert, 30 deep: common practice, no source: measure the insert in your hand'

/** Axles and locking bolts of flip-over tops, thinnest axle first. */
export const flipOver: readonly Item[] = [
  axle('axle 12', 'round steel bar 12 mm', 12, 12.5, BAR),
  axle('axle 16', 'round steel bar 16 mm', 16, 16.5, BAR),
  axle('axle 20', 'round steel bar 20 mm', 20, 20.5, BAR),
  axle('axle 1/2 in', 'round steel bar 1/2 in', INCH(1 / 2), INCH(17 / 32), INCH_BAR),
  axle('axle 5/8 in', 'round steel bar 5/8 in', INCH(5 / 8), INCH(21 / 32), INCH_BAR),
  axle('axle 3/4 in', 'round steel bar 3/4 in', INCH(3 / 4), INCH(25 / 32), INCH_BAR),
  axle('rod M16', 'threaded rod M16', 16, 17.5, 'bore 17.5: ISO 273 medium, from memory'),
  axle('rod M20', 'threaded rod M20', 20, 22, 'bore 22: ISO 273 medium, from memory'),
  lockingBolt({
    id: 'locking bolt M8',
    title: 'M8 bolt or star knob into a threaded insert',
    source: `clearance 9: ISO 273 medium (S33); ${INSERT}`,
    clearance: 9,
    coreBore: 11,
    coreDepth: 30,
  }),
  lockingBolt({
    id: 'locking bolt 5/16 in',
    title: '5/16-18 bolt or star knob into a threaded insert',
    source: `clearance 11/32 in (normal): ASME B18.2.8 (S34); ${INSERT}`,
    clearance: INCH(11 / 32),
    coreBore: INCH(13 / 32),
    coreDepth: 30,
  }),
  lockingBolt({
    id: 'locking plunger 10',
    title: 'spring plunger, M16 body in the side, 10 mm pin into a steel bush 10 × 12',
    source: 'common practice, no source: measure the plunger and the bush in your hand',
    clearance: 16,
    coreBore: 12,
    coreDepth: 25,
  }),
]
