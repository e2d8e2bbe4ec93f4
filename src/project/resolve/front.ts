import { NOISE_MM } from '../../geometry/index.ts'
import type { ItemKind } from '../../hardware/index.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { isGroup, layersOf, said } from '../layers.ts'
import type { RawFront } from '../schema/definition.ts'
import { orList } from '../schema/kinds.ts'
import type { Cover, FourEdges, FrontSpec, JointSpec, Stock } from '../types.ts'
import { refuseIdleKeys } from './front-keys.ts'
import { doorHang, resolveFlap, resolveHung } from './hung-front.ts'
import { resolveJoint, USUAL_JOINT } from './joints.ts'
import { stockNamed } from './stock.ts'

/** A front; `undefined` when none is said, or its kind or stock cannot be told. */
export function resolveFront(
  context: Context,
  front: Said<unknown> | undefined,
  moduleStock: Stock | undefined,
): FrontSpec | undefined {
  if (front === undefined) return undefined
  const layers = layersOf<RawFront>([front])
  const kind = said(layers, 'kind')?.value
  const lay = said(layers, 'lay')?.value ?? 'overlay'
  refuseIdleKeys(context, layers, kind, lay)
  const name = said(layers, 'stock')
  const stock = name === undefined ? moduleStock : stockNamed(context, name)
  const common = {
    lay,
    cover: fourEdges<Cover>(said(layers, 'cover'), (word) => (word?.value as Cover | undefined) ?? 'auto'),
    reveal: fourEdges(said(layers, 'reveal'), (mm) =>
      context.lengthOr(mm as Said<number | string> | undefined, DEFAULTS.reveal),
    ),
    gap: context.lengthOr(said(layers, 'gap'), DEFAULTS.gap),
    insetGap: context.lengthOr(said(layers, 'inset gap'), DEFAULTS.insetGap),
    at: front.path,
  }
  const strip = lay === 'inset' ? undefined : (moduleStock?.thickness ?? 0) - Math.max(...Object.values(common.reveal))
  const hung = resolveHung(context, layers, kind, lay, front.path)
  const own = {
    door: () => ({ kind: 'door' as const, hang: doorHang(context, layers), ...hung }),
    pair: () => ({ kind: 'pair' as const, hang: 'left' as const, ...hung }),
    flap: () => ({ kind: 'flap' as const, ...resolveFlap(context, layers), ...hung }),
    fixed: () => ({ kind: 'fixed' as const, fix: resolveFix(context, said(layers, 'fix'), stock?.thickness, strip) }),
  }
  if (kind === undefined) return undefined
  const spec = own[kind]()
  return stock === undefined ? undefined : { ...common, ...spec, stock }
}

const FIXED_BY: readonly ItemKind[] = ['dowel', 'through screw', 'one-piece screw']

/** A strip of an edge as wide as this takes a dowel of 8 mm with 3.5 mm of wood on both sides, mm. */
const STRIP_OF_8_MM = 15

/** How a fixed front is fastened, by the strip of an edge that an overlay covers in full: straight through it or into it, so that no other way of joining will do. */
function resolveFix(
  context: Context,
  fix: Said<unknown> | undefined,
  board: number | undefined,
  strip?: number,
): JointSpec {
  const thin = strip !== undefined && strip < STRIP_OF_8_MM - NOISE_MM
  const defaults = { ...USUAL_JOINT, fasten: thin ? 'dowel 6x30' : 'dowel' }
  const joint = resolveJoint(context, fix, board, defaults)
  if (fix === undefined || FIXED_BY.includes(joint.item.kind)) return joint
  context.report(fix.path, `a ${joint.item.kind} does not hold a fixed front`, { expected: orList(FIXED_BY) })
  return resolveJoint(context, undefined, board, defaults)
}

/** One value for all edges, or one for each; an edge that says nothing takes the default. */
export function fourEdges<T>(
  value: Said<unknown> | undefined,
  read: (one: Said<unknown> | undefined) => T,
): FourEdges<T> {
  const edge = (key: keyof FourEdges<T>): T => {
    if (value === undefined || !isGroup(value.value)) return read(value)
    const one = value.value[key]
    return read(one === undefined ? undefined : { value: one, path: [...value.path, key] })
  }
  return { left: edge('left'), right: edge('right'), top: edge('top'), bottom: edge('bottom') }
}
