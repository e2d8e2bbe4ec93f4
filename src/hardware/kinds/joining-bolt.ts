import type { JoiningBolt } from '../types.ts'
import { faultIf, figure, kindBuilder } from './kind.ts'
import { coaxial } from './screws.ts'

type BoltFigures = {
  readonly clearance: number
  readonly nutBore: number
  readonly headDiameter: number
  readonly nutDiameter: number
  readonly barrelLength: number
}

/** Bolts that join neighbouring modules: a clearance hole on one side, the bore for a nut or sleeve in the other. */
export const joiningBolt = kindBuilder<BoltFigures, JoiningBolt>({
  kind: 'joining bolt',
  figures: {
    'hole diameter': figure.length('clearance', 'above 0', 'Diameter of the hole, or of each hole.'),
    'nut bore': figure.length('nutBore', 'above 0', 'Diameter of the bore for the barrel of the nut.'),
    'head diameter': figure.length('headDiameter', 'above 0', 'Diameter of the head, or of the washer below it.'),
    'nut diameter': figure.length('nutDiameter', 'above 0', 'Diameter of the flange of the nut.'),
    'barrel length': figure.length(
      'barrelLength',
      '0 or more',
      'Of the nut, under its flange; 0 where any board takes it.',
    ),
  },
  build: (identity, { clearance, nutBore, headDiameter, nutDiameter, barrelLength }) => ({
    ...identity,
    kind: 'joining bolt',
    headDiameter,
    nutDiameter,
    barrelLength,
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
