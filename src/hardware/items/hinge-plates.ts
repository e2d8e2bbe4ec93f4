import { hingePlate, type PlateFigures } from '../kinds/hinge-plate.ts'
import type { HingePlate } from '../types.ts'

/** A row of plates that differ in their height alone: `hinge plate 0`, or `hinge plate 0 <name>`. */
function row(
  heights: readonly number[],
  name: string,
  words: string,
  source: string,
  figures: Omit<PlateFigures, 'height'>,
): readonly HingePlate[] {
  return heights.map((height) =>
    hingePlate.make({
      id: `hinge plate ${height}${name === '' ? '' : ` ${name}`}`,
      title: `hinge plate, height ${height}, ${words}`,
      source,
      height,
      ...figures,
    }),
  )
}

const SYSTEM_HOLES = { holesApart: 32, holeDiameter: 5, holeDepth: 13 } as const
/** Pilots of wood screws of 3.5 mm: 0.7 d, common practice. */
const PILOTS = { holesApart: 32, holeDiameter: 2.5, holeDepth: 12 } as const

const HOLES = 'line 37, holes 5 mm 32 apart: S1; depth 13: common practice'

/** What the usual cup hinges clip onto, all heights of one range. */
export const usualPlates = row([-2, 0, 2, 3, 3.5], '', 'line 37', `heights: S10; ${HOLES}`, {
  plateLine: 37,
  system: 'usual',
  ...SYSTEM_HOLES,
})

/** What the wide-angle hinges clip onto. */
export const widePlates = row(
  [0, 3, 6, 9],
  'wide',
  'for wide-angle hinges, line 37',
  `heights: from memory; ${HOLES}`,
  {
    plateLine: 37,
    system: 'wide',
    ...SYSTEM_HOLES,
  },
)

/** What the small hinges clip onto. */
export const smallPlates = row([-0.5, 1.5, 3], 'small', 'for 26 mm hinges, line 37', `heights: S16; ${HOLES}`, {
  plateLine: 37,
  system: 'small',
  ...SYSTEM_HOLES,
})

const nearEdge = row([0, 3], 'line 28', 'line 28', 'line 28: from memory; heights: S10; holes 32 apart: S1', {
  plateLine: 28,
  system: 'usual',
  ...SYSTEM_HOLES,
})

const screwed = row(
  [0, 3],
  'wood screws',
  'line 37, for wood screws of 3.5 mm',
  'heights: S10; line 37, holes 32 apart: S1; pilot 2.5 × 12: common practice',
  { plateLine: 37, system: 'usual', ...PILOTS },
)

/** Plates for cup hinges; a front can name one. */
export const hingePlates: readonly HingePlate[] = [
  ...usualPlates,
  ...nearEdge,
  ...screwed,
  ...widePlates,
  ...smallPlates,
]
