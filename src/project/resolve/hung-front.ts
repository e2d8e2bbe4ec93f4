import { type CupHinge, type FlapStay, type HingePlate, hingeOnPlate, USUAL_HINGES } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Layers, layersOf, said } from '../layers.ts'
import type { RawFront, RawPull } from '../schema/definition.ts'
import { orList } from '../schema/kinds.ts'
import type { DefinitionPath, DoorSpec, FlapSpec, FrontSpec, HungFront, PullSpec } from '../types.ts'
import { itemNamed } from './hardware.ts'
import { someOf } from './stock.ts'

type Layered = Layers<RawFront>

/** What only fronts on hinges have. */
export function resolveHung(
  context: Context,
  layers: Layered,
  kind: FrontSpec['kind'] | undefined,
  lay: FrontSpec['lay'],
  front: DefinitionPath,
): Pick<HungFront, 'hinge' | 'hinges' | 'hingeEnd' | 'pull'> {
  return {
    hinge: hingesFor(context, front, said(layers, 'hinge'), said(layers, 'plate'), lay),
    hinges: resolveHinges(context, said(layers, 'hinges'), kind === 'flap'),
    hingeEnd: context.lengthOr(said(layers, 'hinge end'), DEFAULTS.hingeEnd, { aboveZero: true }),
    pull: resolvePull(context, said(layers, 'pull'), kind === 'flap'),
  }
}

/** The hinge edge of a door; of the words for the edges of a flap none suits. */
export function doorHang(context: Context, layers: Layered): DoorSpec['hang'] {
  return hangOf(context, layers, ['left', 'right'], 'a door hangs at its left or right edge')
}

/** The hinge edge of a flap, and what holds it open. */
export function resolveFlap(context: Context, layers: Layered): Pick<FlapSpec, 'hang' | 'stay' | 'stays'> {
  const hang = hangOf(context, layers, ['top', 'bottom'], 'a flap hangs at its top or bottom edge')
  return { hang, stay: resolveStay(context, said(layers, 'stay'), hang), stays: said(layers, 'stays')?.value ?? 'auto' }
}

function hangOf<W extends string>(context: Context, layers: Layered, words: readonly [W, W], what: string): W {
  const hang = said(layers, 'hang')
  const found = words.find((word) => word === hang?.value)
  if (hang !== undefined && found === undefined) context.report(hang.path, what, { expected: orList(words) })
  return found ?? words[0]
}

function resolveStay(
  context: Context,
  stay: Said<string> | undefined,
  hang: FlapSpec['hang'],
): FlapStay | 'auto' | 'none' {
  if (stay === undefined || stay.value === 'auto') return 'auto'
  if (stay.value === 'none') return 'none'
  const item = itemNamed(context, stay, ['flap stay'], ['auto', 'none'])
  if (item === undefined || item.hang === hang) return item ?? 'auto'
  context.report(stay.path, `"${item.id}" does not hold a flap that hangs at the ${hang}`, {
    expected: `auto, none, or a stay for a flap hung at the ${hang}`,
  })
  return 'auto'
}

/** The hinges to choose from: the one that is named, or the usual ones for the lay, on the plate if one is named. */
function hingesFor(
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

function resolveHinges(context: Context, hinges: Said<unknown> | undefined, flap: boolean): HungFront['hinges'] {
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
    context.report(at.path, `${context.written(at.path)} is not ${flap ? 'right of' : 'above'} the hinge before it`, {
      expected: flap ? 'distances from the left end of the flap' : 'heights from the lower end of the door up',
    })
  })
  return heights.every((height) => height !== undefined) ? heights : 'auto'
}

function resolvePull(context: Context, pull: Said<unknown> | undefined, flap: boolean): PullSpec | undefined {
  const layers = layersOf<RawPull>([pull])
  if (layers.length === 0) return undefined
  const name = said(layers, 'item')
  const item = name && itemNamed(context, name, ['pull'])
  const endSaid = said(layers, 'end')
  const end = endSaid?.value ?? (flap ? 'middle' : 'top')
  const ends = flap ? ['left', 'right', 'middle'] : ['top', 'bottom', 'middle']
  if (endSaid !== undefined && !ends.includes(endSaid.value)) {
    const what = flap ? "a flap's pull lies across it" : "a door's pull stands upright"
    context.report(endSaid.path, what, { expected: orList(ends) })
  }
  const endDistance = said(layers, 'end distance')
  if (end === 'middle' && endDistance !== undefined) {
    context.report(endDistance.path, 'has no meaning, since the pull stands in the middle', {
      expected: `end: ${orList(ends.slice(0, 2))}, or this key taken out`,
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
