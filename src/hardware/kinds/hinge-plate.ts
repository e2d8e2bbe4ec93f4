import type { Drilling, HingePlate } from '../types.ts'
import { type Fault, faultIf, figure, kindBuilder, type Show } from './kind.ts'

/** Two holes one above the other, on the line of a hinge plate. */
export type PlateHoles = {
  /** Distance between the two, mm. */
  readonly holesApart: number
  readonly holeDiameter: number
  readonly holeDepth: number
}

export type PlateFigures = PlateHoles & {
  readonly height: number
  readonly plateLine: number
  readonly system: string
}

/** Drillings of part `plate`: y along the door's edge. */
export function plateHoles({ holesApart, holeDiameter, holeDepth }: PlateHoles): readonly Drilling[] {
  return [-1, 1].map((side, k) => ({
    key: `screw-${k + 1}`,
    x: 0,
    y: (side * holesApart) / 2,
    enter: 'contact',
    diameter: holeDiameter,
    depth: holeDepth,
    purpose: 'hinge plate',
  }))
}

/** What cannot be of a plate's holes, by the words that the kind has for them. */
export function plateFaults(holes: PlateHoles, apart: string, show: Show): Fault[] {
  return faultIf(
    holes.holesApart <= holes.holeDiameter,
    apart,
    `holes ${show(holes.holesApart)} apart run into each other; they are ${show(holes.holeDiameter)} wide`,
    `more than ${show(holes.holeDiameter)}, usually 32 mm`,
  )
}

/** Plates for cup hinges. */
export const hingePlate = kindBuilder<PlateFigures, HingePlate>({
  kind: 'hinge plate',
  figures: {
    height: figure.length('height', 'any', 'Height of the plate, H in overlay = K + C − H.'),
    'plate line': figure.length('plateLine', 'above 0', "From the side's front edge to the holes of the plate."),
    'plate system': figure.text('system', 'What clips together: a hinge takes the plates of its own system.'),
    'holes apart': figure.length('holesApart', 'above 0', 'Distance between the two holes of the plate.'),
    'hole diameter': figure.length('holeDiameter', 'above 0', 'Diameter of the hole, or of each hole.'),
    'hole depth': figure.length('holeDepth', 'above 0', 'Depth of the hole, or of each hole.'),
  },
  build: (identity, figures) => ({
    ...identity,
    kind: 'hinge plate',
    height: figures.height,
    plateLine: figures.plateLine,
    system: figures.system,
    parts: { plate: plateHoles(figures) },
    mates: [],
  }),
  faults: (figures, show) => plateFaults(figures, 'holes apart', show),
})
