import { add, dot, NOISE_MM, type Pose, place, placeBack, scale, turn, turnBack, type Vec3 } from '../geometry/index.ts'
import type { Depth, Drilling } from '../hardware/index.ts'
import type { PlacedHardware, PlacedPanel, Station } from './types.ts'

/** A hole that a piece of hardware makes in a board: where the bit enters, the way it goes and how far, panel frame, mm. */
export interface Drilled {
  readonly drilling: Drilling
  readonly at: Vec3
  /** Unit. */
  readonly axis: Vec3
  readonly depth: number
}

/**
 * The holes of one station in its panel. `frameFromPanel`: from the panel to the frame in which the piece was placed.
 * Throws when the panel does not lie on its side of the contact plane: then the placing is wrong.
 */
export function drilledIn(
  piece: PlacedHardware,
  station: Station,
  panel: PlacedPanel,
  frameFromPanel: Pose,
  thicknessOf: (id: string) => number | undefined,
): Drilled[] {
  const drillings = piece.item.parts[station.part]
  if (drillings === undefined) throw new Error(`${piece.item.id} has no part ${station.part}`)
  // z of the station, from the contact plane into the wood, seen in the panel frame.
  const inward = turnBack(frameFromPanel, station.wood === 'ahead' ? station.pose.z : scale(station.pose.z, -1))
  const outward = scale(inward, -1)
  const [from, to] = extentAlong(panel, inward)
  return drillings.map((drilling): Drilled => {
    const onContact = placeBack(frameFromPanel, place(station.pose, [drilling.x, drilling.y, 0]))
    const woodAhead = to - dot(inward, onContact)
    const woodBehind = dot(inward, onContact) - from
    if (woodAhead < NOISE_MM || woodBehind < -NOISE_MM) {
      throw new Error(`${piece.id} ${station.part}: ${panel.id} does not lie on its side of the contact plane`)
    }
    const at = drilling.enter === 'contact' ? onContact : add(onContact, scale(inward, woodAhead))
    const square = drilling.enter === 'contact' ? inward : outward
    const axis = drilling.leanDeg === undefined ? square : leaning(drilling.leanDeg, station, frameFromPanel, square)
    return { drilling, at, axis, depth: depthOf(drilling.depth, piece, woodAhead, thicknessOf) }
  })
}

/** A bit that leans toward the station's +x, at `leanDeg` to the surface. */
function leaning(leanDeg: number, station: Station, frameFromPanel: Pose, square: Vec3): Vec3 {
  const toward = turnBack(frameFromPanel, turn(station.pose, [1, 0, 0]))
  const angle = (leanDeg * Math.PI) / 180
  return add(scale(toward, Math.cos(angle)), scale(square, Math.sin(angle)))
}

function depthOf(
  depth: Depth,
  piece: PlacedHardware,
  wood: number,
  thicknessOf: (id: string) => number | undefined,
): number {
  if (depth === 'through') return wood
  if (typeof depth === 'number') return depth
  if ('setting' in depth) {
    const value = piece.settings[depth.setting]
    if (value === undefined) throw new Error(`${piece.id}: no setting ${depth.setting}`)
    return value
  }
  const other = piece.stations.find((station) => station.part === depth.from)
  const thickness = other && thicknessOf(other.panel)
  if (thickness === undefined) throw new Error(`${piece.id}: no board at part ${depth.from}`)
  return depth.reach - thickness
}

/** Extent of a blank along a direction of its own frame that is square to its faces, mm, as [from, to]. */
function extentAlong(panel: PlacedPanel, direction: Vec3): readonly [number, number] {
  const min: Vec3 = [0, 0, -panel.thickness]
  const max: Vec3 = [panel.length, panel.width, 0]
  let from = 0
  let to = 0
  for (const axis of [0, 1, 2] as const) {
    from += direction[axis] * (direction[axis] > 0 ? min[axis] : max[axis])
    to += direction[axis] * (direction[axis] > 0 ? max[axis] : min[axis])
  }
  return [from, to]
}
