export { placeDrawers } from './drawers.ts'
