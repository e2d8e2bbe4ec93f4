import type { CamFitting, Item } from '../types.ts'

const SOURCE =
  'housing 15, its depth 12.5, 13.5, 14 for boards of 16, 18, 19, cam 34 from the joint, bolt bore 8: cam fitting ' +
  'catalogues, from memory; bolt 5 × 12 in the face: system row (S1) and common practice; measure yours'

/** A housing for boards of one nominal thickness; its bolt lies in the middle of such a board. */
const cam = (nominal: number, depth: number, board: CamFitting['board']): CamFitting => ({
  kind: 'cam fitting',
  id: `cam 15 for ${nominal}`,
  title: `cam fitting, 15 mm housing for ${nominal} mm boards, bolt to be screwed into a 5 mm hole`,
  source: SOURCE,
  board,
  camDistance: 34,
  boltAxis: nominal / 2,
  parts: {
    face: [{ key: 'bolt', x: 0, y: 0, enter: 'contact', diameter: 5, depth: 12, purpose: 'cam bolt' }],
    edge: [{ key: 'bolt', x: 0, y: 0, enter: 'contact', diameter: 8, depth: 34, edgeWall: 3, purpose: 'cam bolt' }],
    cam: [{ key: 'housing', x: 0, y: 0, enter: 'contact', diameter: 15, depth, purpose: 'cam' }],
  },
  mates: [
    { relation: 'coaxial', a: ['face', 'bolt'], b: ['edge', 'bolt'] },
    { relation: 'crossing', a: ['edge', 'bolt'], b: ['cam', 'housing'] },
  ],
})

/** Cam fittings; a joint takes the one that suits its board. */
export const cams: readonly Item[] = [
  cam(16, 12.5, { min: 15, max: 17 }),
  cam(18, 13.5, { min: 17, max: 18.5 }),
  cam(19, 14, { min: 18.5, max: 20.5 }),
]
