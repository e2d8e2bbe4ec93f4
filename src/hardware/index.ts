export { catalogue, findItem, itemsOfKind } from './catalogue.ts'
export * from './types.ts'
