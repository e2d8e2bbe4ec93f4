import { Context } from './context.ts'
import { checkShape } from './issues.ts'
import { isGroup, type Loose } from './layers.ts'
import type { Problem } from './problem.ts'
import { resolveOutputs } from './resolve/outputs.ts'
import type { RawDefinition } from './schema/definition.ts'
import { readSource } from './source.ts'
import type { OutputSpec } from './spec/outputs.ts'

/** What a definition says of paper, printer and files, or what is wrong with that. */
export type OutputsRead =
  | { readonly ok: true; readonly outputs: OutputSpec }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads `outputs` of a definition (YAML 1.2), in its units, whatever else it says or lacks. `file` is the name that positions
 * carry. Not ok: every mistake in that group, sorted by position, or that the text is no YAML. Never throws on any text.
 */
export function readOutputs(text: string, file: string): OutputsRead {
  const read = readSource(text, file)
  if (!read.ok) return read
  const { data } = read.source
  const said = isGroup(data) ? { units: data.units, 'usual sizes': data['usual sizes'], outputs: data.outputs } : {}
  const context = new Context(read.source)
  const shaped = checkShape(context, said)
  const raw = (isGroup(shaped) ? shaped : {}) as Loose<RawDefinition>
  context.inUnits(raw)
  const outputs = resolveOutputs(context, raw.outputs && { value: raw.outputs, path: ['outputs'] })
  const problems = context.problems().filter(({ path }) => path?.[0] === 'outputs')
  return problems.length === 0 ? { ok: true, outputs } : { ok: false, problems }
}
