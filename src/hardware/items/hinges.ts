import type { CupHinge, Item } from '../types.ts'

const SOURCE =
  'cup 35, cup distance 3 to 7, plate heights and base figure by crank: planning page of a hinge catalogue (S10); cup ' +
  'depth 12.5: S12; pattern 45/9.5 with 8 mm dowels: S9; dowel depth 11: common practice; plate line 37, holes 32 apart: S1; ' +
  'stands 25 into the opening, and the crank more: common practice, measure yours'

/** Base figures of one range: 15 less the crank (0, 9.5, 19). */
const hinge = (id: string, title: string, lay: CupHinge['lay'], base: number): CupHinge => ({
  kind: 'cup hinge',
  id,
  title,
  source: SOURCE,
  lay,
  cupDiameter: 35,
  cupDepth: 12.5,
  base,
  cupDistance: { min: 3, max: 7, usual: 5 },
  plateHeights: [-2, 0, 2, 3, 3.5],
  plateLine: 37,
  insetExtra: 1.5,
  // 25 for a straight arm (base 15); a cranked one stands further in by its crank.
  standsIn: 25 + 15 - base,
  parts: {
    cup: [
      { key: 'cup', x: 0, y: 0, enter: 'contact', diameter: 35, depth: 12.5, edgeWall: 3, purpose: 'hinge cup' },
      { key: 'dowel-1', x: 9.5, y: -22.5, enter: 'contact', diameter: 8, depth: 11, purpose: 'hinge dowel' },
      { key: 'dowel-2', x: 9.5, y: 22.5, enter: 'contact', diameter: 8, depth: 11, purpose: 'hinge dowel' },
    ],
    plate: [
      { key: 'screw-1', x: 0, y: -16, enter: 'contact', diameter: 5, depth: 13, purpose: 'hinge plate' },
      { key: 'screw-2', x: 0, y: 16, enter: 'contact', diameter: 5, depth: 13, purpose: 'hinge plate' },
    ],
  },
  mates: [{ relation: 'level', a: 'cup', b: 'plate' }],
})

/** 35 mm cup hinges with plates; the one that fits the lay of the door is the default. */
export const hinges: readonly Item[] = [
  hinge('hinge 35 full', '35 mm cup hinge, straight arm, full overlay', 'full', 15),
  hinge('hinge 35 half', '35 mm cup hinge, cranked 9.5, half overlay', 'half', 5.5),
  hinge('hinge 35 inset', '35 mm cup hinge, cranked 19, inset', 'inset', -4),
]
