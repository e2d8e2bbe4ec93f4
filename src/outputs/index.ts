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
export { type DefinitionText, FINDINGS_JSON, FINDINGS_TEXT, findingsJson, findingsText } from './findings-files.ts'
export {
  type LaidOutDefinition,
  type LayoutKeeper,
  layOutDefinition,
  layoutKeeper,
  type NotOpened,
  type OpenedDefinition,
  openDefinition,
} from './open.ts'
export { PANELS_VERSION } from './panels-json.ts'
