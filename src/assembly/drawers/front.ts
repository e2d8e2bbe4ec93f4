import { poseOf, X, Z } from '../../geometry/index.ts'
import type { JointScrew, Pull } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { DrawerFrontsSpec, DrawersSpec } from '../../project/index.ts'
import type { RuleId } from '../../rulebook/index.ts'
import { board, boardBox } from '../boards.ts'
import { faceScrew, placeFaceScrews } from '../joints/index.ts'
import { atLeast, atMost } from '../mend.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'
import { bottomReach } from './box.ts'
import type { Rectangle } from './stack.ts'

export interface DrawerFrontRequest {
  readonly module: string
  /** `drawer 1`. */
  readonly name: string
  readonly spec: DrawersSpec
  readonly fronts: DrawerFrontsSpec
  readonly place: Rectangle
  /** Plane of the hidden face, where the box begins. */
  readonly hidden: number
  readonly boxFront: PlacedPanel
}

/** Wood around a pull's hole in the box front, and between it and a screw's, mm; common practice. */
const HOLE_WALL_MM = 5
/** From the ends of the box front to the screws, in the order in which they are tried, mm; common practice. */
const SCREW_INSETS_MM = [70, 60, 85, 50, 100, 40]
/** The screws stand in two rows from this height up, mm; common practice. */
const TWO_ROWS_MM = 60
/** From the groove and from the upper edge to the screws, mm; common practice. */
const SCREW_EDGE_MM = 12

/** The show front of a drawer, the screws that hold it from inside the box, and its pull. */
export function drawerFront(request: DrawerFrontRequest): Parts {
  const { module, name, fronts, place, hidden } = request
  const t = fronts.stock.thickness
  const panel = board({
    module,
    role: 'drawer front',
    name: `${name} front`,
    stock: fronts.stock,
    box: { min: [place.x0, hidden - t, place.z0], max: [place.x1, hidden, place.z1] },
    at: fronts.at,
  })
  const pull = placePull(request, panel)
  const screws = placeScrews(request, panel, pull.hardware)
  return partsOf({
    panels: [panel],
    hardware: [...screws.hardware, ...pull.hardware],
    troubles: [...screws.troubles, ...pull.troubles],
  })
}

/** Two or four screws through the box front, clear of the groove, of its edges and of the pull's holes. */
function placeScrews(
  request: DrawerFrontRequest,
  panel: PlacedPanel,
  pulls: readonly PlacedHardware[],
): Pick<Parts, 'hardware' | 'troubles'> {
  const { module, name, spec, boxFront, hidden, fronts } = request
  const item = faceScrew(spec.faceScrews, boxFront.thickness, panel.thickness)
  if (item === undefined) {
    const words = spec.faceScrews.map((screw) => screw.id).join(', ')
    const trouble = stop(request, [panel.id, boxFront.id], 'drawer-front-screws', {
      message: `${name}: no screw holds a front of ${mm(panel.thickness)} mm through a box front of ${mm(boxFront.thickness)} mm; there are ${words}`,
      fix: thicker(spec, boxFront),
    })
    return { hardware: [], troubles: [trouble] }
  }
  return {
    hardware: placeFaceScrews({
      module,
      series: `${module}/${panel.key}+${boxFront.key}`,
      item,
      head: boxFront.id,
      tip: panel.id,
      poses: screwPlaces(request, item, pulls).map(([x, z]) => poseOf(X, Z, [x, hidden, z])),
      at: fronts.at,
    }),
    troubles: [],
  }
}

/** The thinnest front that the shortest of the screws to choose from holds without coming out. */
function thicker({ faceScrews }: DrawersSpec, { thickness }: PlacedPanel): string {
  for (let front = 3; front <= 60; front += 0.5) {
    if (faceScrew(faceScrews, thickness, front) !== undefined) return `take a front of ${mm(front)} mm or more`
  }
  return 'take another board for the box'
}

/** Middles of the screws, x and z in the module frame, mm: as near the usual inset as the pull's holes allow. */
function screwPlaces(
  { spec, boxFront }: DrawerFrontRequest,
  item: JointScrew,
  pulls: readonly PlacedHardware[],
): (readonly [x: number, z: number])[] {
  const box = boardBox(boxFront)
  const low = box.min[2] + bottomReach(spec.box) + SCREW_EDGE_MM
  const high = box.max[2] - SCREW_EDGE_MM
  const rows = high - low >= TWO_ROWS_MM ? [low + (high - low) / 6, high - (high - low) / 6] : [(low + high) / 2]
  const width = box.max[0] - box.min[0]
  const holes = pulls.flatMap((piece) => (piece.stations.length > 1 ? pullHoles(piece) : []))
  const near = (x: number, z: number): boolean =>
    holes.some((hole) => Math.hypot(hole.x - x, hole.z - z) < hole.radius + headRadius(item) + HOLE_WALL_MM)
  const places = (inset: number) =>
    [box.min[0] + inset, box.max[0] - inset].flatMap((x) => rows.map((z) => [x, z] as const))
  const insets = [...SCREW_INSETS_MM.filter((inset) => inset <= width / 4), width / 4]
  return places(insets.find((one) => places(one).every(([x, z]) => !near(x, z))) ?? width / 4)
}

function headRadius(item: JointScrew): number {
  const [hole] = item.parts.head ?? []
  return (hole?.sink?.diameter ?? hole?.diameter ?? 0) / 2
}

/** Middles of a pull's holes, module frame, mm; on a drawer the pull's y lies along x. */
function pullHoles(piece: PlacedHardware): { x: number; z: number; radius: number }[] {
  const origin = piece.stations[0]?.pose.origin ?? [0, 0, 0]
  return (piece.item.parts.front ?? []).map((hole) => ({
    x: origin[0] + hole.y,
    z: origin[2],
    radius: hole.diameter / 2,
  }))
}

/** The pull in the middle of the front; where it lies over the box front its holes go through both. */
function placePull(request: DrawerFrontRequest, panel: PlacedPanel): Pick<Parts, 'hardware' | 'troubles'> {
  const { module, fronts, place, hidden, boxFront } = request
  const { pull } = fronts
  if (pull === undefined) return { hardware: [], troubles: [] }
  const z = pull.edgeDistance === 'middle' ? (place.z0 + place.z1) / 2 : place.z1 - pull.edgeDistance
  const x = (place.x0 + place.x1) / 2
  const radius = Math.max(...(pull.item.parts.front ?? []).map((hole) => hole.diameter)) / 2
  const box = boardBox(boxFront)
  const wall = radius + HOLE_WALL_MM
  const reach = pull.item.centres / 2 + wall
  const through = x - reach >= box.min[0] && x + reach <= box.max[0] && z - wall >= box.min[2] && z + wall <= box.max[2]
  const beyond = z - radius >= box.max[2] || z + radius <= box.min[2]
  if (z - wall < place.z0 || (!through && !beyond)) {
    return { hardware: [], troubles: [pullTrouble(request, panel, pull.item, place.z1 - z, wall)] }
  }
  const at = (y: number) => poseOf(Z, X, [x, y, z])
  const series = `${module}/${panel.key}-pull`
  const hardware: PlacedHardware = {
    id: `${series}/1`,
    item: pull.item,
    frame: module,
    stations: [
      // On the show face, into the wood.
      { part: 'front', panel: panel.id, pose: at(hidden - panel.thickness), wood: 'ahead' },
      ...(through ? [{ part: 'box front', panel: boxFront.id, pose: at(hidden), wood: 'ahead' } as const] : []),
    ],
    settings: {},
    series,
    at: fronts.at,
  }
  return { hardware: [hardware], troubles: [] }
}

/** A pull `below` the upper edge of the front that lies beyond its lower edge, or whose holes cut the box front. */
function pullTrouble(
  request: DrawerFrontRequest,
  panel: PlacedPanel,
  item: Pull,
  below: number,
  wall: number,
): PlacingTrouble {
  const { place, boxFront, name, fronts } = request
  const height = place.z1 - place.z0
  const box = boardBox(boxFront)
  const wide = item.centres + 2 * wall > box.max[0] - box.min[0]
  const [upper, lower] = [place.z1 - box.max[2], place.z1 - box.min[2]]
  const [least, most] = [upper + wall, Math.min(lower, height) - wall]
  const path = [...fronts.at, 'pull', 'edge distance']
  const value = below < least ? atLeast(least) : atMost(most)
  const mending =
    wide || least > most
      ? { fix: 'take a shorter pull, or set `edge distance` so that it lies above the box' }
      : { fix: `set \`edge distance\` from ${atLeast(least)} to ${atMost(most)}`, change: [{ path, value }] }
  if (height - below < wall) {
    return stop(request, [panel.id], 'drawer-pull', {
      message: `${panel.name} is ${mm(height)} mm high; a pull ${mm(below)} mm below its upper edge does not lie on it`,
      ...mending,
    })
  }
  return stop(request, [panel.id, boxFront.id], 'drawer-pull', {
    message: `${name}: the holes of the ${item.id}, ${mm(below)} mm below the upper edge of the front, cut the edge of the box front; it lies from ${mm(upper)} to ${mm(lower)} mm`,
    ...mending,
  })
}

function stop(
  { fronts }: DrawerFrontRequest,
  panels: readonly string[],
  rule: RuleId,
  words: Pick<PlacingTrouble, 'message' | 'fix' | 'change'>,
): PlacingTrouble {
  return { rule, severity: 'stop', panels, ...words, at: fronts.at }
}
