import { checkBuildable } from '../buildable/module.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { isGroup, type Layer, type Loose } from '../layers.ts'
import type { ReadMemory, ReadModule, Surroundings } from '../memory.ts'
import { uniqueKeys } from '../names.ts'
import { printable } from '../problem.ts'
import type { RawCommon, RawDefinition, RawModule, RawOwnHardware, RawStock } from '../schema/definition.ts'
import { NAME_MARK } from '../to-data.ts'
import type { DefinitionPath, ModuleSpec, Project } from '../types.ts'
import { resolveBits } from './bits.ts'
import { resolveFindings } from './findings.ts'
import { resolveFit } from './fit.ts'
import { checkCommon, resolveModule } from './module.ts'
import { resolveOutputs } from './outputs.ts'
import { resolveOwnHardware } from './own-hardware.ts'
import { resolveRows } from './rows.ts'
import { resolveStock } from './stock.ts'
import { layOverRows } from './tops.ts'

const LONGEST_NAME = 100
/** Modules in one definition, at most. */
const MOST_MODULES = 2000

/**
 * The project as far as it can be told. It is complete when no problem was reported. What the memory has of the last
 * definition without problems is taken from it where it was made of the same; it is up to the caller to settle it.
 */
export function resolveProject(context: Context, raw: Loose<RawDefinition>, memory: ReadMemory): Project {
  context.inUnits(raw)
  const around = surroundings(context, raw, memory)
  const modules = resolveModules(context, raw, around, memory)
  const outputs: Said<unknown> | undefined = raw.outputs && { value: raw.outputs, path: ['outputs'] }
  const kerf = context.lengthOr(raw.kerf === undefined ? undefined : { value: raw.kerf, path: ['kerf'] }, DEFAULTS.kerf)
  const plan = resolveRows(context, raw['floor plan'], raw.modules === undefined ? undefined : modules.names)
  const findings = memory.findings.renew('findings', resolveFindings(context, raw.findings, modules.names))
  const { specs, rows } = layOverRows(context, modules.specs, plan)
  const complete = specs.map((spec) => memory.specs.renew(spec.key, { ...spec, findings }))
  // A size that is not known yet cannot be judged.
  for (const spec of complete) {
    if (spec.fitted && context.fitted === undefined) continue
    memory.buildable.take(spec.key, [spec, around], () => {
      checkBuildable(context, spec)
      return true
    })
  }
  return {
    title: printable(raw.title ?? '').trim(),
    units: context.units,
    stocks: [...context.stocks.values()].filter((stock) => stock !== undefined),
    modules: complete,
    rows: rows.map((row, k) => memory.rows.renew(String(k), row)),
    kerf,
    findings,
    bits: resolveBits(context, raw.bits && { value: raw.bits, path: ['bits'] }),
    fit: resolveFit(context, raw.fit, kerf),
    outputs: resolveOutputs(context, outputs),
  }
}

/** Makes known what all modules depend on: stock, own hardware and what is common. */
function surroundings(context: Context, raw: Loose<RawDefinition>, memory: ReadMemory): Surroundings {
  const { units, usual, fitted, files } = context
  const of = [units, usual, raw.stock, raw.hardware, raw.common, fitted, ...[...files].flat()]
  const found = memory.surroundings.take('', of, () => {
    resolveSurroundings(context, raw)
    return { stocks: context.stocks, hardware: context.hardware }
  })
  context.stocks = new Map(found.stocks)
  context.hardware = found.hardware
  context.stocksKnown = raw.stock !== undefined
  return found
}

function resolveSurroundings(context: Context, raw: Loose<RawDefinition>): void {
  for (const [name, stock] of named<RawStock>(context, 'stock', raw.stock)) {
    const path = ['stock', name]
    checkName(context, path, name)
    const resolved = stock === undefined ? undefined : resolveStock(context, printable(name), { raw: stock, path })
    context.stocks.set(name, resolved)
  }
  context.stocksKnown = raw.stock !== undefined
  const hardware = named<RawOwnHardware>(context, 'hardware', raw.hardware)
  for (const [name] of hardware) checkName(context, ['hardware', name], name)
  resolveOwnHardware(context, hardware)
  const common = commonOf(raw)
  if (common !== undefined) checkCommon(context, common)
}

const commonOf = (raw: Loose<RawDefinition>): Layer<RawCommon> | undefined =>
  isGroup(raw.common) ? { raw: raw.common, path: ['common'] } : undefined

function resolveModules(context: Context, raw: Loose<RawDefinition>, around: Surroundings, memory: ReadMemory) {
  const modules = named<RawModule>(context, 'modules', raw.modules)
  if (modules.length === 0 && raw.modules !== undefined) {
    context.report(['modules'], 'there is no module', { expected: 'at least one module', on: 'key' })
  }
  const common = commonOf(raw)
  const keys = uniqueKeys(modules.map(([name]) => name))
  const specs: { key: string; spec: ModuleSpec | undefined }[] = []
  const names = modules.map(([written, module], i) => {
    const at: DefinitionPath = ['modules', written]
    const key = keys[i] ?? ''
    checkName(context, at, written)
    const name = printable(written)
    const read = memory.modules.take(written, [module, key, around], (): ReadModule => {
      const before = context.fits.length
      const spec = module && resolveModule(context, { key, name }, { raw: module, path: at }, common)
      return { spec, fits: context.fits.splice(before) }
    })
    context.fits.push(...read.fits)
    specs.push({ key, spec: read.spec })
    return { written, key, at }
  })
  return { specs, names }
}

/**
 * Names of stock, hardware or modules in the order of the text, and what belongs to each: `undefined` where it was taken out
 * with its problems, so that the name is known all the same.
 */
function named<T>(
  context: Context,
  key: 'stock' | 'hardware' | 'modules',
  group: unknown,
): [name: string, raw?: Loose<T>][] {
  const written = isGroup(context.source.data) ? context.source.data[key] : undefined
  if (!isGroup(written) || !isGroup(group)) return []
  return Object.keys(written).map((marked) => {
    const name = marked.slice(NAME_MARK.length)
    const raw = group[marked]
    return isGroup(raw) ? [name, raw as Loose<T>] : [name]
  })
}

function checkName(context: Context, path: DefinitionPath, name: string): void {
  if (name.trim() !== '' && name.length <= LONGEST_NAME) return
  const what = name.trim() === '' ? 'this name is empty' : `a name of ${name.length} characters is too long`
  context.report(path, what, { expected: `a name of 1 to ${LONGEST_NAME} characters`, on: 'key' })
}

/** Reports a definition with more modules than are read; true when it has too many. */
export function tooManyModules(context: Context, data: unknown): boolean {
  const modules = isGroup(data) ? data.modules : undefined
  const count = isGroup(modules) ? Object.keys(modules).length : 0
  if (count <= MOST_MODULES) return false
  context.report(['modules'], `${count} modules are more than are read`, {
    expected: `at most ${MOST_MODULES} modules in one definition`,
    on: 'key',
  })
  return true
}
