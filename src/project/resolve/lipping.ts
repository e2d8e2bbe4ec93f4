import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Layer, type Layers, said } from '../layers.ts'
import { isLippingWord, LIPPING_GROUPS, LIPPING_WORDS } from '../lipping-words.ts'
import type { RawCommon, RawLipping } from '../schema/definition.ts'
import { orList } from '../schema/kinds.ts'
import type { LippedEdge, LippingSpec, LippingTarget } from '../types.ts'
import { writtenName } from './stock.ts'

/** Thicker is no lipping but a board, mm. */
const THICKEST = 30
const ALL: readonly LippedEdge[] = ['front', 'back', 'left', 'right', 'top', 'bottom']

/** What is lipped, of those strips that are thick enough to be taken off the cut size. The first layer is the module's own. */
export function resolveLipping(context: Context, layers: Layers<RawCommon>): LippingSpec[] {
  const list = said(layers, 'lipping')
  if (list === undefined) return []
  const own = layers[0] !== undefined && said([layers[0]], 'lipping') !== undefined
  return list.value.flatMap((raw, i) => {
    const layer = { raw: raw ?? {}, path: [...list.path, i] } as Layer<RawLipping>
    return resolveOne(context, layer, own) ?? []
  })
}

function resolveOne(context: Context, layer: Layer<RawLipping>, own: boolean): LippingSpec | undefined {
  const layers = [layer]
  const thicknessSaid = said(layers, 'thickness')
  const thickness = context.length(thicknessSaid, { aboveZero: true })
  if (thicknessSaid !== undefined && thickness !== undefined && thickness > THICKEST) {
    const what = `${context.show(thickness)} is no thickness of a lipping`
    context.report(thicknessSaid.path, what, { expected: `at most ${context.show(THICKEST)}` })
    return undefined
  }
  const from = context.lengthOr(said(layers, 'take off from'), DEFAULTS.lippingFrom)
  const edges = said(layers, 'edges')?.value
  const on = said(layers, 'on')
  const targets = on === undefined ? [] : on.value.flatMap((word, i) => target(context, on.path, word, i) ?? [])
  if (thickness === undefined || edges === undefined || thickness < from) return undefined
  const wanted = edges === 'all' ? ALL : edges.filter((edge) => edge !== undefined)
  return { thickness, edges: wanted, on: targets, own, at: layer.path }
}

function target(
  context: Context,
  list: Said<unknown>['path'],
  word: string | number | undefined,
  i: number,
): LippingTarget | undefined {
  if (word === undefined) return undefined
  const path = [...list, i]
  const written = writtenName(context, path, word)
  if (isLippingWord(written)) return { word: written, at: path }
  context.report(path, `there is no panel ${quoted(written)}`, {
    expected: `the name of a panel such as left side or shelf 1, or one of ${orList(LIPPING_GROUPS)}`,
    nearest: context.nearest(written, LIPPING_WORDS),
  })
  return undefined
}
