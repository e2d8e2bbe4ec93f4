export { largestSize } from './fit.ts'
export { fewestSheets, layOut, usableSize } from './lay-out.ts'
export { partsByStock } from './parts.ts'
export * from './types.ts'
