import { compose, type Pose } from '../geometry/index.ts'
import { FLOOR, type PlacedHardware, type Station } from './types.ts'

/** A piece of hardware in the floor frame, where the frame in which it was placed stands so. */
export function onFloor(piece: PlacedHardware, floorFromFrame: Pose): PlacedHardware {
  const stations = piece.stations.map(
    (station): Station => ({ ...station, pose: compose(floorFromFrame, station.pose) }),
  )
  return { ...piece, frame: FLOOR, stations }
}
