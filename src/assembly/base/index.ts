export { placeBase } from './base.ts'
