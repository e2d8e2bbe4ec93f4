import type { Context, Said } from '../context.ts'
import { isGroup, type Layer, type Layers, layersOf, said } from '../layers.ts'
import type { RawBay, RawCarcase, RawCommon, RawModule } from '../schema/definition.ts'
import type { DefinitionPath, ModuleSpec, Stock } from '../types.ts'
import { resolveBase } from './base.ts'
import { resolveBay } from './bay.ts'
import { resolveCarcase } from './carcase.ts'
import { resolveFlip } from './flip.ts'
import { resolveLipping } from './lipping.ts'
import { resolveLoads } from './loads.ts'
import { resolveMachineTop } from './machine-top.ts'
import { resolveOpenings } from './openings.ts'
import { stockNamed } from './stock.ts'
import { resolveWorktop, type Under } from './tops.ts'

export interface ModuleName {
  readonly key: string
  readonly name: string
}

/**
 * A module with everything filled in from `common` and from the defaults. `undefined` when a part that it cannot do
 * without cannot be told; all problems are reported.
 */
export function resolveModule(
  context: Context,
  { key, name }: ModuleName,
  own: Layer<RawModule>,
  common: Layer<RawCommon> | undefined,
): ModuleSpec | undefined {
  const layers: Layers<RawCommon> = common === undefined ? [own] : [own, common]
  const { path } = own
  const widthSaid = said(layers, 'width')
  const before = context.fits.length
  const width = context.size(widthSaid, { kind: 'length or as large as fits' })
  const depthSaid = said(layers, 'depth')
  const depth =
    depthSaid?.value === 'same as width' ? width : context.size(depthSaid, { kind: 'length or same as width' })
  const height = resolveHeight(context, layers, path)
  const stockSaid = said(layers, 'stock')
  const stock = stockNamed(context, stockSaid)
  const lipping = resolveLipping(context, layers)
  const loads = resolveLoads(context, layers)
  requireKey(context, path, 'width', widthSaid, 'a width here or under common')
  requireKey(context, path, 'depth', depthSaid, 'a depth here or under common')
  requireKey(context, path, 'stock', stockSaid, 'the name of a stock here or under common')
  const flipOver = resolveFlip(context, said([own], 'flip-over top'), stock)
  const { carcase, base, inside } = resolveParts(context, own, layers, stock)
  const openings = resolveOpenings(context, said([own], 'openings'))
  const tops = resolveTops(context, own, layers, { top: carcase?.carcase.top, stock })
  if (width === undefined || depth === undefined || height === undefined || stock === undefined) return undefined
  if (carcase === undefined || base === undefined) return undefined
  const fitted = context.fits.length > before
  return {
    key,
    name,
    width,
    depth,
    height,
    fitted,
    stock,
    ...carcase,
    inside,
    flipOver,
    base,
    lipping,
    loads,
    openings,
    ...tops,
    // Known once all modules are: the project puts its own in.
    findings: { limits: {}, silences: [] },
    at: path,
  }
}

function resolveParts(context: Context, own: Layer<RawModule>, layers: Layers<RawCommon>, stock: Stock | undefined) {
  const carcaseLayers = layersOf<RawCarcase>(layers.map((layer) => said([layer], 'carcase')))
  const carcase = resolveCarcase(context, carcaseLayers, stock)
  const insideSaid = said([own], 'inside')
  const raw = insideSaid?.value
  const path = [...own.path, 'inside']
  const joint = said(carcaseLayers, 'joint')
  const base = resolveBase(context, said(layers, 'base'), { stock, joint, back: carcase?.carcase.back })
  const inside = resolveBay(
    context,
    { raw: isGroup(raw) ? (raw as Layer<RawBay>['raw']) : {}, path },
    {
      stock,
      joint,
      behind: false,
      level: 0,
    },
  )
  for (const key of ['size', 'share'] as const) {
    if (raw?.[key] === undefined) continue
    context.report([...path, key], 'the inside is the whole opening; it has no size of its own', {
      expected: 'this key in the bays of a split only',
      on: 'key',
    })
  }
  return { carcase, base, inside }
}

/** The board that lies on the carcase. A machine top takes the place of a common worktop, not of the module's own. */
function resolveTops(context: Context, own: Layer<RawModule>, layers: Layers<RawCommon>, under: Under) {
  const machine = said([own], 'machine top')
  const ownWorktop = said([own], 'worktop')
  if (machine !== undefined && ownWorktop !== undefined && ownWorktop.value !== 'none') {
    context.report(machine.path, 'a module has a worktop or a machine top, not both', {
      expected: 'one of the two',
      on: 'key',
    })
  }
  const machineTop = resolveMachineTop(context, machine, under)
  const worktop = resolveWorktop(context, machine === undefined ? said(layers, 'worktop') : ownWorktop, under)
  return { worktop, machineTop, worktopThickness: (machineTop ?? worktop)?.stock.thickness ?? 0 }
}

/** Reports a key that a module cannot do without, unless its place has a problem already. */
function requireKey(
  context: Context,
  path: DefinitionPath,
  key: string,
  value: Said<unknown> | undefined,
  expected: string,
): void {
  const common = ['common', key]
  if (value !== undefined || context.troubled(common) || context.isMisspelt(common)) return
  context.reportMissing(path, key, expected)
}

const HEIGHTS = ['carcase height', 'working height'] as const

/** Exactly one of the two heights; what the module says itself stands before what is common. */
function resolveHeight(
  context: Context,
  layers: Layers<RawCommon>,
  path: DefinitionPath,
): ModuleSpec['height'] | undefined {
  for (const layer of layers) {
    const [carcase, working] = HEIGHTS.map((key) => said([layer], key))
    if (carcase !== undefined && working !== undefined) {
      context.report(working.path, 'a module has a carcase height or a working height, not both', {
        expected: 'one of the two',
        on: 'key',
      })
    }
    const given = carcase ?? working
    if (given === undefined) continue
    const mm = context.size(given, { kind: 'length or as large as fits' })
    return mm === undefined ? undefined : { of: carcase === undefined ? 'working' : 'carcase', mm }
  }
  const troubled = [path, ['common']].some((at) =>
    HEIGHTS.some((key) => context.troubled([...at, key]) || context.isMisspelt([...at, key])),
  )
  if (!troubled) {
    const expected = 'carcase height or working height, here or under common'
    context.report(path, 'a height is missing', { expected, on: 'key', about: [...path, 'carcase height'] })
  }
  return undefined
}

/** Checks the names and lengths of `common` itself, which no module may use. */
export function checkCommon(context: Context, common: Layer<RawCommon>): void {
  const layers = [common]
  const before = context.fits.length
  context.size(said(layers, 'width'), { kind: 'length or as large as fits' })
  const depth = said(layers, 'depth')
  if (depth?.value !== 'same as width') {
    context.size(depth, { kind: 'length or same as width' })
  }
  if (HEIGHTS.some((key) => said(layers, key) !== undefined)) resolveHeight(context, layers, common.path)
  // Only modules have sizes; those that take this one say so themselves.
  context.fits.length = before
  const stock = stockNamed(context, said(layers, 'stock'))
  const carcaseLayers = layersOf<RawCarcase>([said(layers, 'carcase')])
  const carcase = resolveCarcase(context, carcaseLayers, stock)
  const joint = said(carcaseLayers, 'joint')
  resolveBase(context, said(layers, 'base'), { stock, joint, back: carcase?.carcase.back })
  resolveLipping(context, layers)
  resolveLoads(context, layers)
  resolveWorktop(context, said(layers, 'worktop'), { top: undefined, stock })
}
