export type { CoverFace, CoverPanel } from './contents.ts'
export { type Cover, coverDrawings, type PageCount } from './cover.ts'
export { type Setting, type Tool, toolsOf } from './tools.ts'
export { cautionWords } from './words.ts'
