import type { Drilling, Pull } from '../types.ts'
import { faultIf, figure, kindBuilder } from './kind.ts'

type PullFigures = { readonly centres: number; readonly holeDiameter: number }

const through = (key: string, y: number, diameter: number): Drilling => ({
  key,
  x: 0,
  y,
  enter: 'far',
  diameter,
  depth: 'through',
  purpose: 'pull',
})

/** Pulls, and knobs (centres 0), held by screws through the front. */
export const pull = kindBuilder<PullFigures, Pull>({
  kind: 'pull',
  figures: {
    centres: figure.length('centres', '0 or more', 'Distance between the two holes; 0 for a knob.'),
    'hole diameter': figure.length('holeDiameter', 'above 0', 'Diameter of the hole, or of each hole.'),
  },
  build: (identity, { centres, holeDiameter }) => {
    const holes =
      centres === 0
        ? [through('screw', 0, holeDiameter)]
        : [through('screw-1', -centres / 2, holeDiameter), through('screw-2', centres / 2, holeDiameter)]
    return { ...identity, kind: 'pull', centres, parts: { front: holes, 'box front': holes }, mates: [] }
  },
  faults: ({ centres, holeDiameter }, show) =>
    faultIf(
      centres > 0 && centres <= holeDiameter,
      'centres',
      `holes ${show(centres)} apart run into each other; they are ${show(holeDiameter)} wide`,
      `more than ${show(holeDiameter)}, or 0 for a knob`,
    ),
})
