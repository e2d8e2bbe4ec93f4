export { check, mustStop, rules } from './check.ts'
export { countLine, renderFindings } from './render.ts'
export * from './types.ts'
