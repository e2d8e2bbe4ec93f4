export { check, mustStop, rules } from './check.ts'
export { renderFindings } from './render.ts'
export * from './types.ts'
