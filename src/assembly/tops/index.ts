export { placeChamber, placePort } from './chamber.ts'
export { topNeighbours } from './neighbours.ts'
export { type RowTop, rowTop } from './run.ts'
export { placeTop } from './worktop.ts'
