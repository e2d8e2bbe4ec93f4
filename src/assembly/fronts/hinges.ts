import { NOISE_MM } from '../../geometry/index.ts'
import type { CupHinge } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { DoorSpec, FlapSpec } from '../../project/index.ts'
import type { Opening } from '../carcase/index.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PanelId, PlacedHardware, PlacingTrouble } from '../types.ts'
import type { PlacedDoor } from './fronts.ts'
import { type HingeLine, hingeLine } from './hinge-line.ts'
import {
  clearOfShelves,
  doorMass,
  foulsShelf,
  HINGE_LIMIT,
  type HingeSetting,
  hingeHeights,
  hingesNeeded,
  PLATE_REACH_MM,
  solveOverlay,
} from './hinge-rules.ts'
import { noOverlay, noWall, placeTroubles } from './hinge-troubles.ts'
import type { PlateWall } from './plate-wall.ts'
import { clearOfFarPlates, type TakenPlates } from './plates.ts'

export interface HingeRequest {
  readonly module: string
  readonly front: DoorSpec | FlapSpec
  readonly door: PlacedDoor
  readonly opening: Opening
  readonly wall: PlateWall
  /** Plates placed before; those of this door are added to them. */
  readonly taken: TakenPlates
}

/** The hinge of a door, its line, and how it is set. */
interface Setting {
  readonly hinge: CupHinge
  readonly setting: HingeSetting
  readonly line: HingeLine
  readonly plateLine: number
}

/** The hinges of a door or flap: cup and plate of each from one placing, so that they cannot disagree. */
export function placeHinges(request: HingeRequest): Parts {
  const { front, door, opening } = request
  const line = hingeLine(door, opening)
  if (line.wall === undefined) return partsOf({ troubles: [noWall(request)] })
  const chosen = chooseHinge(front, door.overlay)
  if ('nearest' in chosen) return partsOf({ troubles: [noOverlay(request, chosen)] })
  const plateLine = plateLineOf(front, chosen.hinge, opening)
  const set: Setting = { ...chosen, line, plateLine }
  const counted = countHinges(front, door)
  const places =
    typeof front.hinges === 'object'
      ? front.hinges.map((distance) => line.from + distance).sort((a, b) => a - b)
      : placesByRule(request, set, counted.count)
  const { panel } = line.wall
  const own = places.map((at) => ({ hinge: set.hinge, plateLine, at, hang: door.hang }))
  request.taken.set(panel, [...(request.taken.get(panel) ?? []), ...own])
  const hardware = places.map((at, k) => placeHinge(request, set, panel, at, k + 1))
  return partsOf({
    hardware,
    troubles: [
      ...counted.troubles,
      ...widthTroubles(request, set.hinge),
      ...placeTroubles(request, line, places, { hinge: set.hinge, room: cupRoom(set.hinge) }),
    ],
  })
}

/** The first of the hinges to choose from that reaches the overlay with the usual cup distance most nearly. */
function chooseHinge(
  front: DoorSpec | FlapSpec,
  overlay: number,
): { hinge: CupHinge; setting: HingeSetting } | { hinge: CupHinge; nearest: number } {
  const [first, ...rest] = front.hinge
  if (first === undefined) throw new Error(`there is no hinge for a door that is ${front.lay}`)
  let best: { hinge: CupHinge; setting: HingeSetting } | undefined
  let nearest = { hinge: first, nearest: Number.POSITIVE_INFINITY }
  for (const hinge of [first, ...rest]) {
    const solved = solveOverlay(hinge, overlay)
    if ('nearest' in solved) {
      if (Math.abs(solved.nearest - overlay) < Math.abs(nearest.nearest - overlay))
        nearest = { hinge, nearest: solved.nearest }
    } else if (best === undefined || offUsual(hinge, solved) < offUsual(best.hinge, best.setting) - NOISE_MM) {
      best = { hinge, setting: solved }
    }
  }
  return best ?? nearest
}

const offUsual = (hinge: CupHinge, setting: HingeSetting): number =>
  Math.abs(setting.cupDistance - hinge.cupDistance.usual)

/** Plate line from the module's front, mm: 37 behind the carcase's front edges, more by the door behind an inset one [S10]. */
function plateLineOf(front: DoorSpec | FlapSpec, hinge: CupHinge, opening: Opening): number {
  const inset = front.lay === 'inset' ? front.stock.thickness + hinge.insetExtra : 0
  return opening.front + inset + hinge.plateLine
}

/** Hinges a door; for a flap the same table is read along its hinge edge, which is the length of its panel. */
function countHinges(front: DoorSpec | FlapSpec, door: PlacedDoor): { count: number; troubles: PlacingTrouble[] } {
  const { length: height, width, thickness, stock } = door.panel
  const mass = doorMass(height, width, thickness, stock.density)
  const needed = hingesNeeded(height, width, mass)
  const asked =
    typeof front.hinges === 'number' ? front.hinges : typeof front.hinges === 'object' ? front.hinges.length : undefined
  const flap = front.kind === 'flap'
  const size = flap ? `${mm(height)} mm wide, ${mm(width)} mm high` : `${mm(height)} mm high, ${mm(width)} mm wide`
  const about = `${door.panel.name} is ${size} and weighs ${mm(mass)} kg`
  const trouble = (severity: 'stop' | 'warn', message: string, fix: string): PlacingTrouble => ({
    rule: 'door-hinges',
    severity,
    panels: [door.panel.id],
    message,
    fix,
    at: front.at,
  })
  if (needed === undefined) {
    return {
      count: asked ?? 5,
      troubles: [
        trouble(
          'stop',
          `${about}; cup hinges carry at most ${HINGE_LIMIT.mass} kg and ${HINGE_LIMIT.height} mm`,
          flap
            ? 'divide the opening, or use a lighter board'
            : 'divide the opening, or use a pair of doors or a lighter board',
        ),
      ],
    }
  }
  if (asked !== undefined && asked < needed) {
    return {
      count: asked,
      troubles: [
        {
          ...trouble(
            'stop',
            `${about}; ${asked} hinges are asked for, it needs ${needed}`,
            `set \`hinges: ${needed}\` or leave it to the rule`,
          ),
          change: [{ path: [...front.at, 'hinges'], value: needed }],
        },
      ],
    }
  }
  return { count: asked ?? needed, troubles: [] }
}

/** Evenly spread, on the grid of the pins if there is one, clear of fixed shelves and of plates on the wall's far face. */
function placesByRule({ front, door, wall, taken }: HingeRequest, set: Setting, count: number): number[] {
  const { hinge, line, plateLine } = set
  const room = cupRoom(hinge)
  const grid = wall.gridAt(plateLine, ...plateHoles(hinge))
  const even = hingeHeights(line.from, line.to, count, { end: front.hingeEnd, room }, grid)
  const limits = { from: line.from + room, to: line.to - room }
  const clear = even.map((at) => clearOfShelves(at, wall.shelves, limits, grid?.pitch))
  if (line.wall === undefined) return clear
  const wanted = { hinge, plateLine, hang: door.hang, thickness: line.wall.thickness }
  const there = taken.get(line.wall.panel) ?? []
  const onWall = {
    from: Math.max(limits.from, line.clear.from + PLATE_REACH_MM),
    to: Math.min(limits.to, line.clear.to - PLATE_REACH_MM),
  }
  return clearOfFarPlates(clear, wanted, there, onWall, (at) => foulsShelf(at, wall.shelves))
}

/** Half the length of the cup's pattern along the door's edge, and the least wall beyond it, mm. */
function cupRoom(hinge: CupHinge): number {
  return (
    Math.max(...(hinge.parts.cup ?? []).map((hole) => Math.abs(hole.y) + hole.diameter / 2)) + hinge.cupDistance.min
  )
}

/** Distance between the outer holes of the plate, and the diameter of its holes, mm. */
function plateHoles(hinge: CupHinge): [apart: number, diameter: number] {
  const holes = hinge.parts.plate ?? []
  const ys = holes.map((hole) => hole.y)
  return [Math.max(...ys) - Math.min(...ys), Math.max(...holes.map((hole) => hole.diameter))]
}

/** Small hinges are made for small doors. */
function widthTroubles({ door, front }: HingeRequest, hinge: CupHinge): PlacingTrouble[] {
  const most = hinge.doorWidthMax
  if (most === undefined || door.panel.width <= most + NOISE_MM) return []
  return [
    {
      rule: 'hinge-door-width',
      severity: 'warn',
      panels: [door.panel.id],
      message: `${door.panel.name} is ${mm(door.panel.width)} mm wide; ${hinge.id} is made for doors up to ${mm(most)} mm`,
      fix: 'choose a larger hinge, or use a pair of doors',
      at: front.at,
    },
  ]
}

/** One hinge at a place along its line. Cup centre = cup distance + cup diameter / 2 from the hinge edge [S9]. */
function placeHinge(
  { door, module, front }: HingeRequest,
  { hinge, setting, line, plateLine }: Setting,
  wall: PanelId,
  at: number,
  number: number,
): PlacedHardware {
  const series = `${module}/${door.panel.key}-hinge`
  return {
    id: `${series}/${number}`,
    item: hinge,
    frame: module,
    stations: [
      {
        part: 'cup',
        panel: door.panel.id,
        pose: line.cup(setting.cupDistance + hinge.cupDiameter / 2, at),
        wood: 'ahead',
      },
      { part: 'plate', panel: wall, pose: line.plate(plateLine, at), wood: 'ahead' },
    ],
    settings: {},
    series,
    note: `plate height ${mm(setting.plateHeight)} mm, cup distance ${mm(setting.cupDistance)} mm, overlay ${mm(door.overlay)} mm`,
    at: front.at,
  }
}
