import type { JoiningBolt } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Loose, said } from '../layers.ts'
import type { RawDefinition, RawJoin, RawRow } from '../schema/definition.ts'
import type { DefinitionPath, JoinSpec, RowSpec } from '../types.ts'
import { layersOf } from './carcase.ts'
import { itemNamed, usualItem } from './hardware.ts'
import { someOf, writtenName } from './stock.ts'
import { resolveWorktop } from './tops.ts'

/** A module that rows can name: its name in the definition, its key, and where it stands. */
export interface Nameable {
  readonly written: string
  readonly key: string
  readonly at: DefinitionPath
}

/**
 * The rows of the floor plan, by the keys of the modules; each module in no row gets a row of its own behind them, in
 * the order of the definition. `undefined` modules: there is no telling which names are right.
 */
export function resolveRows(
  context: Context,
  plan: Loose<NonNullable<RawDefinition['floor plan']>> | undefined,
  modules: readonly Nameable[] | undefined,
): RowSpec[] {
  if (modules === undefined) return []
  const byName = new Map(modules.map((module) => [module.written, module]))
  const placed = new Map<string, DefinitionPath>()
  const rows = (plan ?? []).map((row, i) =>
    resolveRow(context, { raw: row ?? {}, path: ['floor plan', i] }, byName, placed),
  )
  const alone = modules.filter((module) => !placed.has(module.written))
  return [...rows, ...alone.map(({ key, at }) => ({ modules: [key], join: undefined, worktop: undefined, at }))]
}

function resolveRow(
  context: Context,
  layer: { readonly raw: Loose<RawRow>; readonly path: DefinitionPath },
  byName: ReadonlyMap<string, Nameable>,
  placed: Map<string, DefinitionPath>,
): RowSpec {
  const row = said([layer], 'row')
  const keys = (row?.value ?? []).flatMap((value, i) => {
    if (value === undefined || row === undefined) return []
    const path = [...row.path, i]
    return moduleKey(context, path, writtenName(context, path, value), byName, placed) ?? []
  })
  const joinSaid = said([layer], 'join')
  const join = resolveJoin(context, joinSaid)
  if (joinSaid !== undefined && join !== undefined && row?.value.length === 1) {
    context.report(joinSaid.path, 'one module alone cannot be joined', {
      expected: 'at least two modules in the row, or join: none',
    })
  }
  // Its key and name follow when all names are known: see layOverRows.
  const worktop = resolveWorktop(context, said([layer], 'worktop'), 'row')
  return { modules: keys, join, worktop: worktop && { ...worktop, key: '', name: '' }, at: layer.path }
}

function moduleKey(
  context: Context,
  path: DefinitionPath,
  name: string,
  byName: ReadonlyMap<string, Nameable>,
  placed: Map<string, DefinitionPath>,
): string | undefined {
  const module = byName.get(name)
  if (module === undefined) {
    const known = [...byName.keys()]
    context.report(path, `there is no module ${quoted(name)}`, {
      expected: known.length === 0 ? 'a module that stands under modules' : someOf(known),
      nearest: context.nearest(name, known),
    })
    return undefined
  }
  const first = placed.get(name)
  if (first !== undefined) {
    const { line } = context.source.locate(first)
    const what = `${quoted(name)} stands in a row already, on line ${line}`
    context.report(path, what, { expected: 'each module once in all rows' })
    return undefined
  }
  placed.set(name, path)
  return module.key
}

function resolveJoin(context: Context, join: Said<unknown> | undefined): JoinSpec | undefined {
  if (join === undefined || join.value === 'none') return undefined
  const layers = layersOf<RawJoin>([join])
  const name = said(layers, 'bolt')
  return {
    item: (name && itemNamed(context, name, ['joining bolt'])) ?? usualBolt(context),
    endInset: context.lengthOr(said(layers, 'end inset'), DEFAULTS.boltEnd, { aboveZero: true }),
    sideInset: context.lengthOr(said(layers, 'side inset'), DEFAULTS.boltSide, { aboveZero: true }),
  }
}

function usualBolt(context: Context): JoiningBolt {
  return usualItem(context, 'joining bolt', context.units === 'in' ? 'bolt 1/4 in' : 'bolt M6')
}
