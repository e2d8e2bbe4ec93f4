/** What is known of a kind of board; kg/m³ and N/mm². */
export interface BoardFacts {
  readonly density: number
  /** Modulus of elasticity along the grain. */
  readonly stiffness: number
  /** Sag under a lasting load = sag at once × (1 + creep); indoors. */
  readonly creep: number
  /** It holds pins as wood chips do, not as plies do. */
  readonly chips: boolean
}

/** EN 1995-1-1, table 3.2, service class 1, lasting load: from memory. */
const CREEP = { plies: 0.8, chips: 2.25 } as const

const plies = (density: number, stiffness: number): BoardFacts => ({
  density,
  stiffness,
  creep: CREEP.plies,
  chips: false,
})
const chips = (density: number, stiffness: number): BoardFacts => ({
  density,
  stiffness,
  creep: CREEP.chips,
  chips: true,
})

interface Row {
  /** Up to this thickness, mm. */
  readonly upTo: number
  readonly facts: BoardFacts
}

const row = (upTo: number, facts: BoardFacts): Row => ({ upTo, facts })
const ANY = Number.POSITIVE_INFINITY

/**
 * Kinds of board. Birch plywood: density S50, stiffness less than the handbook's mean of 10 000, common practice. Fir
 * plywood, bare or with faces of hardwood: stiffness S46 (950 000 and 1 800 000 psi), density common practice. Poplar
 * plywood: common practice. Particleboard P2: S51 and S52 (thin ones and their density). MDF: least stiffness S53,
 * density 700 to 760. Those of particleboard and MDF are least values of a standard, so a little pessimistic.
 */
const BOARDS = {
  'birch plywood': [row(ANY, plies(685, 8000))],
  'fir plywood': [row(ANY, plies(525, 6550))],
  'faced plywood': [row(ANY, plies(575, 12_410))],
  'poplar plywood': [row(ANY, plies(450, 4500))],
  particleboard: [
    row(13, chips(690, 1800)),
    row(20, chips(650, 1600)),
    row(25, chips(640, 1500)),
    row(ANY, chips(640, 1350)),
  ],
  MDF: [row(9, chips(730, 2700)), row(12, chips(730, 2500)), row(19, chips(730, 2200)), row(ANY, chips(730, 2100))],
} as const satisfies Readonly<Record<string, readonly Row[]>>

export type BoardKind = keyof typeof BOARDS
export const BOARD_KINDS = Object.keys(BOARDS) as [BoardKind, ...BoardKind[]]

/** Boards of which no kind is said creep as plywood does, and hold pins so. */
export const UNKNOWN_BOARD = { creep: CREEP.plies, chips: false } as const

/** Density, stiffness and creep of a board of a kind and thickness (mm). */
export function boardFacts(kind: BoardKind, thickness: number): BoardFacts {
  const rows: readonly Row[] = BOARDS[kind]
  const found = rows.find(({ upTo }) => thickness <= upTo)
  if (found === undefined) throw new Error(`no ${kind} of ${thickness} mm`)
  return found.facts
}
