export { check, mustStop, rules } from './check.ts'
export { type FindingGroup, type FindingRow, grouped, rowsOf, shortMessage } from './grouped.ts'
export { type CheckedDefinition, countLine, renderFindings } from './render.ts'
export * from './types.ts'
