import { cupHinge, type HingeFigures } from '../kinds/cup-hinge.ts'
import type { CupHinge, HingePlate, Item } from '../types.ts'
import { smallPlates, usualPlates, widePlates } from './hinge-plates.ts'

const RANGE =
  'cup 35, cup distance 3 to 7, plate heights and base figure by crank: planning page of a hinge catalogue (S10); cup ' +
  'depth 12.5: S12'
const PLATE = 'plate line 37, holes 32 apart: S1'
const DOWELS = 'pattern 45/9.5 with 8 mm dowels: S9; dowel depth 11: common practice'

const heightsOf = (plates: readonly HingePlate[]): readonly number[] => plates.map((plate) => plate.height)

const PLATE_HOLES = { plateLine: 37, plateHolesApart: 32, plateHoleDiameter: 5, plateHoleDepth: 13 } as const

const USUAL = {
  openingDeg: 110,
  cupDiameter: 35,
  cupDepth: 12.5,
  cupDistance: { min: 3, max: 7, usual: 5 },
  plateHeights: heightsOf(usualPlates),
  insetExtra: 1.5,
  system: 'usual',
  pattern: { x: 45, y: 9.5 },
  dowelDiameter: 8,
  dowelDepth: 11,
  ...PLATE_HOLES,
} as const satisfies Omit<HingeFigures, 'lay' | 'base' | 'standsIn'>

interface Crank {
  readonly lay: CupHinge['lay']
  readonly words: string
  /** Base figure of the usual range: 15 less the crank (0, 9.5, 19) [S10]. */
  readonly base: number
  /** Base figure of the wide-angle range. */
  readonly wide: number
  readonly crank: number
}

/** A straight arm stands so far into the opening, a cranked one further by its crank, mm; common practice, measure yours. */
const STANDS_IN_MM = 25

const CRANKS: readonly Crank[] = [
  { lay: 'full', words: 'straight arm, full overlay', base: 15, wide: 13, crank: 0 },
  { lay: 'half', words: 'cranked 9.5, half overlay', base: 5.5, wide: 3.5, crank: 9.5 },
  { lay: 'inset', words: 'cranked 19, inset', base: -4, wide: -2, crank: 19 },
]

const usual = CRANKS.map(({ lay, words, base, crank }) =>
  cupHinge.make({
    id: `hinge 35 ${lay}`,
    title: `35 mm cup hinge, ${words}`,
    source: `${RANGE}; ${DOWELS}; ${PLATE}`,
    lay,
    base,
    standsIn: STANDS_IN_MM + crank,
    ...USUAL,
  }),
)

/** The same range with other holes beside the cup. */
const otherPatterns = (['48/6', '52/5.5'] as const).flatMap((pattern) =>
  CRANKS.map(({ lay, words, base, crank }) =>
    cupHinge.make({
      id: `hinge 35 ${lay} ${pattern}`,
      title: `35 mm cup hinge, pattern ${pattern}, ${words}`,
      source: `${RANGE}; pattern ${pattern}: from memory; dowels 8 × 11: common practice; ${PLATE}; measure yours`,
      lay,
      base,
      standsIn: STANDS_IN_MM + crank,
      ...USUAL,
      pattern: pattern === '48/6' ? { x: 48, y: 6 } : { x: 52, y: 5.5 },
    }),
  ),
)

const wide = CRANKS.map(({ lay, words, wide: base, crank }) =>
  cupHinge.make({
    id: `hinge 35 ${lay} wide`,
    title: `35 mm cup hinge, opens 165°, ${words}`,
    source:
      `cup distance 3 to 6: S11; ${lay === 'inset' ? 'base figure −2: S11' : 'base figure by crank: common practice'}; ` +
      `plate heights: from memory; ${DOWELS}; ${PLATE}; makers differ, measure yours`,
    lay,
    base,
    standsIn: STANDS_IN_MM + crank,
    ...USUAL,
    openingDeg: 165,
    cupDistance: { min: 3, max: 6, usual: 4.5 },
    plateHeights: heightsOf(widePlates),
    system: 'wide',
  }),
)

const small = cupHinge.make({
  id: 'hinge 26 full',
  title: '26 mm cup hinge for small doors, straight arm, full overlay',
  source:
    'base figure 12, plate heights: S16; doors to 450 wide: S11; cup depth 10.5, cup distance 3 to 6, pattern 38/5.5 ' +
    `with 8 mm dowels: common practice, measure yours; ${PLATE}`,
  lay: 'full',
  base: 12,
  standsIn: STANDS_IN_MM,
  ...USUAL,
  openingDeg: 95,
  cupDiameter: 26,
  cupDepth: 10.5,
  cupDistance: { min: 3, max: 6, usual: 4.5 },
  plateHeights: heightsOf(smallPlates),
  system: 'small',
  pattern: { x: 38, y: 5.5 },
  doorWidthMax: 450,
})

/** The hinges that `auto` chooses from, for every lay of a door. */
export const USUAL_HINGES: readonly string[] = usual.map((hinge) => hinge.id)

/** Cup hinges. */
export const hinges: readonly Item[] = [...usual, ...wide, ...otherPatterns, small]
