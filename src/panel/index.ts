export * from './cut-size.ts'
export * from './datum.ts'
export { panelsOf } from './project.ts'
export * from './types.ts'
