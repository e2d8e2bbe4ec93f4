export { type Built, build, checked, type LaidOut, layOut } from './build.ts'
export {
  type Fonts,
  faceFiles,
  type OutputFile,
  type OutputOptions,
  outputFiles,
  outputPaths,
  PANELS_FILE,
} from './files.ts'
export {
  type DefinitionText,
  definitionText,
  FINDINGS_JSON,
  FINDINGS_TEXT,
  findingsJson,
  findingsText,
} from './findings-files.ts'
export { outputFile } from './one-file.ts'
export {
  type LaidOutDefinition,
  type LayoutKeeper,
  layOutDefinition,
  layoutKeeper,
  type NotOpened,
  type OpenedDefinition,
  openDefinition,
} from './open.ts'
export { type FilesOfPanel, type FilesOutline, filesOutline } from './outline.ts'
export type { PrintCount } from './page-files.ts'
export { PANELS_VERSION } from './panels-json.ts'
export { printWords } from './print-words.ts'
export { type PrintChoice, printedPages } from './printed-pages.ts'
export { stampOf, stopsStanding, stopWords } from './stamp.ts'
