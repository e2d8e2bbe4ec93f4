import {
  type Asked,
  type Data,
  type DefinitionPath,
  optionAt,
  type PrintOptions,
  type Problem,
  type ReadResult,
  readDefinition,
  readPrintOptions,
} from '../project/index.ts'
import { largestSize } from '../sheets/index.ts'
import { type Built, checked, type LaidOut, layOut } from './build.ts'

/** A definition, read and worked out; or everything that is wrong with it. */
export type OpenedDefinition =
  | { readonly ok: true; readonly built: Built; readonly locate: (path: DefinitionPath) => Asked }
  | NotOpened

/** A definition, read and laid out, not yet looked at by the checks; or everything that is wrong with it. */
export type LaidOutDefinition =
  | { readonly ok: true; readonly laid: LaidOut; readonly data: Data; readonly locate: (path: DefinitionPath) => Asked }
  | NotOpened

/** Everything that is wrong with a definition; `options`: with what was said beside it of paper and printer. */
export interface NotOpened {
  readonly ok: false
  readonly problems: readonly Problem[]
  readonly options?: readonly string[]
  /** What the text says all the same; nothing where it is no YAML. */
  readonly data?: Data
}

/**
 * Definition text, and those of the files that it names, to the last hole, with sizes that are as large as fits found first. What
 * `print` says stands in place of what the definition says of paper and printer; `options` is what is wrong with it. Never throws
 * on any text. Pure.
 */
export function openDefinition(
  text: string,
  file: string,
  files: ReadonlyMap<string, string> = new Map(),
  print: PrintOptions = {},
): OpenedDefinition {
  const opened = layOutDefinition(text, file, files, print)
  return opened.ok ? { ok: true, built: checked(opened.laid), locate: opened.locate } : opened
}

/** The same without the checks, which take as long as all the rest. */
export function layOutDefinition(
  text: string,
  file: string,
  files: ReadonlyMap<string, string> = new Map(),
  print: PrintOptions = {},
): LaidOutDefinition {
  const read = fitted(readDefinition(text, file, files))
  if (!read.ok) return read
  const { project, data, locate } = read
  const said = readPrintOptions(print, project.units)
  if (!said.ok) return { ok: false, problems: [], options: said.problems, data }
  const asked = (path: DefinitionPath): Asked => {
    const option = optionAt(path, print)
    return { ...locate(path), ...(option !== undefined && { option }) }
  }
  return {
    ok: true,
    laid: layOut({ ...project, outputs: { ...project.outputs, ...said.outputs } }),
    data,
    locate: asked,
  }
}

/** Lays out one definition after another. */
export type LayoutKeeper = typeof layOutDefinition

/**
 * For a definition that is changed again and again: lays out each text as `layOutDefinition` does, and may keep what it
 * worked out for the last one, so that only what differs is worked out anew. The result is the same in any case.
 */
export function layoutKeeper(): LayoutKeeper {
  return layOutDefinition
}

/** The definition with the largest size that comes out of its sheets. */
function fitted(read: ReadResult): ReadResult {
  if (!read.ok || read.sized === undefined || read.project.fit === undefined) return read
  const { fit } = read.project
  const size = largestSize(fit, read.sized)
  if (size !== undefined) return read.sized(size)
  // Where it cannot be built even at the size that was asked for at most, that is the reason.
  const tried = read.sized(Math.min(fit.atMost, MIDDLING_MM))
  if (!tried.ok) return tried
  const message = 'no size is so small that all parts come out of the sheets that there are'
  const [first = []] = fit.at
  return { ok: false, problems: [read.problemAt(first, message, 'more sheets, or fewer or simpler modules')] }
}

/** A cabinet of a usual size, mm: at it, a definition that can be built can be built. */
const MIDDLING_MM = 600
