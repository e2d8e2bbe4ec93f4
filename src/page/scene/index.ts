export { factsOf } from './facts.ts'
export { outlineOf } from './outline.ts'
export { nearestLook, sceneOf } from './scene.ts'
export * from './types.ts'
