export { type Bound, backOf, type Opening, shell } from './carcase.ts'
export { type Cell, cellOf, type Edge, frontsBeyond, splitCells } from './facing.ts'
