export type { Design, Engine, FilesOptions, Fonts, Opened, OutputFile, PrintOptions, Severity } from './engine.ts'
export { EXIT } from './exit-codes.ts'
export type { Io, Writer } from './io.ts'
export { runCli } from './run.ts'
