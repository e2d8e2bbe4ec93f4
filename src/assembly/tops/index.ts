export { placeChamber, placePort } from './chamber.ts'
export { topNeighbours } from './neighbours.ts'
export { type RowTop, rowTop, type TopScrews } from './run.ts'
export { placeTop } from './worktop.ts'
