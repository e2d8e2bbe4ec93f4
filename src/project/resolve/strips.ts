import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Layer, type Layers, layersOf, said } from '../layers.ts'
import type { RawCarcase, RawRails, RawStretcher } from '../schema/definition.ts'
import type { RailsSpec, Stock, StretcherSpec } from '../types.ts'
import { resolveJoint } from './joints.ts'
import { stockNamed } from './stock.ts'

/** A narrower strip takes no two fasteners, mm; common practice. */
const NARROWEST_MM = 20

function widthOf(context: Context, width: Said<number | string> | undefined): number {
  const mm = context.lengthOr(width, DEFAULTS.stripWidth, { aboveZero: true })
  if (width !== undefined && mm < NARROWEST_MM && !context.troubled(width.path)) {
    const what = `${context.show(mm)} is too narrow for two fasteners`
    context.report(width.path, what, { expected: `at least ${context.show(NARROWEST_MM)}` })
  }
  return mm
}

export interface AroundStrips {
  readonly stock: Stock | undefined
  readonly joint: Said<unknown> | undefined
}

/** The rails of a carcase that has them for a top, key by key from the module and common; else nothing. */
export function resolveRails(
  context: Context,
  layers: Layers<RawCarcase>,
  around: AroundStrips,
): RailsSpec | undefined {
  const rails = layers.map((layer) => said([layer], 'rails'))
  const top = said(layers, 'top')?.value ?? 'between'
  if (top !== 'rails') {
    // From common they may just not apply to this module; a mistake where the same group says another top.
    layers.forEach((layer, i) => {
      const idle = rails[i]
      if (
        idle === undefined ||
        (i > 0 && said([layer], 'top')?.value !== top) ||
        context.troubled([...layer.path, 'top'])
      )
        return
      const what = 'has no meaning, since the top is not rails'
      context.report(idle.path, what, { expected: 'top: rails, or this key taken out', on: 'key' })
    })
    return undefined
  }
  const groups = layersOf<RawRails>(rails)
  const name = said(groups, 'stock')
  const stock = name === undefined ? around.stock : stockNamed(context, name)
  const width = widthOf(context, said(groups, 'width'))
  const joint = resolveJoint(context, said(groups, 'joint') ?? around.joint, stock?.thickness)
  return stock === undefined ? undefined : { width, stock, joint }
}

/** The stretchers of a carcase; those whose stock or place cannot be told are left out. */
export function resolveStretchers(context: Context, layers: Layers<RawCarcase>, around: AroundStrips): StretcherSpec[] {
  const list = said(layers, 'stretchers')
  if (list === undefined) return []
  return list.value.flatMap((raw, i) => {
    const layer = { raw: raw ?? {}, path: [...list.path, i] } as Layer<RawStretcher>
    return resolveStretcher(context, layer, around) ?? []
  })
}

function resolveStretcher(
  context: Context,
  layer: Layer<RawStretcher>,
  around: AroundStrips,
): StretcherSpec | undefined {
  const layers = [layer]
  const name = said(layers, 'stock')
  const stock = name === undefined ? around.stock : stockNamed(context, name)
  const end = said(layers, 'at')?.value
  const height = said(layers, 'height')
  const heightMm =
    height === undefined || height.value === 'below top'
      ? 'below top'
      : (context.length(height, { kind: 'length or below top' }) ?? 'below top')
  const spec = {
    height: heightMm,
    width: widthOf(context, said(layers, 'width')),
    joint: resolveJoint(context, said(layers, 'joint') ?? around.joint, stock?.thickness),
  } as const
  return stock === undefined || end === undefined ? undefined : { end, ...spec, stock, at: layer.path }
}
