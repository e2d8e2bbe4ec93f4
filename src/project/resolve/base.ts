import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { said } from '../layers.ts'
import type { RawBase } from '../schema/definition.ts'
import type { BaseSpec } from '../types.ts'
import { layersOf } from './carcase.ts'
import { itemNamed } from './hardware.ts'

/** What a module stands on; `undefined` when the caster cannot be told, which is reported. */
export function resolveBase(context: Context, base: Said<unknown> | undefined): BaseSpec | undefined {
  if (base === undefined || base.value === 'none') return { kind: 'none' }
  const layers = layersOf<RawBase>([base])
  const casters = said(layers, 'casters')
  const item = casters && itemNamed(context, casters, ['caster'])
  const inset = said(layers, 'inset')
  const gap = said(layers, 'footprint gap')
  const footprintGap = context.lengthOr(gap, DEFAULTS.footprintGap)
  const insetMm =
    inset === undefined || inset.value === 'auto'
      ? 'auto'
      : (context.length(inset, { aboveZero: true, kind: 'length or auto' }) ?? 'auto')
  if (gap !== undefined && insetMm !== 'auto') {
    context.report(gap.path, 'has no meaning, since inset says where the casters stand', {
      expected: 'inset or footprint gap, not both',
      on: 'key',
    })
  }
  return item === undefined ? undefined : { kind: 'casters', item, inset: insetMm, footprintGap, at: base.path }
}
