import type { Item } from '../types.ts'
import { boltBodies, casterBodies, footBodies, hingeBodies, pullBodies, slideBodies, stayBodies } from './lying.ts'
import { screwBodies } from './screws.ts'
import type { Body, Surroundings } from './types.ts'

export { PULL_OUT_MM } from './lying.ts'
export { type ShankLine, shankOf, threadOf } from './screws.ts'
export type { Body, BodyName, Surroundings } from './types.ts'

/**
 * The solids that a piece of hardware takes up besides its holes, shut. `parts` are those that it has in its place: a pull
 * has its screws' heads behind the box front where it goes through one. Nothing for what goes whole into its holes.
 */
export function bodiesOf(item: Item, parts: readonly string[], around: Surroundings): Body[] {
  switch (item.kind) {
    case 'through screw':
    case 'one-piece screw':
    case 'pocket screw':
      return screwBodies(item, around)
    case 'joining bolt':
      return boltBodies(item, around)
    case 'levelling foot':
      return footBodies(item, around)
    case 'caster':
      return casterBodies(item, around)
    case 'cup hinge':
      return hingeBodies(item)
    case 'drawer slide':
      return slideBodies(item)
    case 'flap stay':
      return stayBodies(item)
    case 'pull':
      return pullBodies(item, parts.includes('box front') ? 'box front' : 'front', around)
    case 'shelf pin':
    case 'hinge plate':
    case 'dowel':
    case 'cam fitting':
    case 'axle':
    case 'locking bolt':
    case 'levelling screw':
      return []
  }
}
