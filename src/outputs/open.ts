import {
  type Asked,
  type DefinitionPath,
  optionAt,
  type PrintOptions,
  type Problem,
  type ReadResult,
  readDefinition,
  readPrintOptions,
} from '../project/index.ts'
import { largestSize } from '../sheets/index.ts'
import { type Built, build } from './build.ts'

/** A definition, read and worked out; or everything that is wrong with it. */
export type OpenedDefinition =
  | { readonly ok: true; readonly built: Built; readonly locate: (path: DefinitionPath) => Asked }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly options?: readonly string[] }

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
  const read = fitted(readDefinition(text, file, files))
  if (!read.ok) return read
  const { project, locate } = read
  const said = readPrintOptions(print, project.units)
  if (!said.ok) return { ok: false, problems: [], options: said.problems }
  const asked = (path: DefinitionPath): Asked => {
    const option = optionAt(path, print)
    return { ...locate(path), ...(option !== undefined && { option }) }
  }
  return { ok: true, built: build({ ...project, outputs: { ...project.outputs, ...said.outputs } }), locate: asked }
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
