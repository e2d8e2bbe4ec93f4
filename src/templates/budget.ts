import type { Panel } from '../panel/index.ts'
import { markLetters } from './labels.ts'
import { laidOnSheets, packRooms, type SheetSpec } from './packing-sheets.ts'
import { type LoosePiece, planStrips, type StripOptions } from './strips.ts'
import type { FacePlan, Piece } from './types.ts'

/** Pages of the whole face; then strips along its rows; then short strips that are moved along; then pieces for one pattern. */
export type BudgetStage = 'whole' | 'strips' | 'repeated' | 'hardware'

/** A stage with the ways to make strips that it tries, the most wanted first. */
interface Stage {
  readonly name: BudgetStage
  readonly long: StripOptions['long']
  readonly ways: readonly Pick<StripOptions, 'twice' | 'least'>[]
}

/** Strips that serve both hands; then with pairs of bores as strips too. */
const WAYS: Stage['ways'] = [
  { twice: true, least: 3 },
  { twice: true, least: 2 },
  { twice: false, least: 3 },
  { twice: false, least: 2 },
]
const STRIPS: Stage = { name: 'strips', long: 'joined', ways: WAYS }
const REPEATED: Stage = { name: 'repeated', long: 'repeated', ways: WAYS }
/** A pair of holes belongs to one piece of hardware, nearly always: its own piece says better where that goes. */
const HARDWARE_AFTER_STRIPS: Stage = { name: 'hardware', long: 'repeated', ways: WAYS.filter(({ least }) => least > 2) }
const HARDWARE_ALONE: Stage = {
  ...HARDWARE_AFTER_STRIPS,
  ways: [...WAYS, { twice: false, least: Number.POSITIVE_INFINITY }],
}

/** A face with something to mark. */
export interface FaceToPlan {
  readonly face: 'A' | 'B'
  /** Pages of the whole face for all of its work but that with these ids. */
  readonly whole: (marked: ReadonlySet<string>) => FacePlan
}

/** Pieces for the work of a face but that with these ids, each for one pattern of holes; and what they mark. */
export type HardwarePlanner = (
  face: 'A' | 'B',
  marked: ReadonlySet<string>,
) => { readonly pieces: readonly LoosePiece[]; readonly marked: ReadonlySet<string> }

export interface PlannedFace {
  readonly face: 'A' | 'B'
  readonly plan: FacePlan
  /** Ids of what cut-out pieces mark: no page of the whole face needs to show it. */
  readonly marked: ReadonlySet<string>
}

export interface PanelPlan {
  readonly stage: BudgetStage
  readonly faces: readonly PlannedFace[]
  /** Of paper, both faces together. */
  readonly sheets: number
  /** What the panel was allowed. */
  readonly budget?: number
  /** False where no stage does with as few sheets as allowed: the plan is the one with the fewest. */
  readonly met: boolean
}

export interface BudgetOptions {
  readonly sheet: SheetSpec
  /** Sheets at most, both faces together; pages of the whole face, as many as it takes, when absent. */
  readonly budget?: number
  /** The panels of the module, for strips that serve both hands. */
  readonly others?: readonly Panel[]
  /** The last stage; there is none when absent. */
  readonly hardware?: HardwarePlanner
}

/**
 * How a panel is marked within a budget of sheets: by the first stage that needs no more, else by the one that needs the
 * fewest. In each stage every face takes the way with the fewest sheets that the stage allows, pages of the whole face
 * included.
 */
export function planBudget(panel: Panel, asked: readonly FaceToPlan[], options: BudgetOptions): PanelPlan {
  const { budget, hardware } = options
  const faces = asked.map(remembering)
  const whole = planOf(
    'whole',
    faces.map((face) => wholeFace(face)),
    budget,
  )
  if (budget === undefined || whole.met) return whole
  const plans = [whole]
  // Pieces for one pattern first take what strips leave, then all of it: of a row, each hole would have to be measured.
  const last: readonly Stage[] = hardware === undefined ? [] : [HARDWARE_AFTER_STRIPS, HARDWARE_ALONE]
  for (const stage of [STRIPS, REPEATED, ...last]) {
    const plan = planOf(stage.name, numbered(panel, faces, stage, options), budget)
    if (plan.met) return plan
    plans.push(plan)
  }
  return plans.reduce((best, plan) => (plan.sheets < best.sheets ? plan : best))
}

/** Several ways to make strips leave the same for pages of the whole face: these are planned once. */
function remembering({ face, whole }: FaceToPlan): FaceToPlan {
  const known = new Map<string, FacePlan>()
  return {
    face,
    whole: (marked) => {
      const key = [...marked].sort().join(' ')
      const plan = known.get(key) ?? whole(marked)
      known.set(key, plan)
      return plan
    },
  }
}

function planOf(stage: BudgetStage, faces: readonly PlannedFace[], budget: number | undefined): PanelPlan {
  const sheets = faces.reduce((sum, { plan }) => sum + plan.sheets, 0)
  return {
    stage,
    faces,
    sheets,
    met: budget === undefined || sheets <= budget,
    ...(budget !== undefined && { budget }),
  }
}

const wholeFace = ({ face, whole }: FaceToPlan): PlannedFace => ({ face, plan: whole(new Set()), marked: new Set() })

/** The faces one after the other; strips are numbered on, so that no two of a panel have the same name. */
function numbered(panel: Panel, faces: readonly FaceToPlan[], stage: Stage, options: BudgetOptions): PlannedFace[] {
  let label = 0
  return faces.map((face) => {
    const planned = fewest(panel, face, stage, label, options)
    const names = planned.plan.pieces
      .filter(({ kind }) => kind === 'strip' || kind === 'repeated')
      .map((piece) => piece.label.split('.')[0])
    label += new Set(names).size
    return planned
  })
}

function fewest(
  panel: Panel,
  face: FaceToPlan,
  stage: Stage,
  label: number,
  { sheet, others = [], hardware }: BudgetOptions,
): PlannedFace {
  const rooms = packRooms(sheet)
  const half = Math.max(rooms.upright.width, rooms.upright.height, rooms.lying.width, rooms.lying.height) / 2
  const lengths = stage.long === 'joined' ? [{}] : [{}, { longest: half }]
  let best = wholeFace(face)
  const consider = (pieces: readonly LoosePiece[], marked: ReadonlySet<string>): void => {
    const rest = face.whole(marked)
    const laid = laidOnSheets(lettered(pieces, rest.pieces), sheet, rest.sheets)
    const sheets = 1 + Math.max(rest.sheets - 1, ...laid.map((piece) => piece.sheet))
    if (sheets >= best.plan.sheets) return
    best = { face: face.face, marked, plan: { ...best.plan, pieces: [...rest.pieces, ...laid], sheets } }
  }
  for (const length of lengths) {
    for (const way of stage.ways) {
      if (best.plan.sheets <= 1) return best
      const strips = planStrips(
        { panel, face: face.face },
        { rooms, others, numbered: label, long: stage.long, ...way, ...length },
      )
      if (stage.name !== 'hardware' || hardware === undefined) consider(strips.pieces, strips.marked)
      else {
        const more = hardware(face.face, strips.marked)
        consider([...strips.pieces, ...more.pieces], new Set([...strips.marked, ...more.marked]))
      }
    }
  }
  return best
}

/** Pieces whose registration marks carry on from those of the pages of the whole face: each mark has its own letters. */
function lettered(pieces: readonly LoosePiece[], pages: readonly Piece[]): LoosePiece[] {
  const before = new Set(pages.flatMap(({ marks }) => marks.map(({ id }) => id))).size
  const order = [...new Set(pieces.flatMap(({ marks }) => marks.map(({ id }) => id)))]
  return pieces.map((piece) => ({
    ...piece,
    marks: piece.marks.map((mark) => ({ ...mark, id: markLetters(before + order.indexOf(mark.id)) })),
  }))
}

/** The pieces of a plan that are cut out, and those that are pages of the whole face. */
export function cutOuts(pieces: readonly Piece[]): {
  readonly loose: readonly Piece[]
  readonly whole: readonly Piece[]
} {
  return {
    loose: pieces.filter(({ use }) => use !== undefined),
    whole: pieces.filter(({ use }) => use === undefined),
  }
}
