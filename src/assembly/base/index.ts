export { placeBase } from './base.ts'
export { CIRCLES_APART_MM } from './casters.ts'
