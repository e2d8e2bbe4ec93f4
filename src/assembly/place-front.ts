import type { FrontSpec } from '../project/index.ts'
import type { Opening } from './carcase.ts'
import { doorsOf } from './fronts.ts'
import { placeHinges } from './hinges.ts'
import { merge, type Parts } from './parts.ts'
import { type Leaf, plateWall } from './plate-wall.ts'
import { placePull } from './pulls.ts'
import type { Walk } from './walk.ts'

/** Doors, their hinges and their pulls on one opening. */
export function placeFront(
  walk: Walk,
  front: FrontSpec,
  opening: Opening,
  leaves: readonly Leaf[],
  name: string,
): Parts {
  const { spec } = walk
  return merge(
    doorsOf(front, opening, spec.key, name, spec.frontGap).map((door) => {
      const hinges = placeHinges({
        module: spec.key,
        front,
        door,
        opening,
        wall: plateWall(door, opening, leaves, walk.sidesFoot),
      })
      const pull = front.pull === undefined ? [] : [placePull(front.pull, door, spec.key)]
      return { panels: [door.panel], hardware: [...hinges.hardware, ...pull], troubles: hinges.troubles }
    }),
  )
}
