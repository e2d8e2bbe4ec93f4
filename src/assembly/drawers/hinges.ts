import { NOISE_MM } from '../../geometry/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import type { Opening } from '../carcase/index.ts'
import { cupReach, PLATE_REACH_MM, type Span } from '../fronts/index.ts'
import type { Parts } from '../parts.ts'

/** What a door that hangs on one wall of an opening puts in the way of an inner drawer, mm. */
export interface HingedWall {
  /** Heights of the plates on this wall, module frame. */
  readonly plates: readonly number[]
  /** How far the open door stands in beyond the wall; negative where it stays behind it. */
  readonly door: number
  /** How far the open hinges do. */
  readonly hinge: number
  /** The door, for messages. */
  readonly name: string
  /** Its lower and upper end, and what a cup takes on both sides along its edge. */
  readonly foot: number
  readonly head: number
  readonly room: number
  /** Where the definition asks for it. */
  readonly at: DefinitionPath
}

/** Air between the open door and what slides past it, mm; common practice, measure yours. */
const PAST_DOOR_MM = 3

/**
 * The hinges on one wall of an opening among those of the front before it; `undefined` where none is. A door that
 * stands open at a right angle keeps its show face where its edge was, so it stands in by its thickness less its
 * overlay. Own arithmetic.
 */
export function hingedWall(front: Parts, opening: Opening, side: 'left' | 'right'): HingedWall | undefined {
  const walls = front.hardware.flatMap(({ item, stations }): HingedWall[] => {
    const plate = stations.find((station) => station.part === 'plate')
    const cup = stations.find((station) => station.part === 'cup')
    const door = front.panels.find((panel) => panel.id === cup?.panel)
    if (item.kind !== 'cup hinge' || plate?.panel !== opening[side].panel || door === undefined) return []
    // The other face of a partition belongs to the opening beside.
    const wall = side === 'left' ? opening.x0 : opening.x1
    if (Math.abs(plate.pose.origin[0] - wall) > NOISE_MM) return []
    const box = boardBox(door)
    const overlay = side === 'left' ? wall - box.min[0] : box.max[0] - wall
    return [
      {
        plates: [plate.pose.origin[2]],
        door: door.thickness - overlay,
        hinge: item.standsIn,
        name: door.name,
        foot: box.min[2],
        head: box.max[2],
        room: cupReach(item),
        at: door.at,
      },
    ]
  })
  const [first] = walls
  if (first === undefined) return undefined
  return {
    ...first,
    plates: walls.flatMap((wall) => wall.plates),
    door: Math.max(...walls.map((wall) => wall.door)),
    hinge: Math.max(...walls.map((wall) => wall.hinge)),
  }
}

/**
 * How far from the wall a slide must be kept, mm: it passes the open door with some air, and the box beside it, by the
 * side space further in, passes the open hinges. 0 where neither stands in its way.
 */
export function packingNeeded(wall: HingedWall | undefined, sideSpace: number): number {
  if (wall === undefined) return 0
  return Math.max(0, wall.door + PAST_DOOR_MM, wall.hinge - sideSpace)
}

/** Heights at which a strip of some height on that wall would lie on a plate, or too near it, mm. */
export function takenByPlates(wall: HingedWall | undefined, strip: number): Span[] {
  const reach = strip / 2 + PLATE_REACH_MM
  return (wall?.plates ?? []).map((z) => ({ from: z - reach, to: z + reach }))
}
