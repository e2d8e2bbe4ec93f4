import { Context } from './context.ts'
import { checkShape } from './issues.ts'
import { isGroup, type Loose } from './layers.ts'
import { type Position, type Problem, pathInWords } from './problem.ts'
import { resolveProject, tooManyModules } from './resolve/project.ts'
import type { RawDefinition } from './schema/definition.ts'
import { readSource, type Source } from './source.ts'
import type { Data, Mistake } from './to-data.ts'
import type { DefinitionPath, Project } from './types.ts'

/** A definition, read: the complete project, or everything that is wrong with it. */
export type ReadResult =
  | {
      readonly ok: true
      readonly project: Project
      /** What the text says, before anything is filled in. */
      readonly data: Data
      /** Where a path of the definition stands; what the text does not say itself is found at what holds it. */
      readonly locate: (path: DefinitionPath) => Position
      /** The same definition with this length (mm) for every size that is as large as fits; only where there are such. */
      readonly sized?: (mm: number) => ReadResult
      /** A problem at a place of the definition that shows itself later, ready to print. */
      readonly problemAt: (path: DefinitionPath, message: string, expected: string) => Problem
    }
  | {
      readonly ok: false
      readonly problems: readonly Problem[]
      /** What the text says all the same; nothing where it is no YAML. */
      readonly data?: Data
    }

/**
 * Reads a definition (YAML 1.2). `file` is the name that positions carry; no file is opened: `files` are the
 * texts of those that the definition names (`filesNamed`). Not ok: every mistake
 * that can be seen at once, sorted by position, none twice. Never throws on any text.
 */
export function readDefinition(text: string, file: string, files: ReadonlyMap<string, string> = new Map()): ReadResult {
  const read = readSource(text, file)
  if (!read.ok) return read
  const { source, mistakes } = read
  return resolved(source, mistakes, files, undefined)
}

type Files = ReadonlyMap<string, string>

function resolved(source: Source, mistakes: readonly Mistake[], files: Files, fitted: number | undefined): ReadResult {
  const context = new Context(source, 'mm', files, fitted)
  for (const { span, path, message, expected } of mistakes) context.reportAt(span, path, message, { expected })
  const { data } = source
  if (tooManyModules(context, data)) return { ok: false, problems: context.problems() }
  const shaped = checkShape(context, data)
  const project = resolveProject(context, (isGroup(shaped) ? shaped : {}) as Loose<RawDefinition>)
  const problems = context.problems()
  if (problems.length > 0) return { ok: false, problems, data }
  return {
    ok: true,
    project,
    data,
    locate: (path) => source.locate(path),
    problemAt: (path, message, expected) => {
      const where = pathInWords(path)
      return source.problem(source.span(path, 'value'), {
        message: where === '' ? message : `${where}: ${message}`,
        expected,
      })
    },
    ...(project.fit !== undefined && { sized: (mm: number) => resolved(source, mistakes, files, mm) }),
  }
}
