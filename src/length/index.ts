export * from './format.ts'
export * from './parse.ts'
export * from './units.ts'
