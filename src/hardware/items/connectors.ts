import { dowel } from '../kinds/dowel.ts'
import { pocketScrew } from '../kinds/screws.ts'
import type { Dowel, Item, PocketScrew } from '../types.ts'
import { screws } from './screws.ts'

/** Bores go 1 mm deeper in both boards together than S25's third and two thirds, for glue: so much in all, mm. */
const GLUE_ROOM = 2
const GLUE_ROOM_INCH = 1.5875

const peg = (diameter: number, length: number, faceDepth: number, source: string): Dowel => {
  const id = `dowel ${diameter}x${length}`
  return dowel.make({ id, title: id, source, diameter, length, faceDepth, glueRoom: GLUE_ROOM })
}

const THIRDS = 'a third in the face, two thirds in the edge, and room for glue: S25'

const inchPeg = (name: string, diameter: number, length: number, faceDepth: number): Dowel =>
  dowel.make({
    id: `dowel ${name}`,
    title: `dowel ${name} in`,
    source: `${THIRDS}; 1/32 in more in each: common practice`,
    diameter,
    length,
    faceDepth,
    glueRoom: GLUE_ROOM_INCH,
  })

const pocket = (length: number, min: number, max: number): PocketScrew =>
  pocketScrew.make({
    id: `pocket screw ${length}`,
    title: `pocket screw ${length} mm, in a slanted pocket`,
    source:
      'angle 15°: S32; step bit 9.5 mm: common practice; screw length by board: pocket-hole jig charts, from memory',
    length,
    board: { min, max },
    pocketDiameter: 9.5,
  })

/** What holds the carcase together, and backs on. */
export const connectors: readonly Item[] = [
  ...screws,
  peg(8, 30, 11, 'edge 21, face 11 with room for glue: S25'),
  peg(6, 30, 11, THIRDS),
  peg(8, 35, 12.5, THIRDS),
  peg(8, 40, 14, THIRDS),
  peg(10, 40, 14, THIRDS),
  inchPeg('1/4x1-1/4', 6.35, 31.75, 11.1125),
  inchPeg('5/16x1-1/2', 7.9375, 38.1, 13.4938),
  inchPeg('3/8x1-1/2', 9.525, 38.1, 13.4938),
  pocket(25, 12, 17),
  pocket(32, 17, 19.6),
  pocket(38, 19.6, 26),
  pocket(50, 26, 35),
  pocket(64, 35, 41),
]
