import type { Item, PocketScrew } from '../../hardware/index.ts'

import { formatMm } from '../../length/index.ts'
import { type Context, type Default, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, said } from '../layers.ts'
import type { RawJoint } from '../schema/definition.ts'
import { JOINT_WORDS } from '../schema/kinds.ts'
import type { DefinitionPath, JointSpec } from '../types.ts'
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

/** Fixes a back, so thick, over edges or in rebates; a thick one takes a screw that still bites. */
export function backJoint(context: Context, thickness: number | undefined): JointDefaults {
  const thin = thickness === undefined || thickness <= DEFAULTS.thinBack
  const [metric, inch] = thin ? ['screw 3.5x25', 'screw #6x1'] : ['screw 4.5x45', 'screw #8x1-3/4']
  return {
    fasten: context.units === 'in' ? inch : metric,
    endDistance: DEFAULTS.backEndDistance,
    spacing: DEFAULTS.backSpacing,
  }
}

/**
 * A joint with everything filled in. `board` is the thickness of the panel whose edge is joined, mm: pocket screws are
 * chosen by it. What cannot be is reported, and the default stands in for it, so that the reading can go on.
 */
export function resolveJoint(
  context: Context,
  joint: Said<unknown> | undefined,
  board: number | undefined,
  defaults: JointDefaults = USUAL_JOINT,
): JointSpec {
  const layers = asLayers<JointGroup>([joint], 'fasten')
  const fasten = said(layers, 'fasten')
  const item = (fasten && fastener(context, fasten, board)) ?? defaultItem(context, defaults.fasten)
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
  }
}

/** True for the words that stand for the first suitable item of a kind. */
const isJointWord = (word: string): word is (typeof JOINT_WORDS)[number] =>
  (JOINT_WORDS as readonly string[]).includes(word)

function fastener(context: Context, fasten: Said<string>, board: number | undefined): Item | undefined {
  const { value, path } = fasten
  if (value === 'pocket screw') return board === undefined ? undefined : pocketScrewFor(context, path, board)
  if (isJointWord(value)) return defaultItem(context, value)
  const item = itemNamed(context, fasten, JOINT_WORDS, JOINT_WORDS, 'fastener for joints')
  if (item?.kind !== 'pocket screw' || board === undefined || suits(item, board)) return item
  const what = `${quoted(value)} is for boards of ${range(item)}, and this one is ${context.show(board)} thick`
  context.report(path, what, { expected: `pocket screw for the one that suits, or ${ranges(context)}` })
  return undefined
}

const suits = (screw: PocketScrew, board: number): boolean => screw.board.min <= board && board <= screw.board.max
const range = (screw: PocketScrew): string => `${formatMm(screw.board.min)} to ${formatMm(screw.board.max)} mm`
const ranges = (context: Context): string =>
  context.hardware
    .usual('pocket screw')
    .map((screw) => `${screw.id} (${range(screw)})`)
    .join(', ')

function pocketScrewFor(context: Context, path: DefinitionPath, board: number): PocketScrew | undefined {
  const found = context.hardware.usual('pocket screw').find((screw) => suits(screw, board))
  if (found !== undefined) return found
  const what = `no pocket screw suits a board of ${context.show(board)}`
  context.report(path, what, { expected: `another joint, or a board that one of these suits: ${ranges(context)}` })
  return undefined
}

/** The item that a kind word stands for in the project's units, or the item of that name. */
function defaultItem(context: Context, word: string): Item {
  const id = word === 'through screw' ? (context.units === 'in' ? 'screw #8x1-3/4' : 'screw 4.5x45') : word
  const item = isJointWord(id) ? context.hardware.usual(id)[0] : context.hardware.find(id)
  if (item === undefined) throw new Error(`the catalogue has no item for "${word}"`)
  return item
}
