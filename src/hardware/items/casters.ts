import { caster } from '../kinds/caster.ts'
import type { Item } from '../types.ts'

const MEASURE = 'common practice, measure yours'

/**
 * Swivel casters with a top plate, fixed by through-bolts; the makers' plates differ, so measure the one in the hand.
 * Plates that are long for their wheel lie from front to back, where the carcase's sides do not narrow the bottom.
 */
export const casters: readonly Item[] = [
  caster.make({
    id: 'caster 75',
    title: 'swivel caster, 75 mm wheel, plate 60 × 60',
    source:
      'a data sheet of a 75 mm wheel (S42): overall 100, swivel radius 75 with brake, 75 kg, slots 38 to 48; set at 43: the middle of the slots',
    overallHeight: 100,
    swivelRadius: 75,
    plate: { x: 60, y: 60 },
    loadKg: 75,
    holePattern: { x: 43, y: 43 },
    holeDiameter: 5.5,
  }),
  caster.make({
    id: 'caster 100',
    title: 'swivel caster, 100 mm wheel, plate 105 × 80',
    source:
      'overall 128, plate 105 × 80, holes 80 × 60: S41; swivel radius 95 and load 100 kg: common practice, measure yours',
    overallHeight: 128,
    swivelRadius: 95,
    plate: { x: 105, y: 80 },
    loadKg: 100,
    holePattern: { x: 80, y: 60 },
    holeDiameter: 9,
  }),
  caster.make({
    id: 'caster 3 in',
    title: 'swivel caster, 3 in wheel, plate 3-1/8 × 4-1/8 in',
    source:
      'plate 3-1/8 × 4-1/8, holes 2-3/8 × 3-3/8: S39; overall 4 in, swivel radius 3 in, 90 kg: common practice, measure yours',
    overallHeight: 101.6,
    swivelRadius: 76.2,
    plate: { x: 104.775, y: 79.375 },
    loadKg: 90,
    holePattern: { x: 85.725, y: 60.325 },
    holeDiameter: 8.5,
  }),
  caster.make({
    id: 'caster 50',
    title: 'swivel caster, 50 mm wheel, one M8 bolt',
    source:
      'a data sheet of a 50 mm wheel (S42b): overall 64, swivel radius 43, 40 kg, hole for an M8 bolt; hole 9: ISO 273 ' +
      `medium (S33); head 40 × 40: ${MEASURE}`,
    overallHeight: 64,
    swivelRadius: 43,
    plate: { x: 40, y: 40 },
    loadKg: 40,
    holePattern: { x: 0, y: 0 },
    holeDiameter: 9,
  }),
  caster.make({
    id: 'caster 125',
    title: 'swivel caster, 125 mm wheel, plate 105 × 80',
    source: `plate 105 × 80, holes 80 × 60: S41; overall 155, swivel radius 112, 120 kg: ${MEASURE}`,
    overallHeight: 155,
    swivelRadius: 112,
    plate: { x: 105, y: 80 },
    loadKg: 120,
    holePattern: { x: 80, y: 60 },
    holeDiameter: 9,
  }),
  caster.make({
    id: 'caster 2 in',
    title: 'swivel caster, 2 in wheel, plate 1-7/8 × 2-9/16 in',
    source: `plate 1-7/8 × 2-9/16, holes 15/16 × 2-1/8: S39; overall 2-1/2 in, swivel radius 1-3/4 in, 40 kg: ${MEASURE}`,
    overallHeight: 63.5,
    swivelRadius: 44.45,
    plate: { x: 47.625, y: 65.0875 },
    loadKg: 40,
    holePattern: { x: 23.8125, y: 53.975 },
    holeDiameter: 5.5,
  }),
  caster.make({
    id: 'caster 2-1/2 in',
    title: 'swivel caster, 2-1/2 in wheel, plate 2-3/4 × 3-7/8 in',
    source: `plate 2-3/4 × 3-7/8: S39; holes 1-3/4 × 3, overall 3-1/4 in, swivel radius 2-1/4 in, 60 kg: ${MEASURE}`,
    overallHeight: 82.55,
    swivelRadius: 57.15,
    plate: { x: 69.85, y: 98.425 },
    loadKg: 60,
    holePattern: { x: 44.45, y: 76.2 },
    holeDiameter: 8.5,
  }),
  caster.make({
    id: 'caster 4 in',
    title: 'swivel caster, 4 in wheel, plate 4 × 5 in',
    source: `plate 4 × 5: S39; holes 2-5/8 × 3-5/8: S39b; overall 5-1/8 in, swivel radius 3-3/4 in, 110 kg: ${MEASURE}`,
    overallHeight: 130.175,
    swivelRadius: 95.25,
    plate: { x: 127, y: 101.6 },
    loadKg: 110,
    holePattern: { x: 92.075, y: 66.675 },
    holeDiameter: 9,
  }),
]
