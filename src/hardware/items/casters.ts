import type { Caster, Drilling, Item } from '../types.ts'

/** Four through holes about the king pin, `x` and `y` apart. */
export function fourHoles(x: number, y: number, diameter: number): readonly Drilling[] {
  const corners: readonly (readonly [number, number])[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]
  return corners.map(([sx, sy], k) => ({
    key: `bolt-${k + 1}`,
    x: (sx * x) / 2,
    y: (sy * y) / 2,
    enter: 'contact',
    diameter,
    depth: 'through',
    purpose: 'caster bolt',
  }))
}

export const caster = (figures: Omit<Caster, 'kind' | 'parts' | 'mates'> & { holes: readonly Drilling[] }): Caster => {
  const { holes, ...rest } = figures
  return { kind: 'caster', ...rest, parts: { plate: holes }, mates: [] }
}

/** Swivel casters with a top plate, fixed by through-bolts; the makers' plates differ, so measure the one in the hand. */
export const casters: readonly Item[] = [
  caster({
    id: 'caster 75',
    title: 'swivel caster, 75 mm wheel, plate 60 × 60',
    source:
      'a data sheet of a 75 mm wheel (S42): overall 100, swivel radius 75 with brake, 75 kg, slots 38 to 48; set at 43: the middle of the slots',
    overallHeight: 100,
    swivelRadius: 75,
    plate: { x: 60, y: 60 },
    loadKg: 75,
    holes: fourHoles(43, 43, 5.5),
  }),
  caster({
    id: 'caster 100',
    title: 'swivel caster, 100 mm wheel, plate 105 × 80',
    source:
      'overall 128, plate 105 × 80, holes 80 × 60: S41; swivel radius 95 and load 100 kg: common practice, measure yours',
    overallHeight: 128,
    swivelRadius: 95,
    plate: { x: 105, y: 80 },
    loadKg: 100,
    holes: fourHoles(80, 60, 9),
  }),
  caster({
    id: 'caster 3 in',
    title: 'swivel caster, 3 in wheel, plate 3-1/8 × 4-1/8 in',
    source:
      'plate 3-1/8 × 4-1/8, holes 2-3/8 × 3-3/8: S39; overall 4 in, swivel radius 3 in, 90 kg: common practice, measure yours',
    overallHeight: 101.6,
    swivelRadius: 76.2,
    plate: { x: 104.775, y: 79.375 },
    loadKg: 90,
    holes: fourHoles(85.725, 60.325, 8.5),
  }),
]
