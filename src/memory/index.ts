export { alike, olderIfAlike } from './alike.ts'
export { Kept, sameItems } from './kept.ts'
