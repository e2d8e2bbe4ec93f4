export { type Contact, contactOf } from './contact.ts'
export { faceScrew, placeFaceScrews } from './face-screws.ts'
export { joinPanels, letIn } from './housings.ts'
export { fastenerOffsets, placeJoint, pocketFigures } from './joints.ts'
