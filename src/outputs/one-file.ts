import type { Built } from './build.ts'
import {
  type Fonts,
  lists,
  type OutputFile,
  type OutputOptions,
  outputFiles,
  panelFaceFiles,
  panelsText,
} from './files.ts'
import type { DefinitionText } from './findings-files.ts'
import { measureFile, pageFiles } from './page-files.ts'
import { filesOf, MEASURE_FILE } from './paths.ts'

/**
 * One of the files that `outputFiles` yields, byte for byte, without making the others, except where it is made of all of
 * them; nothing where there is none at that path.
 */
export async function outputFile(
  built: Built,
  fonts: Fonts,
  definition: DefinitionText,
  path: string,
  options: OutputOptions = {},
): Promise<OutputFile | undefined> {
  const isIt = (file: OutputFile): boolean => file.path === path
  const panel = built.panels.find((one) => Object.values(filesOf(one)).flat().includes(path))
  if (panel !== undefined) {
    // The seed tells the files of all pages of two projects from each other, and this one is given up.
    if (path.endsWith('.pdf')) return pageFiles(built, fonts, '', options.stamp).of(panel)
    return [...panelFaceFiles(built, panel, options)].find(isIt)
  }
  if (path === MEASURE_FILE) return measureFile(built, fonts, options.stamp)
  if (!path.includes('/')) return [...lists(built, definition, panelsText(built, options), options)].find(isIt)
  for await (const file of outputFiles(built, fonts, definition, options)) if (isIt(file)) return file
  return undefined
}
