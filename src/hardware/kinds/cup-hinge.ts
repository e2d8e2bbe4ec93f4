import type { CupHinge, Drilling, HingePlate } from '../types.ts'
import { plateFaults, plateHoles } from './hinge-plate.ts'
import { type Fault, faultIf, figure, kindBuilder, type Show } from './kind.ts'

const LAYS = ['full', 'half', 'inset'] as const

export type HingeFigures = {
  readonly lay: CupHinge['lay']
  readonly openingDeg: number
  readonly cupDiameter: number
  readonly cupDepth: number
  readonly base: number
  readonly cupDistance: { readonly min: number; readonly max: number; readonly usual: number }
  readonly plateHeights: readonly number[]
  readonly plateLine: number
  readonly insetExtra: number
  readonly system: string
  /** x: the two small holes apart, along the door's edge; y: their line beyond the cup's middle. `45/9.5` is (45, 9.5). */
  readonly pattern: { readonly x: number; readonly y: number }
  readonly dowelDiameter: number
  readonly dowelDepth: number
  readonly plateHolesApart: number
  readonly plateHoleDiameter: number
  readonly plateHoleDepth: number
  readonly standsIn: number
  readonly doorWidthMax?: number
}

/** Holes less wide than this take a wood screw, not a dowel, mm. */
const LEAST_DOWEL_MM = 5

function cupHoles(figures: HingeFigures): readonly Drilling[] {
  const { pattern, dowelDiameter, dowelDepth } = figures
  const dowel = dowelDiameter >= LEAST_DOWEL_MM
  const small = [-1, 1].map(
    (side, k): Drilling => ({
      key: `dowel-${k + 1}`,
      x: pattern.y,
      y: (side * pattern.x) / 2,
      enter: 'contact',
      diameter: dowelDiameter,
      depth: dowelDepth,
      purpose: dowel ? 'hinge dowel' : 'hinge screw',
    }),
  )
  return [
    {
      key: 'cup',
      x: 0,
      y: 0,
      enter: 'contact',
      diameter: figures.cupDiameter,
      depth: figures.cupDepth,
      edgeWall: 3,
      purpose: 'hinge cup',
    },
    ...small,
  ]
}

const ownPlate = (figures: HingeFigures) => ({
  holesApart: figures.plateHolesApart,
  holeDiameter: figures.plateHoleDiameter,
  holeDepth: figures.plateHoleDepth,
})

function build(identity: { id: string; title: string; source: string }, figures: HingeFigures): CupHinge {
  const { lay, openingDeg, cupDiameter, cupDepth, base, cupDistance, plateHeights, plateLine, insetExtra } = figures
  const { system, standsIn, doorWidthMax } = figures
  return {
    ...identity,
    kind: 'cup hinge',
    ...{
      lay,
      openingDeg,
      cupDiameter,
      cupDepth,
      base,
      cupDistance,
      plateHeights,
      plateLine,
      insetExtra,
      standsIn,
      system,
    },
    ...(doorWidthMax !== undefined && { doorWidthMax }),
    parts: { cup: cupHoles(figures), plate: plateHoles(ownPlate(figures)) },
    mates: [{ relation: 'level', a: 'cup', b: 'plate' }],
  }
}

function faults(figures: HingeFigures, show: Show): Fault[] {
  const { cupDiameter, cupDepth, cupDistance, pattern, dowelDiameter, plateHeights } = figures
  const { min, max, usual } = cupDistance
  const apart = Math.hypot(pattern.x / 2, pattern.y)
  return [
    ...faultIf(
      cupDepth >= cupDiameter,
      'cup depth',
      `a cup ${show(cupDepth)} deep and ${show(cupDiameter)} wide is none`,
      `less than the cup's diameter of ${show(cupDiameter)}, usually 10.5 to 13 mm`,
    ),
    ...faultIf(
      min > usual || usual > max,
      'cup distance',
      `${show(min)}, ${show(usual)}, ${show(max)} do not rise`,
      'least, usual and most, each as great as the one before or greater',
    ),
    ...faultIf(
      apart < (cupDiameter + dowelDiameter) / 2,
      'pattern',
      `these holes run into the cup; they lie ${show(apart)} from its middle`,
      `at least ${show((cupDiameter + dowelDiameter) / 2)} from the middle of the cup`,
    ),
    ...faultIf(
      plateHeights.length === 0,
      'plate heights',
      'the list is empty',
      'the heights of the plates, such as [0, 3]',
    ),
    ...plateFaults(ownPlate(figures), 'plate holes apart', show),
  ]
}

/** Cup hinges with the plates that they are usually mounted on. */
export const cupHinge = kindBuilder<HingeFigures, CupHinge>({
  kind: 'cup hinge',
  figures: {
    lay: figure.word('lay', LAYS, 'Full or half overlay, or inset.'),
    'opening angle': figure.degrees('openingDeg', 'How far the hinge opens, degrees.'),
    'cup diameter': figure.length('cupDiameter', 'above 0', 'Diameter of the cup.'),
    'cup depth': figure.length('cupDepth', 'above 0', 'Depth of the bore for the cup.'),
    'base figure': figure.length(
      'base',
      'any',
      'K in overlay = K + C − H: the overlay on a plate of height 0 with a cup distance of 0.',
    ),
    'cup distance': figure.range(
      'cupDistance',
      '0 or more',
      "C: from the door's edge to the near edge of the cup, least, most and usual.",
    ),
    'plate heights': figure.lengths('plateHeights', 'any', 'Heights of the plates that are to hand, H.'),
    'plate line': figure.length('plateLine', 'above 0', "From the side's front edge to the holes of the plate."),
    'inset extra': figure.length(
      'insetExtra',
      '0 or more',
      "Inset doors: added to the plate line, with the door's thickness.",
    ),
    'stands in': figure.length(
      'standsIn',
      '0 or more',
      'How far the open hinge stands into the opening from the wall that it is screwed to.',
    ),
    'plate system': figure.text('system', 'What clips together: a hinge takes the plates of its own system.'),
    pattern: figure.size(
      'pattern',
      'above 0',
      'The two small holes apart, and their line beyond the middle of the cup: [45, 9.5].',
    ),
    'dowel diameter': figure.length('dowelDiameter', 'above 0', 'Diameter of the two small holes beside the cup.'),
    'dowel depth': figure.length('dowelDepth', 'above 0', 'Depth of the two small holes beside the cup.'),
    'plate holes apart': figure.length('plateHolesApart', 'above 0', 'Distance between the two holes of the plate.'),
    'plate hole diameter': figure.length('plateHoleDiameter', 'above 0', 'Diameter of the holes of the plate.'),
    'plate hole depth': figure.length('plateHoleDepth', 'above 0', 'Depth of the holes of the plate.'),
    'widest door': figure.length('doorWidthMax', 'above 0', 'Width of the widest door that the hinge is made for.'),
  },
  build,
  faults,
})

/** A hinge on that plate and no other: its height, its line and its holes. */
export function hingeOnPlate(hinge: CupHinge, plate: HingePlate): CupHinge {
  const parts = { ...hinge.parts, plate: plate.parts.plate ?? [] }
  return { ...hinge, plateHeights: [plate.height], plateLine: plate.plateLine, parts }
}
