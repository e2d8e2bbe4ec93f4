export { catalogue, findItem, itemsOfKind } from './catalogue.ts'
export type { LevellingFoot } from './kinds/levelling-foot.ts'
export * from './types.ts'
