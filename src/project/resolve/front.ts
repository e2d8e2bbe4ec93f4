import { type CupHinge, type HingePlate, hingeOnPlate, USUAL_HINGES } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { isGroup, type Layers, said } from '../layers.ts'
import type { RawFront, RawPull } from '../schema/definition.ts'
import type { Cover, DefinitionPath, FourEdges, FrontSpec, PullSpec, Stock } from '../types.ts'
import { layersOf } from './carcase.ts'
import { itemNamed } from './hardware.ts'
import { someOf, stockNamed } from './stock.ts'

type Layered = Layers<RawFront>

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
  const spec = {
    hang: said(layers, 'hang')?.value ?? 'left',
    lay,
    cover: fourEdges<Cover>(said(layers, 'cover'), (word) => (word?.value as Cover | undefined) ?? 'auto'),
    reveal: fourEdges(said(layers, 'reveal'), (mm) =>
      context.lengthOr(mm as Said<number | string> | undefined, DEFAULTS.reveal),
    ),
    gap: context.lengthOr(said(layers, 'gap'), DEFAULTS.gap),
    insetGap: context.lengthOr(said(layers, 'inset gap'), DEFAULTS.insetGap),
    hinge: resolveHinges(context, front.path, said(layers, 'hinge'), said(layers, 'plate'), lay),
    hinges: resolveHeights(context, said(layers, 'hinges')),
    hingeEnd: context.lengthOr(said(layers, 'hinge end'), DEFAULTS.hingeEnd, { aboveZero: true }),
    pull: resolvePull(context, said(layers, 'pull')),
  }
  if (kind === undefined || stock === undefined) return undefined
  return { kind, ...spec, stock, at: front.path }
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

/** A key that cannot have an effect is a mistake. */
function refuseIdleKeys(
  context: Context,
  layers: Layered,
  kind: FrontSpec['kind'] | undefined,
  lay: FrontSpec['lay'],
): void {
  const idle: [keyof RawFront & string, string, string][] = []
  if (kind === 'pair') idle.push(['hang', 'a pair hangs on both sides', 'kind: door'])
  if (lay === 'inset') {
    idle.push(['cover', 'an inset front covers no panel', 'lay: overlay'])
    idle.push(['reveal', 'an inset front has an inset gap', 'inset gap'])
  } else idle.push(['inset gap', 'the front is an overlay', 'lay: inset'])
  for (const [key, reason, instead] of idle) {
    const found = said(layers, key)
    if (found === undefined) continue
    const expected = `${instead}, or this key taken out`
    context.report(found.path, `has no meaning, since ${reason}`, { expected, on: 'key' })
  }
}

/** The hinges to choose from: the one that is named, or the usual ones for the lay, on the plate if one is named. */
function resolveHinges(
  context: Context,
  front: DefinitionPath,
  hinge: Said<string> | undefined,
  plate: Said<string> | undefined,
  lay: FrontSpec['lay'],
): readonly CupHinge[] {
  const named = hinge === undefined || hinge.value === 'auto' ? undefined : namedHinge(context, hinge, lay)
  const usual = context.hardware.usual('cup hinge').filter((one) => USUAL_HINGES.includes(one.id) && hangs(one, lay))
  if (named === undefined && usual.length === 0) {
    const what = `none of the usual hinges hangs an ${lay} front, as the project has them`
    context.report(hinge?.path ?? front, what, { expected: 'the name of a hinge for the lay of the front' })
  }
  const hinges = named === undefined ? usual : [named]
  const fixed =
    plate === undefined || plate.value === 'auto' ? undefined : itemNamed(context, plate, ['hinge plate'], ['auto'])
  return plate === undefined || fixed === undefined ? hinges : onPlate(context, plate, hinges, fixed)
}

const hangs = (hinge: CupHinge, lay: FrontSpec['lay']): boolean => (hinge.lay === 'inset') === (lay === 'inset')

function namedHinge(context: Context, hinge: Said<string>, lay: FrontSpec['lay']): CupHinge | undefined {
  const item = itemNamed(context, hinge, ['cup hinge'], ['auto'])
  if (item === undefined || hangs(item, lay)) return item
  const what = `"${item.id}" does not hang an ${lay} front`
  context.report(hinge.path, what, { expected: 'auto, or a hinge for the lay of the front' })
  return undefined
}

function onPlate(
  context: Context,
  said: Said<string>,
  hinges: readonly CupHinge[],
  plate: HingePlate,
): readonly CupHinge[] {
  const fitting = hinges.filter((hinge) => hinge.system === plate.system)
  const [first] = hinges
  if (fitting.length > 0 || first === undefined) return fitting.map((hinge) => hingeOnPlate(hinge, plate))
  const plates = context.hardware.ofKinds(['hinge plate']).filter((one) => one.system === first.system)
  const what = `${quoted(plate.id)} does not take ${quoted(first.id)}`
  const expected = someOf(['auto', ...plates.map((one) => one.id)])
  context.report(said.path, what, { expected })
  return hinges
}

function resolveHeights(context: Context, hinges: Said<unknown> | undefined): FrontSpec['hinges'] {
  if (hinges === undefined || hinges.value === 'auto') return 'auto'
  const { value, path } = hinges
  if (typeof value === 'number') return value
  if (!Array.isArray(value)) return 'auto'
  const said = value.map((one, i): Said<number | string> => ({ value: one, path: [...path, i] }))
  const heights = said.map((one) => (one.value === undefined ? undefined : context.length(one, { aboveZero: true })))
  heights.forEach((height, i) => {
    const below = i === 0 ? undefined : heights[i - 1]
    const at = said[i]
    if (height === undefined || below === undefined || at === undefined || height > below) return
    context.report(at.path, `${context.written(at.path)} is not above the hinge before it`, {
      expected: 'heights from the lower end of the door up',
    })
  })
  return heights.every((height) => height !== undefined) ? heights : 'auto'
}

function resolvePull(context: Context, pull: Said<unknown> | undefined): PullSpec | undefined {
  const layers = layersOf<RawPull>([pull])
  if (layers.length === 0) return undefined
  const name = said(layers, 'item')
  const item = name && itemNamed(context, name, ['pull'])
  const end = said(layers, 'end')?.value ?? 'top'
  const endDistance = said(layers, 'end distance')
  if (end === 'middle' && endDistance !== undefined) {
    context.report(endDistance.path, 'has no meaning, since the pull stands in the middle', {
      expected: 'end: top or bottom, or this key taken out',
      on: 'key',
    })
  }
  const spec = {
    edgeDistance: context.lengthOr(said(layers, 'edge distance'), DEFAULTS.pullEdge, { aboveZero: true }),
    end,
    endDistance: context.lengthOr(endDistance, DEFAULTS.pullEnd, { aboveZero: true }),
  }
  return item === undefined ? undefined : { item, ...spec }
}
