import { boardBox, FLOOR, type PlacedHardware, type PlacedModule, type Station } from '../../assembly/index.ts'
import {
  type Box,
  type BoxSearch,
  boundsOfSolid,
  compose,
  type nearPairs,
  type Pose,
  place,
  placedSolid,
  poseOf,
  type Solid,
  turnBack,
  X,
  Y,
} from '../../geometry/index.ts'
import { type BodyName, bodiesOf, type Surroundings } from '../../hardware/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { Subject } from '../types.ts'

/** How boxes that are near each other are found; a test puts all boxes in its place. */
export interface Finder {
  readonly index: (boxes: readonly Box[]) => BoxSearch
  readonly pairs: typeof nearPairs
}

/** A solid of a piece of hardware in its place, in the frame of the module whose board it lies on; mm. */
export interface PlacedBody {
  readonly piece: PlacedHardware
  readonly name: BodyName
  readonly station: Station
  /** The board of its station. */
  readonly panel: Panel
  readonly solid: Solid
  readonly box: Box
}

export interface BoxedPanel {
  readonly panel: Panel
  /** Module frame, mm. */
  readonly box: Box
}

/** One module with all that stands out of its wood; its own frame, mm. */
export interface ModuleScene {
  readonly module: PlacedModule
  readonly panels: readonly BoxedPanel[]
  readonly bodies: readonly PlacedBody[]
  /** The shelf pins of its loose shelves. */
  readonly pins: readonly PlacedHardware[]
  readonly panelsNear: BoxSearch
  readonly bodiesNear: BoxSearch
}

/** The project in three dimensions. */
export interface Scene {
  readonly subject: Subject
  readonly finder: Finder
  readonly modules: readonly ModuleScene[]
}

export function sceneOf(subject: Subject, finder: Finder): Scene {
  const frames = new Map(subject.assembly.modules.map((module) => [module.key, module.floorFromModule]))
  const panels = grouped(subject.panels, (panel) => panel.module)
  const bodies = grouped(
    subject.assembly.hardware.flatMap((piece) => placedBodies(subject, frames, piece)),
    ({ panel }) => panel.module,
  )
  const pins = grouped(
    subject.assembly.hardware.filter(({ item }) => item.kind === 'shelf pin'),
    ({ frame }) => frame,
  )
  const modules = subject.assembly.modules.map((module): ModuleScene => {
    const boxed = (panels.get(module.key) ?? []).map((panel) => ({ panel, box: boardBox(panel) }))
    const own = bodies.get(module.key) ?? []
    return {
      module,
      panels: boxed,
      bodies: own,
      pins: pins.get(module.key) ?? [],
      panelsNear: finder.index(boxed.map(({ box }) => box)),
      bodiesNear: finder.index(own.map(({ box }) => box)),
    }
  })
  return { subject, finder, modules }
}

export function grouped<T>(all: readonly T[], keyOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const one of all) {
    const key = keyOf(one)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else group.push(one)
  }
  return groups
}

/** What a piece's bodies depend on, read from the boards that it grips. */
export function surroundingsOf(subject: Subject, piece: PlacedHardware): Surroundings {
  return {
    thicknessOf: (part) => {
      const station = piece.stations.find((one) => one.part === part)
      return station === undefined ? 0 : subject.panelOf(station.panel).thickness
    },
    setting: (name) => piece.settings[name],
  }
}

/** What stands out of the wood; shanks of screws lie in it, see `shanks`. */
function placedBodies(subject: Subject, frames: Frames, piece: PlacedHardware): PlacedBody[] {
  const parts = piece.stations.map(({ part }) => part)
  return bodiesOf(piece.item, parts, surroundingsOf(subject, piece)).flatMap(({ part, name, solid }): PlacedBody[] => {
    const station = piece.stations.find((one) => one.part === part)
    if (station === undefined || name === 'shank') return []
    const panel = subject.panelOf(station.panel)
    const placed = placedSolid(moduleFromStation(frames, piece, station, panel), solid)
    return [{ piece, name, station, panel, solid: placed, box: boundsOfSolid(placed) }]
  })
}

/** Floor from module, by the keys of the modules. */
type Frames = ReadonlyMap<string, Pose>

/** The pose of a station in the frame of its board's module. */
function moduleFromStation(frames: Frames, { frame }: PlacedHardware, { pose }: Station, { module }: Panel): Pose {
  const floorFromModule = frame === FLOOR ? frames.get(module) : undefined
  return floorFromModule === undefined ? pose : compose(inverse(floorFromModule), pose)
}

/** The pose the other way round. */
export function inverse(pose: Pose): Pose {
  const back = poseOf(turnBack(pose, X), turnBack(pose, Y), [0, 0, 0])
  const [x, y, z] = place(back, pose.origin)
  return { ...back, origin: [-x, -y, -z] }
}
