export { overlays } from './fronts.ts'
export {
  doorMass,
  hingeHeights,
  hingesNeeded,
  INSET_CLEARANCE_MM,
  PLATE_REACH_MM,
  type Span,
  solveOverlay,
} from './hinge-rules.ts'
export { cupReach } from './hinge-troubles.ts'
export { placeFront } from './place-front.ts'
export type { Leaf } from './plate-wall.ts'
export type { TakenPlates } from './plates.ts'
