import { compose, type Pose } from '../geometry/index.ts'
import { FLOOR, type Near, type PanelId, type PlacedHardware, type Station } from './types.ts'

/** A piece of hardware in the floor frame, where the frame in which it was placed stands so. */
export function onFloor(near: Near, floorFromNear: Pose): PlacedHardware {
  const stations = near.piece.stations.map(
    (station): Station => ({ ...station, pose: compose(floorFromNear, station.pose) }),
  )
  return { ...near.piece, frame: FLOOR, stations, near }
}

/** A grip of a piece in the floor frame as it was placed, and the pose of the module of its panel there. */
export interface NearGrip {
  readonly near: Near
  readonly station: Station
  readonly fromModule: Pose
}

/** That of a grip on a panel; nothing where the panel is seen from the floor alone. */
export function nearGrip(piece: PlacedHardware, station: Station): NearGrip | undefined {
  const { near } = piece
  const fromModule = near?.fromModule.get(station.panel)
  const own = near?.piece.stations[piece.stations.indexOf(station)]
  return near === undefined || fromModule === undefined || own === undefined
    ? undefined
    : { near, station: own, fromModule }
}

/** The poses of modules by their panels. */
export const posesBy = (...poses: readonly (readonly [PanelId, Pose])[]): ReadonlyMap<PanelId, Pose> => new Map(poses)
