import type { Caster } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Layers, layersOf, said } from '../layers.ts'
import type { RawBase } from '../schema/definition.ts'
import type { BackSpec, BaseSpec, CastersSpec, FeetSpec, Stock } from '../types.ts'
import { itemNamed } from './hardware.ts'
import { resolvePlinth } from './plinth.ts'
import { someOf } from './stock.ts'

/** What the module gives to its base. */
export interface AroundBase {
  readonly stock: Stock | undefined
  readonly joint: Said<unknown> | undefined
  readonly back: BackSpec | undefined
}

type Stand = 'casters' | 'plinth' | 'feet'
const STANDS: readonly Stand[] = ['casters', 'plinth', 'feet']

/** Keys that mean something for some ways to stand alone. */
const OWN_KEYS: readonly (readonly [keyof RawBase & string, readonly Stand[]])[] = [
  ['fixed casters', ['casters']],
  ['fixed at', ['casters']],
  ['footprint gap', ['casters']],
  ['inset', ['casters', 'feet']],
]

/** What a module stands on; `undefined` when it cannot be told, which is reported. */
export function resolveBase(
  context: Context,
  base: Said<unknown> | undefined,
  around: AroundBase,
): BaseSpec | undefined {
  if (base === undefined || base.value === 'none') return { kind: 'none' }
  const layers = layersOf<RawBase>([base])
  const [first, second] = STANDS.filter((key) => said(layers, key) !== undefined)
  if (first === undefined) {
    const tried = [...STANDS, 'fixed casters'].some((key) => {
      const path = [...base.path, key]
      return context.troubled(path) || context.isMisspelt(path)
    })
    if (!tried && layers.length > 0) {
      const expected = 'casters, plinth or feet'
      context.report(base.path, 'a base says what the module stands on', { expected, on: 'key' })
    }
    return undefined
  }
  if (second !== undefined) {
    context.report([...base.path, second], `a module stands on ${first} or on ${second}, not on both`, {
      expected: 'one of the two',
      on: 'key',
    })
  }
  for (const [key, stands] of OWN_KEYS) {
    const idle = stands.includes(first) ? undefined : said(layers, key)
    if (idle === undefined) continue
    const expected = 'this key taken out'
    context.report(idle.path, `has no meaning, since the module stands on ${first}`, { expected, on: 'key' })
  }
  if (first === 'plinth') return resolvePlinth(context, said(layers, 'plinth'), around)
  return first === 'feet' ? resolveFeet(context, layers, base) : resolveCasters(context, layers, base)
}

function insetOf(context: Context, layers: Layers<RawBase>): number | 'auto' {
  const inset = said(layers, 'inset')
  if (inset === undefined || inset.value === 'auto') return 'auto'
  return context.length(inset, { aboveZero: true, kind: 'length or auto' }) ?? 'auto'
}

function resolveFeet(context: Context, layers: Layers<RawBase>, base: Said<unknown>): FeetSpec | undefined {
  const feet = said(layers, 'feet')
  const item = feet && itemNamed(context, feet, ['levelling foot'])
  const wish = insetOf(context, layers)
  const inset = wish === 'auto' ? context.default(DEFAULTS.footInset) : wish
  return item === undefined ? undefined : { kind: 'feet', item, inset, at: base.path }
}

function resolveCasters(context: Context, layers: Layers<RawBase>, base: Said<unknown>): CastersSpec | undefined {
  const casters = said(layers, 'casters')
  const item = casters && casterNamed(context, casters, 'swivels')
  const gap = said(layers, 'footprint gap')
  const footprintGap = context.lengthOr(gap, DEFAULTS.footprintGap)
  const inset = insetOf(context, layers)
  if (gap !== undefined && inset !== 'auto') {
    context.report(gap.path, 'has no meaning, since inset says where the casters stand', {
      expected: 'inset or footprint gap, not both',
      on: 'key',
    })
  }
  const fixed = resolveFixed(context, layers, base, item)
  if (item === undefined) return undefined
  return { kind: 'casters', item, inset, footprintGap, ...(fixed && { fixed }), at: base.path }
}

function resolveFixed(
  context: Context,
  layers: Layers<RawBase>,
  base: Said<unknown>,
  swivel: Caster | undefined,
): CastersSpec['fixed'] {
  const name = said(layers, 'fixed casters')
  const at = said(layers, 'fixed at')
  if (name === undefined) {
    if (at !== undefined && !context.troubled([...base.path, 'fixed casters'])) {
      const expected = 'fixed casters beside it, or this key taken out'
      context.report(at.path, 'has no meaning, since no fixed casters are named', { expected, on: 'key' })
    }
    return undefined
  }
  const item = casterNamed(context, name, 'is fixed')
  if (at === undefined) context.reportMissing(base.path, 'fixed at', 'left, right or back')
  if (swivel?.turning === 'levelling') {
    const what = 'a module with fixed casters at one end would be lifted at the other alone by levelling casters'
    context.report(name.path, what, { expected: 'casters that swivel, or four levelling casters' })
    return undefined
  }
  return item === undefined || at === undefined ? undefined : { item, end: at.value }
}

/** A caster that swivels, or one that is fixed. */
function casterNamed(context: Context, said: Said<string>, wanted: 'swivels' | 'is fixed'): Caster | undefined {
  const item = itemNamed(context, said, ['caster'])
  if (item === undefined || (item.turning === 'fixed') === (wanted === 'is fixed')) return item
  const fitting = context.hardware
    .ofKinds(['caster'])
    .filter((one) => (one.turning === 'fixed') === (wanted === 'is fixed'))
  const what = `${quoted(item.id)} ${item.turning === 'fixed' ? 'is fixed' : 'swivels'}`
  const expected = `a caster that ${wanted}: ${someOf(fitting.map((one) => one.id))}`
  context.report(said.path, what, { expected })
  return undefined
}
