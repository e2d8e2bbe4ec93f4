import type { Dowel, Drilling } from '../types.ts'
import { faultIf, figure, kindBuilder } from './kind.ts'
import { coaxial } from './screws.ts'

type DowelFigures = {
  readonly diameter: number
  readonly length: number
  /** Depth of the bore in the face, room for glue included. */
  readonly faceDepth: number
  /** Both bores together are so much deeper than the dowel is long. */
  readonly glueRoom: number
}

/**
 * A dowel keeps about its own radius of wood to the faces of the board [S25]; half a millimetre less is let pass, since
 * boards of 16 mm, for which 8 mm dowels are meant, always measure less (common practice).
 */
const hole = (diameter: number, depth: number): readonly Drilling[] => [
  {
    key: 'hole',
    x: 0,
    y: 0,
    enter: 'contact',
    diameter,
    depth,
    edgeWall: Math.max(0, diameter / 2 - 0.5),
    purpose: 'dowel',
  },
]

/** Depth of the bore in the edge: what the face leaves of the dowel, and the room for glue. */
const edgeDepth = ({ length, faceDepth, glueRoom }: DowelFigures): number => length + glueRoom - faceDepth

/** Dowels, glued: a third in the face, two thirds in the edge, 1 mm more in each (S25). */
export const dowel = kindBuilder<DowelFigures, Dowel>({
  kind: 'dowel',
  figures: {
    diameter: figure.length('diameter', 'above 0', 'Diameter of the dowel and of its bores.'),
    length: figure.length('length', 'above 0', 'Length of the screw or dowel.'),
    'face depth': figure.length(
      'faceDepth',
      'above 0',
      'Depth of the bore in the face; the rest of the dowel goes into the edge.',
    ),
    'glue room': figure.length(
      'glueRoom',
      '0 or more',
      'How much deeper both bores together are than the dowel is long.',
    ),
  },
  build: (identity, figures) => ({
    ...identity,
    kind: 'dowel',
    length: figures.length,
    parts: { face: hole(figures.diameter, figures.faceDepth), edge: hole(figures.diameter, edgeDepth(figures)) },
    mates: coaxial('face', 'edge'),
  }),
  faults: (figures, show) =>
    faultIf(
      edgeDepth(figures) <= 0,
      'face depth',
      `${show(figures.faceDepth)} takes in the whole dowel, ${show(figures.length)} long`,
      `less than ${show(figures.length)}, usually a third of it`,
    ),
})
