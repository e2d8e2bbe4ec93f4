import type { Context } from '../context.ts'
import type { DefinitionPath, ModuleSpec } from '../types.ts'

/** The path below the module, or below common where the module does not say it itself. */
export function saidAt(context: Context, spec: ModuleSpec, ...keys: string[]): DefinitionPath {
  const own = [...spec.at, ...keys]
  const common = ['common', ...keys]
  return context.source.place(own) === undefined && context.source.place(common) !== undefined ? common : own
}
