import { type DefinitionPath, type Position, type Problem, type ReadResult, readDefinition } from '../project/index.ts'
import { largestSize } from '../sheets/index.ts'
import { type Built, build } from './build.ts'

/** A definition, read and worked out; or everything that is wrong with it. */
export type OpenedDefinition =
  | { readonly ok: true; readonly built: Built; readonly locate: (path: DefinitionPath) => Position }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Definition text, and those of the files that it names, to the last hole, with sizes that are as large as fits found first. Never throws on any text. Pure. */
export function openDefinition(
  text: string,
  file: string,
  files: ReadonlyMap<string, string> = new Map(),
): OpenedDefinition {
  const read = fitted(readDefinition(text, file, files))
  return read.ok ? { ok: true, built: build(read.project), locate: read.locate } : read
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
