import type { Context, Said } from '../context.ts'
import { type Layer, layersOf, said } from '../layers.ts'
import type { RawBay } from '../schema/definition.ts'
import type { Bay, DefinitionPath, PanelJoint, Split, Stock } from '../types.ts'
import { resolveDrawers } from './drawers.ts'
import { resolveFront } from './front.ts'
import { resolvePanelJoint } from './joints.ts'
import { resolveLooseShelves } from './shelves.ts'
import { stockNamed } from './stock.ts'

/** Bays within each other, at most. */
const MOST_LEVELS = 40

/** What the module and the bays around give to a bay. */
export interface BayAround {
  readonly stock: Stock | undefined
  /** The carcase's joint as it is said, so that a kind word is chosen anew for another board. */
  readonly joint: Said<unknown> | undefined
  /** A front lies before this opening already. */
  readonly behind: boolean
  readonly level: number
}

/** An opening with all that is in it. Parts with problems are left out; all problems are reported. */
export function resolveBay(context: Context, layer: Layer<RawBay>, around: BayAround): Bay {
  const layers = [layer]
  const { path } = layer
  const size = said(layers, 'size')
  const share = said(layers, 'share')
  if (size !== undefined && share !== undefined) {
    context.report(share.path, 'a bay has a size or a share, not both', { expected: 'one of the two', on: 'key' })
  }
  const front = resolveFront(context, said(layers, 'front'), around.stock)
  if (around.behind && said(layers, 'front') !== undefined) {
    context.report([...path, 'front'], 'this opening lies behind a front already', {
      expected: 'one front for the whole opening, or one for each of its bays',
      on: 'key',
    })
  }
  const behind = around.behind || said(layers, 'front') !== undefined
  const shelves = said(layers, 'loose shelves')
  const looseShelves = resolveLooseShelves(context, shelves, around.stock, behind)
  const drawers = said(layers, 'drawers')
  const drawersSpec = resolveDrawers(context, drawers, around.stock, behind)
  const split = resolveSplit(context, layer, { ...around, behind, level: around.level + 1 })
  if (shelves !== undefined && split.said) {
    context.report(shelves.path, 'loose shelves stand in a bay that is not split', {
      expected: 'loose shelves in each bay that shall have them',
      on: 'key',
    })
  }
  refuseBeside(context, drawers, shelves, split.said)
  return {
    size: context.length(size, { aboveZero: true }),
    share: share?.value ?? 1,
    split: split.spec,
    looseShelves,
    drawers: drawersSpec,
    front,
    at: path,
  }
}

/** Drawers fill a bay that is not split, alone. */
function refuseBeside(
  context: Context,
  drawers: Said<unknown> | undefined,
  shelves: Said<unknown> | undefined,
  split: boolean,
): void {
  if (drawers === undefined) return
  if (split) {
    context.report(drawers.path, 'drawers stand in a bay that is not split', {
      expected: 'drawers in each bay that shall have them',
      on: 'key',
    })
  }
  if (shelves !== undefined) {
    context.report(drawers.path, 'a bay has loose shelves or drawers, not both', {
      expected: 'one of the two; split the bay for both',
      on: 'key',
    })
  }
}

function resolveSplit(
  context: Context,
  layer: Layer<RawBay>,
  around: BayAround,
): { readonly said: boolean; readonly spec: Split | undefined } {
  const beside = said([layer], 'side by side')
  const stacked = said([layer], 'stacked')
  const bays = beside ?? stacked
  const dividers = said([layer], 'dividers')
  if (bays === undefined) {
    if (dividers !== undefined && !splitTroubled(context, layer.path)) {
      context.report(dividers.path, 'has no meaning, since the bay is not split', {
        expected: 'side by side or stacked beside it, or this key taken out',
        on: 'key',
      })
    }
    return { said: false, spec: undefined }
  }
  if (beside !== undefined && stacked !== undefined) {
    context.report(stacked.path, 'a bay is split side by side or stacked, not both', {
      expected: 'one of the two; split a bay again for the other',
      on: 'key',
    })
  }
  if (around.level > MOST_LEVELS) {
    context.report(bays.path, `bays lie more than ${MOST_LEVELS} deep within each other`, {
      expected: `at most ${MOST_LEVELS} levels of bays`,
      on: 'key',
    })
    return { said: true, spec: undefined }
  }
  const { stock, joint } = resolveDividers(context, dividers, around)
  const inner = bays.value.map((raw, i) => resolveBay(context, { raw: raw ?? {}, path: [...bays.path, i] }, around))
  if (stock === undefined) return { said: true, spec: undefined }
  const direction = beside === undefined ? 'stacked' : 'side by side'
  return { said: true, spec: { direction, bays: inner, stock, joint, at: layer.path } }
}

const splitTroubled = (context: Context, path: DefinitionPath): boolean =>
  context.troubled([...path, 'side by side']) || context.troubled([...path, 'stacked'])

function resolveDividers(
  context: Context,
  dividers: Said<unknown> | undefined,
  around: BayAround,
): { readonly stock: Stock | undefined; readonly joint: PanelJoint } {
  const layers = layersOf<NonNullable<RawBay['dividers']>>([dividers])
  const name = said(layers, 'stock')
  const stock = name === undefined ? around.stock : stockNamed(context, name)
  const joint = said(layers, 'joint') ?? around.joint
  const thinnest = Math.min(stock?.thickness ?? Infinity, around.stock?.thickness ?? Infinity)
  return { stock, joint: resolvePanelJoint(context, joint, stock?.thickness, thinnest) }
}
