export { catalogue, findItem, itemsOfKind } from './catalogue.ts'
export * from './kinds/levelling-screw.ts'
export * from './types.ts'
