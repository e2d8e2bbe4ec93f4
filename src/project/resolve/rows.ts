import type { JoiningBolt } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Loose, layersOf, said } from '../layers.ts'
import type { RawDefinition, RawJoin, RawRow } from '../schema/definition.ts'
import type { DefinitionPath, JoinSpec, RowSpec, StandSpec } from '../types.ts'
import { itemNamed, usualItem } from './hardware.ts'
import { resolveStands } from './stands.ts'
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
  return [
    ...rows,
    ...alone.map(
      ({ key, at }): RowSpec => ({
        modules: [key],
        stands: undefined,
        level: 'floors',
        join: undefined,
        worktop: undefined,
        at,
      }),
    ),
  ]
}

function resolveRow(
  context: Context,
  layer: { readonly raw: Loose<RawRow>; readonly path: DefinitionPath },
  byName: ReadonlyMap<string, Nameable>,
  placed: Map<string, DefinitionPath>,
): RowSpec {
  const row = said([layer], 'row')
  // Before the row's own modules are placed: it cannot stand against itself.
  const standsSaid = said([layer], 'stands')
  const stands = resolveStands(context, standsSaid, byName, placed)
  const keys = (row?.value ?? []).flatMap((value, i) => {
    if (value === undefined || row === undefined) return []
    const path = [...row.path, i]
    return moduleKey(context, path, writtenName(context, path, value), byName, placed) ?? []
  })
  const joinSaid = said([layer], 'join')
  const join = resolveJoin(context, joinSaid)
  const level = said([layer], 'level')
  if (row?.value.length === 1) {
    if (joinSaid !== undefined && join !== undefined) refuseLoneJoin(context, joinSaid.path, standsSaid, stands)
    if (level?.value === 'tops' && standsSaid === undefined) {
      context.report(level.path, 'one module alone has nothing to be level with', {
        expected: 'at least two modules in the row, stands, or level: floors',
      })
    }
  }
  // Its key and name follow when all names are known: see layOverRows.
  const worktop = resolveWorktop(context, said([layer], 'worktop'), 'row')
  const top = worktop && { ...worktop, key: '', name: '' }
  return { modules: keys, stands, level: level?.value ?? 'floors', join, worktop: top, at: layer.path }
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

/** One module can be joined only to the one that it stands against, and touches. */
function refuseLoneJoin(
  context: Context,
  path: DefinitionPath,
  standsSaid: Said<unknown> | undefined,
  stands: StandSpec | undefined,
): void {
  if (standsSaid === undefined) {
    context.report(path, 'one module alone cannot be joined', {
      expected: 'at least two modules in the row, or join: none',
    })
  } else if (stands !== undefined && stands.gap > 0) {
    const what = `one module cannot be joined over a gap of ${context.show(stands.gap)}`
    context.report(path, what, { expected: 'gap: 0, or join: none' })
  }
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
  return usualItem(context, 'joining bolt', context.usual === 'in' ? 'bolt 1/4 in' : 'bolt M6')
}
