import { Context } from './context.ts'
import { checkShape } from './issues.ts'
import { isGroup, type Loose } from './layers.ts'
import type { Position, Problem } from './problem.ts'
import { resolveProject, tooManyModules } from './resolve/project.ts'
import type { RawDefinition } from './schema/definition.ts'
import { readSource } from './source.ts'
import type { DefinitionPath, Project } from './types.ts'

/** A definition, read: the complete project, or everything that is wrong with it. */
export type ReadResult =
  | {
      readonly ok: true
      readonly project: Project
      /** Where a path of the definition stands; what the text does not say itself is found at what holds it. */
      readonly locate: (path: DefinitionPath) => Position
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Reads a definition (YAML 1.2). `file` is the name that positions carry; no file is opened: `files` are the
 * texts of those that the definition names (`filesNamed`). Not ok: every mistake
 * that can be seen at once, sorted by position, none twice. Never throws on any text.
 */
export function readDefinition(text: string, file: string, files: ReadonlyMap<string, string> = new Map()): ReadResult {
  const read = readSource(text, file)
  if (!read.ok) return read
  const { source, mistakes } = read
  const context = new Context(source, 'mm', files)
  for (const { span, path, message, expected } of mistakes) context.reportAt(span, path, message, { expected })
  if (tooManyModules(context, source.data)) return { ok: false, problems: context.problems() }
  const shaped = checkShape(context, source.data)
  const project = resolveProject(context, (isGroup(shaped) ? shaped : {}) as Loose<RawDefinition>)
  const problems = context.problems()
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, project, locate: (path) => source.locate(path) }
}
