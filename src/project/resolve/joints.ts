import type { CamFitting, Dowel, Item, PocketScrew } from '../../hardware/index.ts'
import { formatMm } from '../../length/index.ts'
import { type Context, type Default, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, type Layers, said } from '../layers.ts'
import type { RawJoint } from '../schema/definition.ts'
import { JOINT_WORDS, orList } from '../schema/kinds.ts'
import type { DefinitionPath, JointSpec, PanelJoint } from '../types.ts'
import { itemNamed, largestBore } from './hardware.ts'

type JointGroup = Exclude<RawJoint, string>

/** What a joint is when it does not say. */
export interface JointDefaults {
  /** A kind word or the name of an item. */
  readonly fasten: string
  readonly endDistance: Default
  readonly spacing: Default
}

export const USUAL_JOINT: JointDefaults = {
  fasten: 'one-piece screw',
  endDistance: DEFAULTS.endDistance,
  spacing: DEFAULTS.spacing,
}

/** By where the screws of a back stand, and whether it is thick. */
const BACK_SCREWS = {
  thin: ['screw 3.5x25', 'screw #6x1'],
  'over edges': ['screw 4.5x45', 'screw #8x1-3/4'],
  // A lap of 9 mm in a rebate has no wood beside the holes of thicker ones.
  'in rebates': ['screw 3.5x35', 'screw #6x1-5/8'],
} as const

/** Fixes a back, so thick, over edges or in rebates; a thick one takes a screw that still bites. */
export function backJoint(
  context: Context,
  thickness: number | undefined,
  lies: 'over edges' | 'in rebates' = 'over edges',
): JointDefaults {
  const thin = thickness === undefined || thickness <= DEFAULTS.thinBack
  const [metric, inch] = BACK_SCREWS[thin ? 'thin' : lies]
  return {
    fasten: context.usual === 'in' ? inch : metric,
    endDistance: DEFAULTS.backEndDistance,
    spacing: DEFAULTS.backSpacing,
  }
}

/**
 * A joint between panels of a carcase, or of a partition or fixed shelf with them: fastened, or a housing. `board` is
 * the thickness of the panel whose edge is joined, `head` that of the thinnest it can meet, mm.
 */
export function resolvePanelJoint(
  context: Context,
  joint: Said<unknown> | undefined,
  board: number | undefined,
  head: number | undefined,
): PanelJoint {
  const layers = asLayers<JointGroup>([joint], 'fasten')
  if (said(layers, 'fasten')?.value !== 'housing') return resolveJoint(context, joint, board)
  refuseIdleKeys(context, layers, FASTENED_KEYS, 'a housing is glued')
  refuseIdleKeys(context, layers, ['dowel'], 'a housing has no cam fittings')
  const depthSaid = said(layers, 'depth')
  const depth = context.length(depthSaid, { aboveZero: true })
  if (depthSaid !== undefined && depth !== undefined && head !== undefined && depth >= head) {
    const what = `${context.show(depth)} cuts right through a board that is ${context.show(head)} thick`
    context.report(depthSaid.path, what, {
      expected: `less than ${context.show(head)}, such as ${context.show(head / 3)}`,
    })
  }
  return {
    kind: 'housing',
    depth: depth ?? 'auto',
    play: context.lengthOr(said(layers, 'play'), DEFAULTS.housingPlay),
    stopFront: context.lengthOr(said(layers, 'stop front'), 0),
    stopRear: context.lengthOr(said(layers, 'stop rear'), 0),
  }
}

/**
 * A joint with everything filled in. `board` is the thickness of the panel whose edge is joined, mm: pocket screws and
 * cam fittings are chosen by it. What cannot be is reported, and the default stands in for it, so that the reading can
 * go on. Where a part falls back on the carcase's joint and that is a housing, the part takes the default.
 */
export function resolveJoint(
  context: Context,
  joint: Said<unknown> | undefined,
  board: number | undefined,
  defaults: JointDefaults = USUAL_JOINT,
): JointSpec {
  const layers = asLayers<JointGroup>([joint], 'fasten')
  const fasten = said(layers, 'fasten')
  if (joint !== undefined && fasten?.value === 'housing') {
    if (joint.path.at(-2) !== 'carcase') {
      context.report(fasten.path, 'a housing joins the panels of a carcase, partitions and fixed shelves only', {
        expected: `${orList(JOINT_WORDS.filter((word) => word !== 'housing'))}, or the name of a piece of hardware`,
      })
    }
    return resolveJoint(context, undefined, board, defaults)
  }
  refuseIdleKeys(context, layers, HOUSING_KEYS, 'the joint is no housing')
  const asked = fasten && fastener(context, fasten, board)
  const item = asked ?? defaultItem(context, defaults.fasten)
  const spacing = said(layers, 'spacing')
  const spacingMm = context.lengthOr(spacing, defaults.spacing, { aboveZero: true })
  const bore = largestBore(item)
  if (spacing !== undefined && spacingMm < bore && !context.troubled(spacing.path)) {
    const what = `${context.show(spacingMm)} from fastener to fastener is less than a hole of ${context.show(bore)} is wide`
    context.report(spacing.path, what, { expected: `more than ${context.show(bore)}` })
  }
  return {
    item,
    endDistance: context.lengthOr(said(layers, 'end distance'), defaults.endDistance),
    spacing: spacingMm,
    ...(fasten !== undefined && asked === undefined ? {} : besideCams(context, layers, item)),
  }
}

const FASTENED_KEYS = ['end distance', 'spacing'] as const
const HOUSING_KEYS = ['depth', 'play', 'stop front', 'stop rear'] as const

/** Reports keys that can have no effect, and why. */
function refuseIdleKeys(
  context: Context,
  layers: Layers<JointGroup>,
  keys: readonly (keyof JointGroup & string)[],
  reason: string,
): void {
  for (const key of keys) {
    const found = said(layers, key)
    if (found === undefined) continue
    context.report(found.path, `has no meaning, since ${reason}`, { expected: 'this key taken out', on: 'key' })
  }
}

/** The dowel beside each cam fitting, unless none is wanted. */
function besideCams(context: Context, layers: Layers<JointGroup>, item: Item): { dowel?: Dowel } {
  const dowel = said(layers, 'dowel')
  if (item.kind !== 'cam fitting') {
    refuseIdleKeys(context, layers, ['dowel'], 'the joint has no cam fittings')
    return {}
  }
  if (dowel?.value === 'none') return {}
  const usual = context.hardware.usual('dowel')[0]
  if (usual === undefined) throw new Error('the catalogue has no dowel')
  return { dowel: (dowel && itemNamed(context, dowel, ['dowel'], ['none'])) ?? usual }
}

/** True for the words that stand for the first suitable item of a kind. */
const isJointWord = (word: string): word is (typeof JOINT_WORDS)[number] =>
  (JOINT_WORDS as readonly string[]).includes(word)

function fastener(context: Context, fasten: Said<string>, board: number | undefined): Item | undefined {
  const { value, path } = fasten
  if (value === 'pocket screw' || value === 'cam and dowel') {
    return board === undefined ? undefined : fittingFor(context, path, KIND_OF[value], board)
  }
  if (isJointWord(value)) return defaultItem(context, value)
  const item = itemNamed(context, fasten, FASTENERS, JOINT_WORDS, 'fastener for joints')
  if (item === undefined || !('board' in item) || board === undefined || suits(item, board)) return item
  const what = `${quoted(value)} is for boards of ${range(item)}, and this one is ${context.show(board)} thick`
  const word = item.kind === 'cam fitting' ? 'cam and dowel' : item.kind
  context.report(path, what, { expected: `${word} for the one that suits, or ${ranges(context, item.kind)}` })
  return undefined
}

const FASTENERS = ['through screw', 'one-piece screw', 'dowel', 'pocket screw', 'cam fitting'] as const
const KIND_OF = { 'pocket screw': 'pocket screw', 'cam and dowel': 'cam fitting' } as const

/** Fasteners that are made for boards of some thickness. */
type Fitting = PocketScrew | CamFitting

const suits = (fitting: Fitting, board: number): boolean => fitting.board.min <= board && board <= fitting.board.max
const range = ({ board }: Fitting): string => `${formatMm(board.min)} to ${formatMm(board.max)} mm`
const ranges = (context: Context, kind: Fitting['kind']): string =>
  context.hardware
    .usual(kind)
    .map((fitting) => `${fitting.id} (${range(fitting)})`)
    .join(', ')

function fittingFor(context: Context, path: DefinitionPath, kind: Fitting['kind'], board: number): Fitting | undefined {
  const found = context.hardware.usual(kind).find((fitting) => suits(fitting, board))
  if (found !== undefined) return found
  const what = `no ${kind} suits a board of ${context.show(board)}`
  context.report(path, what, {
    expected: `another joint, or a board that one of these suits: ${ranges(context, kind)}`,
  })
  return undefined
}

/** The item that a kind word stands for among the usual sizes, or the item of that name. */
function defaultItem(context: Context, word: string): Item {
  const id = word === 'through screw' ? (context.usual === 'in' ? 'screw #8x1-3/4' : 'screw 4.5x45') : word
  const kind = FASTENERS.find((one) => one === id)
  const item = kind === undefined ? context.hardware.find(id) : context.hardware.usual(kind)[0]
  if (item === undefined) throw new Error(`the catalogue has no item for "${word}"`)
  return item
}
