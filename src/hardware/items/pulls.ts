import { pull } from '../kinds/pull.ts'
import type { Item, Pull } from '../types.ts'

/** For M4 and for #8-32 screws, mm; common practice. */
const M4_HOLE = 4.5
const INCH_HOLE = 4.763

const bow = (name: string, centres: number, holeDiameter: number, source = 'common practice, no source'): Pull =>
  pull.make({
    id: `pull ${name}`,
    title: `bow pull, ${name.endsWith(' in') ? name : `${name} mm`} centres`,
    source,
    centres,
    holeDiameter,
  })

const metric = (centres: number): Pull => bow(String(centres), centres, M4_HOLE)

/** Pulls and knobs, held by M4 or #8-32 screws through the front. */
export const pulls: readonly Item[] = [
  metric(128),
  metric(96),
  bow('3 in', 76.2, INCH_HOLE),
  pull.make({
    id: 'knob',
    title: 'knob, one screw',
    source: 'common practice, no source',
    centres: 0,
    holeDiameter: M4_HOLE,
  }),
  metric(64),
  metric(160),
  metric(192),
  metric(224),
  metric(320),
  bow('3-3/4 in', 96, INCH_HOLE, 'common practice: what is sold as 3-3/4 in is made to 96 mm; measure yours'),
  bow('4 in', 101.6, INCH_HOLE),
  bow('5 in', 127, INCH_HOLE, 'common practice; 128 mm is sold as 5 or 5-1/16 in, measure yours'),
  pull.make({
    id: 'knob #8-32',
    title: 'knob, one #8-32 screw',
    source: 'common practice, no source',
    centres: 0,
    holeDiameter: INCH_HOLE,
  }),
]
