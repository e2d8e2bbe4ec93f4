import {
  type Box,
  compose,
  dot,
  NOISE_MM,
  type PathVertex,
  type Pose,
  place,
  placedBox,
  turn,
  type Vec2,
  type Vec3,
} from '../../geometry/index.ts'
import { type JoiningBolt, lyingReach } from '../../hardware/index.ts'
import { type Drilled, drilledIn } from '../drilled.ts'
import type { PanelId, PanelRole, PlacedHardware, PlacedPanel, Station } from '../types.ts'
import { acrossAxis, type OuterFace } from './faces.ts'
import { floorBox } from './footprint.ts'

/** A place on the faces that two panels share: across (x or y of the floor) and up (z), floor frame, mm. */
export type FacePoint = readonly [across: number, up: number]

/** Something that the middle of a bolt must keep clear of. */
export interface Obstacle {
  readonly min: FacePoint
  readonly max: FacePoint
  /** Least distance to it, mm. */
  readonly clear: number
  /** For people: `a shelf pin of glaze store`. */
  readonly what: string
}

/** Panels no further than this from a face lie on it, mm. */
const SHAVING_MM = 0.05

/** A bolt in a frame that lies like the floor's and moves with the two modules that it joins, and their poses in it. */
export interface NearBolt {
  readonly piece: PlacedHardware
  readonly fromModule: ReadonlyMap<PanelId, Pose>
}

interface Grip {
  readonly piece: PlacedHardware
  readonly station: Station
  /** Of a bolt, where it is near: what was placed in a module itself lies in the frame of that. */
  readonly near?: { readonly bolt: NearBolt; readonly fromModule: Pose }
}

type ByPanel = Map<PanelId, Grip[]>

/** Which pieces of hardware grip which panel of some modules, of all that is placed so far. */
export class Grips {
  /** Of the modules' own hardware, by the key of the module; looked up when one of its panels is first asked for. */
  private readonly own = new Map<string, ByPanel>()
  private readonly added: ByPanel = new Map()

  /** `ownOf`: what is placed in a module itself, which grips its own panels alone. */
  constructor(private readonly ownOf: (module: string) => readonly PlacedHardware[]) {}

  /** What is placed in a module itself. */
  of(module: string): readonly PlacedHardware[] {
    return this.ownOf(module)
  }

  /** Adds bolts between modules. */
  add(bolts: readonly NearBolt[]): void {
    for (const bolt of bolts) {
      for (const station of bolt.piece.stations) {
        const fromModule = bolt.fromModule.get(station.panel)
        if (fromModule === undefined) throw new Error(`${bolt.piece.id} was not placed near ${station.panel}`)
        note(this.added, { piece: bolt.piece, station, near: { bolt, fromModule } })
      }
    }
  }

  /** What grips a panel: first what is its module's own. */
  on(module: string, panel: PanelId): readonly Grip[] {
    const own = this.own.get(module) ?? byPanel(this.ownOf(module))
    this.own.set(module, own)
    return [...(own.get(panel) ?? []), ...this.addedOn(panel)]
  }

  /** The bolts that were added and grip a panel. */
  addedOn(panel: PanelId): readonly Grip[] {
    return this.added.get(panel) ?? []
  }
}

function byPanel(hardware: readonly PlacedHardware[]): ByPanel {
  const grips: ByPanel = new Map()
  for (const piece of hardware) for (const station of piece.stations) note(grips, { piece, station })
  return grips
}

function note(grips: ByPanel, grip: Grip): void {
  const there = grips.get(grip.station.panel)
  if (there === undefined) grips.set(grip.station.panel, [grip])
  else there.push(grip)
}

/** What the bolt's head, or its nut, takes up in and on a panel, mm. */
interface Taken {
  readonly bore: number
  /** Radius of the washer or flange on the inner face. */
  readonly flange: number
}

/** The same, and the wood that is kept beside its bore, mm. */
interface Wanted extends Taken {
  readonly wall: number
}

/** Diameters of the bore and of the flange that one part of a joining bolt takes. */
export function takenBy(item: JoiningBolt, part: 'head' | 'nut'): Taken {
  const bore = Math.max(...(item.parts[part] ?? []).map((drilling) => drilling.diameter)) / 2
  return { bore, flange: lyingReach(item, part) }
}

/**
 * Everything that a bolt's head or nut must keep clear of in one panel: bores, in three dimensions; holes that open
 * under its flange, with the hardware on them; ends of panels that stand on the inner face; grooves and openings.
 * Loose shelves, fronts and drawers move, and are left out.
 */
export function obstaclesIn(
  face: OuterFace,
  part: 'head' | 'nut',
  item: JoiningBolt,
  grips: Grips,
  wall: number,
): Obstacle[] {
  const taken: Wanted = { ...takenBy(item, part), wall }
  const { module, panel } = face
  const thickness = new Map(module.panels.map((one) => [one.id, one.thickness]))
  const floorFromPanel = compose(module.floorFromModule, panel.moduleFromPanel)
  const bores = grips.on(face.module.key, panel.id).flatMap((grip) => {
    const holes = drilledBy(grip, panel, (id) => thickness.get(id)).map((drilled) =>
      holeOf(face, floorFromPanel, drilled),
    )
    return [...holes.map((hole) => boreObstacle(face, taken, grip, hole)), ...bodyObstacle(face, taken, grip, holes)]
  })
  return [...bores, ...standingOn(face, taken), ...cutAway(face, taken, floorFromPanel)]
}

/** The holes of a grip in its panel, panel frame: a bolt's do not depend on where on the floor its modules stand. */
function drilledBy(
  { piece, station, near }: Grip,
  panel: PlacedPanel,
  thicknessOf: (id: string) => number | undefined,
): Drilled[] {
  const frameFromPanel = near === undefined ? panel.moduleFromPanel : compose(near.fromModule, panel.moduleFromPanel)
  return drilledIn(piece, station, panel, frameFromPanel, thicknessOf)
}

/** A hole in a panel that a bolt is to go through, floor frame, mm. */
interface Hole {
  readonly from: Vec3
  readonly to: Vec3
  readonly radius: number
  /** It opens on the inner face, where the head or the nut lies. */
  readonly opensInside: boolean
  readonly purpose: string
}

function holeOf(face: OuterFace, floorFromPanel: Pose, { drilling, at, axis, depth }: Drilled): Hole {
  const way = turn(floorFromPanel, axis)
  const from = place(floorFromPanel, at)
  // Along the bolt, outward, the bit came in by the inner face; square to it, it runs inside the board.
  const along = dot(way, face.out)
  return {
    from,
    to: [from[0] + way[0] * depth, from[1] + way[1] * depth, from[2] + way[2] * depth],
    radius: Math.max(drilling.diameter, drilling.sink?.diameter ?? 0) / 2,
    opensInside: along > NOISE_MM || (along < -NOISE_MM && drilling.depth === 'through'),
    purpose: drilling.purpose,
  }
}

function boreObstacle(face: OuterFace, taken: Wanted, grip: Grip, hole: Hole): Obstacle {
  const apart = taken.bore + hole.radius + taken.wall
  const underFlange = taken.flange + reachOf(grip, hole.radius)
  const { min, max } = rectangleOf(face, [hole.from, hole.to])
  return {
    min,
    max,
    clear: hole.opensInside ? Math.max(apart, underFlange) : apart,
    what: `a ${hole.purpose} of ${face.module.name}`,
  }
}

/** Hardware that is fixed by several holes lies over all of them and between. */
function bodyObstacle(face: OuterFace, taken: Taken, grip: Grip, holes: readonly Hole[]): Obstacle[] {
  const fixing = holes.filter((hole) => hole.opensInside)
  const [first] = fixing
  if (first === undefined || fixing.length < 2) return []
  const points = fixing.map((hole) => hole.from)
  const clear = taken.flange + Math.max(...fixing.map((hole) => reachOf(grip, hole.radius)))
  return [{ ...rectangleOf(face, points), clear, what: `a ${first.purpose} of ${face.module.name}` }]
}

/** How far around the middle of a hole its hardware lies on the face, mm. */
function reachOf({ piece: { item }, station: { part } }: Grip, radius: number): number {
  return item.kind === 'drawer slide' ? item.height / 2 : lyingReach(item, part) || radius
}

function rectangleOf(face: OuterFace, points: readonly Vec3[]): Pick<Obstacle, 'min' | 'max'> {
  const across = acrossAxis(face)
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const point of points) {
    left = Math.min(left, point[across])
    right = Math.max(right, point[across])
    low = Math.min(low, point[2])
    high = Math.max(high, point[2])
  }
  return { min: [left, low], max: [right, high] }
}

const MOVABLE: readonly PanelRole[] = ['loose shelf', 'door', 'flap', 'fixed front']

const movable = ({ role }: PlacedPanel): boolean => MOVABLE.includes(role) || role.startsWith('drawer')

/** Panels of the module that stand on the inner face, or are let into it. */
function standingOn(face: OuterFace, taken: Taken): Obstacle[] {
  const { module, panel, axis, out } = face
  // Distances into the module from its outer face.
  const depthOf = (box: Box): readonly [number, number] =>
    out[axis] > 0
      ? [face.plane - box.max[axis], face.plane - box.min[axis]]
      : [box.min[axis] - face.plane, box.max[axis] - face.plane]
  return module.panels.flatMap((other): Obstacle[] => {
    if (other === panel || movable(other)) return []
    const box = floorBox(module, other)
    const [near, far] = depthOf(box)
    if (near > panel.thickness + SHAVING_MM || far < panel.thickness - SHAVING_MM) return []
    const what = `the ${other.name} of ${module.name}`
    return [{ ...rectangleOf(face, [box.min, box.max]), clear: taken.flange, what }]
  })
}

/** Grooves, rebates and openings of the panel. */
function cutAway(face: OuterFace, { bore, flange, wall }: Wanted, floorFromPanel: Pose): Obstacle[] {
  const { module, panel } = face
  const clear = Math.max(flange, bore + wall)
  const grooves = module.cuts
    .filter((cut) => cut.panel === panel.id)
    .map(({ box, purpose }) => {
      const { min, max } = placedBox(module.floorFromModule, box)
      return { ...rectangleOf(face, [min, max]), clear, what: `the ${purpose} of ${module.name}` }
    })
  const openings = module.cutouts
    .filter((cutout) => cutout.panel === panel.id)
    .map(({ path, purpose }) => {
      const points = outermost(path).map(([x, y]) => place(floorFromPanel, [x, y, 0]))
      return { ...rectangleOf(face, points), clear, what: `the ${purpose} of ${module.name}` }
    })
  return [...grooves, ...openings]
}

/** Points whose rectangle holds the whole path: its corners, and those of the rectangle over each arc. */
function outermost(path: readonly PathVertex[]): Vec2[] {
  return path.flatMap(({ at, bulge }, k) => {
    const next = path[(k + 1) % path.length]?.at ?? at
    // An arc that turns left lies to the right of its chord, at most chord × bulge / 2 from it.
    const off: Vec2 = [((next[1] - at[1]) * bulge) / 2, ((at[0] - next[0]) * bulge) / 2]
    return [at, [at[0] + off[0], at[1] + off[1]], [next[0] + off[0], next[1] + off[1]]] as const
  })
}
