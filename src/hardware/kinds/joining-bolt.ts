import type { JoiningBolt } from '../types.ts'
import { faultIf, figure, kindBuilder } from './kind.ts'
import { coaxial } from './screws.ts'

type BoltFigures = {
  readonly clearance: number
  readonly nutBore: number
  readonly headDiameter: number
  readonly nutDiameter: number
}

/** Bolts that join neighbouring modules: a clearance hole on one side, the bore for a nut or sleeve in the other. */
export const joiningBolt = kindBuilder<BoltFigures, JoiningBolt>({
  kind: 'joining bolt',
  figures: {
    'hole diameter': figure.length('clearance', 'above 0', 'Diameter of the hole, or of each hole.'),
    'nut bore': figure.length('nutBore', 'above 0', 'Diameter of the bore for the barrel of the nut.'),
    'head diameter': figure.length('headDiameter', 'above 0', 'Diameter of the head, or of the washer below it.'),
    'nut diameter': figure.length('nutDiameter', 'above 0', 'Diameter of the flange of the nut.'),
  },
  build: (identity, { clearance, nutBore, headDiameter, nutDiameter }) => ({
    ...identity,
    kind: 'joining bolt',
    headDiameter,
    nutDiameter,
    parts: {
      head: [{ key: 'hole', x: 0, y: 0, enter: 'far', diameter: clearance, depth: 'through', purpose: 'joining bolt' }],
      nut: [{ key: 'hole', x: 0, y: 0, enter: 'contact', diameter: nutBore, depth: 'through', purpose: 'joining nut' }],
    },
    mates: coaxial('head', 'nut'),
  }),
  faults: ({ clearance, nutBore, headDiameter, nutDiameter }, show) => [
    ...faultIf(
      headDiameter <= clearance,
      'head diameter',
      `a head of ${show(headDiameter)} falls through a hole of ${show(clearance)}`,
      `more than ${show(clearance)}`,
    ),
    ...faultIf(
      nutDiameter <= nutBore,
      'nut diameter',
      `a flange of ${show(nutDiameter)} falls through a bore of ${show(nutBore)}`,
      `more than ${show(nutBore)}`,
    ),
  ],
})
