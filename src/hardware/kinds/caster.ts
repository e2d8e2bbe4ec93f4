import type { Caster, Drilling } from '../types.ts'
import { faultIf, figure, kindBuilder } from './kind.ts'

type CasterFigures = {
  readonly overallHeight: number
  readonly swivelRadius: number
  readonly plate: { readonly x: number; readonly y: number }
  readonly loadKg: number
  /** Distances between the holes across (x) and front to back (y); both 0 for one bolt in the middle. */
  readonly holePattern: { readonly x: number; readonly y: number }
  readonly holeDiameter: number
  readonly turning?: NonNullable<Caster['turning']>
  /** Of a fixed one: its width (x) and diameter (y). */
  readonly wheel?: { readonly x: number; readonly y: number }
  readonly lift?: number
}

/** Four through holes about the king pin, or one on it. */
function holes({ holePattern: { x, y }, holeDiameter }: CasterFigures): readonly Drilling[] {
  const corners: readonly (readonly [number, number])[] =
    x === 0 && y === 0
      ? [[0, 0]]
      : [
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
    diameter: holeDiameter,
    depth: 'through',
    purpose: 'caster bolt',
  }))
}

/** Casters, fixed by through-bolts. */
export const caster = kindBuilder<CasterFigures, Caster>({
  kind: 'caster',
  figures: {
    'overall height': figure.length('overallHeight', 'above 0', 'From the floor to the top of the plate.'),
    'swivel radius': figure.length(
      'swivelRadius',
      '0 or more',
      'From the king pin to the farthest point that swings, brake included; 0 for a fixed one.',
    ),
    plate: figure.size('plate', 'above 0', 'Size of the top plate, across and from front to back: [60, 60].'),
    load: figure.kilograms('loadKg', 'What one caster carries, kg.'),
    'hole pattern': figure.size(
      'holePattern',
      '0 or more',
      'Distances between the holes, across and from front to back; [0, 0] for one bolt.',
    ),
    'hole diameter': figure.length('holeDiameter', 'above 0', 'Diameter of the hole, or of each hole.'),
    turning: figure.word(
      'turning',
      ['swivel', 'fixed', 'levelling'],
      'Whether it swivels, is fixed, or has a foot to level it.',
    ),
    wheel: figure.size('wheel', 'above 0', 'Width and diameter of the wheel of a fixed one: [25, 75].'),
    lift: figure.length('lift', '0 or more', 'How far the foot of a levelling one lifts it.'),
  },
  build: (identity, figures) => ({
    ...identity,
    kind: 'caster',
    overallHeight: figures.overallHeight,
    swivelRadius: figures.swivelRadius,
    plate: figures.plate,
    loadKg: figures.loadKg,
    ...(figures.turning !== undefined && { turning: figures.turning }),
    ...(figures.wheel !== undefined && { wheel: { width: figures.wheel.x, diameter: figures.wheel.y } }),
    ...(figures.lift !== undefined && { lift: figures.lift }),
    parts: { plate: holes(figures) },
    mates: [],
  }),
  faults: ({ plate, holePattern, holeDiameter }, show) => {
    const beyond = holePattern.x + holeDiameter > plate.x || holePattern.y + holeDiameter > plate.y
    const meet = holePattern.x + holePattern.y > 0 && Math.min(holePattern.x, holePattern.y) <= holeDiameter
    const size = `${show(plate.x)} × ${show(plate.y)}`
    return [
      ...faultIf(
        beyond,
        'hole pattern',
        `holes ${show(holePattern.x)} × ${show(holePattern.y)} apart do not lie on a plate of ${size}`,
        'distances that leave each hole whole on the plate',
      ),
      ...faultIf(
        meet,
        'hole pattern',
        `holes ${show(holePattern.x)} × ${show(holePattern.y)} apart run into each other; they are ${show(holeDiameter)} wide`,
        `more than ${show(holeDiameter)} both ways, or [0, 0] for one bolt`,
      ),
    ]
  },
})
