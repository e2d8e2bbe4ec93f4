export { placeChamber, placePort } from './chamber.ts'
export { topNeighbours } from './neighbours.ts'
export { rowTop } from './run.ts'
export { placeTop } from './worktop.ts'
