import { readChunks } from './chunks.ts'
import { Context } from './context.ts'
import { checkShape, fitsShape } from './issues.ts'
import { isGroup, type Loose } from './layers.ts'
import { ReadMemory } from './memory.ts'
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
 * that can be seen at once, sorted by position, none twice. Never throws on any text. With the memory of the last
 * definition, what stands in the very same words is not read anew; the result is the same in any case.
 */
export function readDefinition(
  text: string,
  file: string,
  files: ReadonlyMap<string, string> = new Map(),
  memory?: ReadMemory,
): ReadResult {
  memory?.begin()
  const chunked = memory && readChunks(text, file, memory.chunks)
  const read = chunked === undefined ? readSource(text, file) : { ok: true as const, source: chunked, mistakes: [] }
  if (!read.ok) return read
  const written: Written = { source: read.source, mistakes: read.mistakes, files }
  const recalled = memory && recall(written, memory)
  return recalled ?? resolve(written, new ReadMemory(), memory?.tried ?? new ReadMemory())
}

/** What a definition's text says, before anything is filled in; nothing where it is no YAML. Never throws. */
export function definitionData(text: string): Data | undefined {
  const read = readSource(text, '')
  return read.ok ? read.source.data : undefined
}

/** What is to be resolved. */
interface Written {
  readonly source: Source
  readonly mistakes: readonly Mistake[]
  readonly files: ReadonlyMap<string, string>
}

/** A definition without a problem, with what the memory has of it; nothing for one with problems, which are found anew. */
function recall(written: Written, memory: ReadMemory): ReadResult | undefined {
  const { source, mistakes, files } = written
  if (mistakes.length > 0 || !fitsShape(source.data, memory.fitting)) return undefined
  const context = new Context(source, 'mm', files, undefined, memory.contours)
  if (tooManyModules(context, source.data)) return undefined
  const project = resolveProject(context, source.data as Loose<RawDefinition>, memory)
  if (context.problems().length > 0) return undefined
  memory.settle()
  return readable(project, written, memory.tried)
}

/** `fitted`: what sizes that are as large as fits are taken for, mm; `tried`: the memory for such sizes. */
function resolve(written: Written, memory: ReadMemory, tried: ReadMemory, fitted?: number): ReadResult {
  const { source, mistakes, files } = written
  const context = new Context(source, 'mm', files, fitted, memory.contours)
  for (const { span, path, message, expected } of mistakes) context.reportAt(span, path, message, { expected })
  const { data } = source
  if (tooManyModules(context, data)) return { ok: false, problems: context.problems() }
  const shaped = checkShape(context, data)
  memory.begin()
  const project = resolveProject(context, (isGroup(shaped) ? shaped : {}) as Loose<RawDefinition>, memory)
  const problems = context.problems()
  if (problems.length > 0) return { ok: false, problems, data }
  memory.settle()
  return readable(project, written, tried)
}

function readable(project: Project, written: Written, tried: ReadMemory): ReadResult {
  const { source } = written
  return {
    ok: true,
    project,
    data: source.data,
    locate: (path) => source.locate(path),
    problemAt: (path, message, expected) => {
      const where = pathInWords(path)
      return source.problem(source.span(path, 'value'), {
        message: where === '' ? message : `${where}: ${message}`,
        expected,
      })
    },
    ...(project.fit !== undefined && { sized: (mm: number) => resolve(written, tried, tried, mm) }),
  }
}
