export { catalogue, findItem, itemsOfKind, USUAL_HINGES } from './catalogue.ts'
export { hingeOnPlate } from './kinds/cup-hinge.ts'
export { type Builder, builderOf, builders, type FigureForm, type FigureSpec } from './kinds/index.ts'
export * from './types.ts'
