import type { Bay, FrontSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import type { Opening } from '../carcase/index.ts'
import { merge, type Parts } from '../parts.ts'
import type { Walk } from '../walk.ts'
import { fixedFront } from './fixed-fronts.ts'
import { doorsOf, type FrontPlace, flapOf } from './fronts.ts'
import { placeHinges } from './hinges.ts'
import { type Leaf, plateWall } from './plate-wall.ts'
import { placePull } from './pulls.ts'
import { placeStays, type StayRequest, swingNote } from './stays.ts'

/** The front of an opening, with its hinges, stays, pulls or fasteners. */
export function placeFront(
  walk: Walk,
  bay: Bay,
  front: FrontSpec,
  opening: Opening,
  leaves: readonly Leaf[],
  name: string,
): Parts {
  const { spec } = walk
  const place: FrontPlace = { bay, opening, module: spec.key, name, frontGap: spec.frontGap }
  if (front.kind === 'fixed') return fixedFront(front, place, walk)
  const doors = front.kind === 'flap' ? [flapOf(front, place)] : doorsOf(front, place)
  return merge(
    doors.map((door) => {
      const wall = plateWall(door, opening, leaves, walk.sidesFoot)
      const hinges = placeHinges({ module: spec.key, front, door, opening, wall, taken: walk.plates })
      const pull = front.pull === undefined ? [] : [placePull(front.pull, door, spec.key)]
      const held = front.kind === 'flap' ? holdFlap(walk, { module: spec.key, front, flap: door, opening, leaves }) : []
      return merge([{ panels: [door.panel] }, hinges, { hardware: pull }, ...held])
    }),
  )
}

function holdFlap(walk: Walk, request: StayRequest): Partial<Parts>[] {
  const tops = [...walk.panels.values()].map((panel) => boardBox(panel).max[2])
  return [placeStays(request), { troubles: swingNote(request.front, request.flap, Math.max(...tops)) }]
}
