import { caster } from '../kinds/caster.ts'
import type { Item } from '../types.ts'

/**
 * Fixed casters with a top plate: x across, y along the way that they roll. The long side of a plate lies along y:
 * common practice, measure yours. No swivel circle: the wheel stands under the middle of the plate.
 */
export const fixedCasters: readonly Item[] = [
  caster.make({
    id: 'fixed caster 50',
    title: 'fixed caster, 50 mm wheel, plate 60 × 60',
    source: 'overall 64, 40 kg: S42b; plate, holes and wheel width: common practice, measure yours',
    turning: 'fixed',
    overallHeight: 64,
    swivelRadius: 0,
    wheel: { x: 20, y: 50 },
    plate: { x: 60, y: 60 },
    loadKg: 40,
    holePattern: { x: 43, y: 43 },
    holeDiameter: 5.5,
  }),
  caster.make({
    id: 'fixed caster 75',
    title: 'fixed caster, 75 mm wheel, plate 60 × 60',
    source:
      'plate, holes, overall 100 and 75 kg as the swivel caster of its series (S42); wheel width: common practice',
    turning: 'fixed',
    overallHeight: 100,
    swivelRadius: 0,
    wheel: { x: 25, y: 75 },
    plate: { x: 60, y: 60 },
    loadKg: 75,
    holePattern: { x: 43, y: 43 },
    holeDiameter: 5.5,
  }),
  caster.make({
    id: 'fixed caster 100',
    title: 'fixed caster, 100 mm wheel, plate 80 × 105',
    source: 'overall 128, plate 105 × 80, holes 80 × 60: S41; wheel width and load: common practice, measure yours',
    turning: 'fixed',
    overallHeight: 128,
    swivelRadius: 0,
    wheel: { x: 32, y: 100 },
    plate: { x: 80, y: 105 },
    loadKg: 100,
    holePattern: { x: 60, y: 80 },
    holeDiameter: 9,
  }),
  caster.make({
    id: 'fixed caster 125',
    title: 'fixed caster, 125 mm wheel, plate 80 × 105',
    source: 'plate 105 × 80, holes 80 × 60: S41; overall 155, wheel width and load: common practice, measure yours',
    turning: 'fixed',
    overallHeight: 155,
    swivelRadius: 0,
    wheel: { x: 35, y: 125 },
    plate: { x: 80, y: 105 },
    loadKg: 100,
    holePattern: { x: 60, y: 80 },
    holeDiameter: 9,
  }),
  caster.make({
    id: 'fixed caster 3 in',
    title: 'fixed caster, 3 in wheel, plate 3-1/8 × 4-1/8 in',
    source:
      'plate 3-1/8 × 4-1/8, holes 2-3/8 × 3-3/8: S39; overall 4 in, wheel 1-1/4 in wide, 90 kg: common practice, measure yours',
    turning: 'fixed',
    overallHeight: 101.6,
    swivelRadius: 0,
    wheel: { x: 31.75, y: 76.2 },
    plate: { x: 79.375, y: 104.775 },
    loadKg: 90,
    holePattern: { x: 60.325, y: 85.725 },
    holeDiameter: 8.5,
  }),
]

/** Casters that swivel, and stand still on a foot that is screwed down beside the wheel. */
export const levellingCasters: readonly Item[] = [
  caster.make({
    id: 'levelling caster 50',
    title: 'levelling caster, 50 mm wheel and a foot, plate 70 × 70',
    source:
      'wheel, overall 80 rolling, lift 10, plate 70 × 70, swivel radius 60, holes 54 × 54, 80 kg: common practice, no data sheet found; measure yours',
    turning: 'levelling',
    overallHeight: 80,
    swivelRadius: 60,
    lift: 10,
    plate: { x: 70, y: 70 },
    loadKg: 80,
    holePattern: { x: 54, y: 54 },
    holeDiameter: 9,
  }),
]
