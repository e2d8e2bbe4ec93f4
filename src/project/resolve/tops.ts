import type { JointScrew, PocketScrew } from '../../hardware/index.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, isGroup, layersOf, said } from '../layers.ts'
import { uniqueKeys } from '../names.ts'
import type { RawTopFix, RawWorktop } from '../schema/definition.ts'
import type { DefinitionPath, Lap, ModuleSpec, Overhang, RowSpec, Stock, TopFix, WorktopSpec } from '../types.ts'
import { itemNamed } from './hardware.ts'
import { resolveJoint } from './joints.ts'
import { stockNamed } from './stock.ts'

/** Screws through two faces are no closer, mm; common practice. */
const CLOSEST_MM = 32

/** What a top lies on; nothing is known of it for the worktop of a row. */
export interface Under {
  readonly top: Lap | 'rails' | undefined
  /** Of the carcase. */
  readonly stock: Stock | undefined
}

/** A worktop; `undefined` when none is said or its stock cannot be told, which is reported. */
export function resolveWorktop(
  context: Context,
  worktop: Said<unknown> | undefined,
  under: Under | 'row',
): WorktopSpec | undefined {
  if (worktop === undefined || worktop.value === 'none') return undefined
  const layers = layersOf<RawWorktop>([worktop])
  const stock = stockNamed(context, said(layers, 'stock'))
  const overhang = resolveOverhang(context, said(layers, 'overhang'))
  const fix = resolveFix(context, said(layers, 'fix'), under, worktop.path)
  return stock === undefined ? undefined : { stock, overhang, fix, at: worktop.path }
}

function resolveOverhang(context: Context, overhang: Said<unknown> | undefined): Overhang {
  const edge = (key: keyof Overhang): number => {
    if (overhang === undefined) return 0
    const value = isGroup(overhang.value) ? overhang.value[key] : overhang.value
    const path = isGroup(overhang.value) ? [...overhang.path, key] : overhang.path
    return value === undefined ? 0 : context.lengthOr({ value: value as number | string, path }, 0)
  }
  return { left: edge('left'), right: edge('right'), front: edge('front'), back: edge('back') }
}

function resolveFix(
  context: Context,
  fix: Said<unknown> | undefined,
  under: Under | 'row',
  top: DefinitionPath,
): TopFix | undefined {
  const layers = asLayers<RawTopFix>([fix], 'fasten')
  const fasten = said(layers, 'fasten')
  const endDistance = context.lengthOr(said(layers, 'end distance'), DEFAULTS.endDistance, { aboveZero: true })
  const spacingSaid = said(layers, 'spacing')
  const spacing = context.lengthOr(spacingSaid, DEFAULTS.topSpacing, { aboveZero: true })
  if (spacingSaid !== undefined && spacing < CLOSEST_MM && !context.troubled(spacingSaid.path)) {
    context.report(spacingSaid.path, `${context.show(spacing)} from screw to screw is too close`, {
      expected: `at least ${context.show(CLOSEST_MM)}`,
    })
  }
  if (fasten?.value === 'none') {
    for (const key of ['end distance', 'spacing'] as const) {
      const idle = said(layers, key)
      if (idle !== undefined) {
        context.report(idle.path, 'has no meaning, since nothing is fastened', {
          expected: 'fasten: through screw, or this key taken out',
          on: 'key',
        })
      }
    }
    return undefined
  }
  const noTop = under !== 'row' && under.top === 'none'
  const word: Said<string> = fasten ?? { value: noTop ? 'pocket screw' : 'through screw', path: top }
  const pockets = word.value === 'pocket screw' || context.hardware.find(word.value)?.kind === 'pocket screw'
  if (pockets && under === 'row') {
    context.report(word.path, 'the worktop of a row is screwed on from below', {
      expected: 'through screw, the name of one, or none',
    })
    return undefined
  }
  if (pockets && under !== 'row') {
    const joint = resolveJoint(context, word, under.stock?.thickness)
    return { kind: 'pockets', joint: { ...joint, endDistance, spacing } }
  }
  if (noTop) {
    context.report(word.path, 'the carcase has no top to screw through', {
      expected: 'carcase › top: between or over, fix: pocket screw, or fix: none',
    })
  }
  return { kind: 'from below', screws: screwsOf(context, word), endDistance, spacing }
}

/** The screw of that name, or all of the project's measure: inch screws go by a number, metric ones do not. */
function screwsOf(context: Context, word: Said<string>): readonly JointScrew[] {
  if (word.value === 'through screw') {
    const usual = context.hardware.usual('through screw').filter((item) => item.kind === 'through screw')
    return usual.filter((item) => item.id.includes('#') === (context.usual === 'in'))
  }
  const kinds: ('through screw' | PocketScrew['kind'])[] = ['through screw', 'pocket screw']
  const named = itemNamed(context, word, kinds, ['none', ...kinds])
  return named?.kind === 'through screw' ? [named] : []
}

/**
 * The modules with the worktops of their rows on them, and the rows with a name for each of those. A module in such a
 * row has no top of its own; else it is reported.
 */
export function layOverRows(
  context: Context,
  modules: readonly { readonly key: string; readonly spec: ModuleSpec | undefined }[],
  rows: readonly RowSpec[],
): { specs: ModuleSpec[]; rows: RowSpec[] } {
  let count = 0
  const names = rows.map((row) => (row.worktop === undefined ? '' : `worktop ${++count}`))
  const keys = uniqueKeys([...modules.map((module) => module.key), ...names.filter((name) => name !== '')])
  const own = keys.slice(modules.length)
  const over = new Map<string, RowSpec>()
  const named = rows.map((row, i): RowSpec => {
    const key = row.worktop === undefined ? undefined : own.shift()
    if (row.worktop === undefined || key === undefined) return row
    const laid = { ...row, worktop: { ...row.worktop, key, name: names[i] ?? '' } }
    for (const module of row.modules) over.set(module, laid)
    return laid
  })
  const specs = modules.flatMap(({ spec }) => {
    if (spec === undefined) return []
    const worktop = over.get(spec.key)?.worktop
    if (worktop === undefined) return [spec]
    refuseSecondTop(context, spec, worktop.at)
    if (spec.carcase.top === 'none' && worktop.fix !== undefined) {
      context.report(worktop.at, `${spec.name} has no top to screw it to`, {
        expected: 'carcase › top: between or over in each module of the row, or fix: none',
        on: 'key',
      })
    }
    return [{ ...spec, worktopThickness: worktop.stock.thickness }]
  })
  return { specs, rows: named }
}

function refuseSecondTop(context: Context, spec: ModuleSpec, row: DefinitionPath): void {
  const second = spec.machineTop ?? spec.worktop
  if (second === undefined) return
  const { line } = context.source.locate(row)
  // A common worktop is no mistake of the module's.
  const at = second.at[0] === 'common' ? row : second.at
  const what =
    second.at[0] === 'common'
      ? `${spec.name} has the worktop of common on it already`
      : `the worktop of the row on line ${line} lies on this module already`
  context.report(at, what, {
    expected: 'one top on each module; worktop: none in the module where common says one',
    on: 'key',
  })
}
