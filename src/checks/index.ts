export { makes, type Need, needsOf, usualKind } from './bits.ts'
export { check, mustStop, rules } from './check.ts'
export {
  type FindingGroup,
  type FindingRow,
  grouped,
  rowsOf,
  shortMessage,
  type TwinGroup,
  withoutTwins,
} from './grouped.ts'
export { type CheckedDefinition, countLine, placeWords, renderFindings } from './render.ts'
export * from './types.ts'
