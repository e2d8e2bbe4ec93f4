import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { isGroup, type Layer, type Loose, said } from '../layers.ts'
import type { RawBit } from '../schema/definition.ts'
import type { BitSpec } from '../types.ts'

/** No bit is wider, mm. */
const WIDEST = 150

/** The bits in the shop; none where the definition does not say. Those with problems are left out. */
export function resolveBits(
  context: Context,
  bits: Said<readonly (Loose<RawBit> | undefined)[]> | undefined,
): BitSpec[] {
  if (bits === undefined) return []
  return bits.value.flatMap((raw, k) => {
    if (!isGroup(raw)) return []
    return resolveBit(context, { raw, path: [...bits.path, k] }) ?? []
  })
}

function resolveBit(context: Context, layer: Layer<RawBit>): BitSpec | undefined {
  const layers = [layer]
  const kind = said(layers, 'kind')?.value
  const diameterSaid = said(layers, 'diameter')
  const diameter = context.length(diameterSaid, { aboveZero: true })
  const depth = context.length(said(layers, 'depth'), { aboveZero: true })
  const angle = said(layers, 'angle')
  if (diameterSaid !== undefined && diameter !== undefined && diameter > WIDEST) {
    context.report(diameterSaid.path, `${context.show(diameter)} is no diameter of a bit`, {
      expected: `at most ${context.show(WIDEST)}`,
    })
  }
  if (angle !== undefined && kind !== undefined && kind !== 'countersink') {
    context.report(angle.path, `has no meaning for the kind "${kind}"`, {
      expected: 'the kind countersink, or this key taken out',
      on: 'key',
    })
  }
  if (kind === undefined || diameter === undefined) return undefined
  return {
    kind,
    diameter,
    ...(depth !== undefined && { depth }),
    ...(kind === 'countersink' && { angleDeg: angle?.value ?? DEFAULTS.countersinkDeg[context.usual] }),
    at: layer.path,
  }
}
