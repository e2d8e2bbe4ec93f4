import { MINUS_X, MINUS_Z, NOISE_MM, poseOf, X, Y, Z } from '../geometry/index.ts'
import type { CupHinge } from '../hardware/index.ts'
import type { FrontSpec } from '../project/index.ts'
import type { Opening } from './carcase.ts'
import type { PlacedDoor } from './fronts.ts'
import {
  clearOfShelves,
  doorMass,
  HINGE_LIMIT,
  type HingeSetting,
  hingeHeights,
  hingesNeeded,
  type PlateGrid,
  solveOverlay,
} from './hinge-rules.ts'
import { type Parts, partsOf } from './parts.ts'
import type { PlateWall } from './plate-wall.ts'
import type { PlacedHardware, PlacingTrouble } from './types.ts'

export interface HingeRequest {
  readonly module: string
  readonly front: FrontSpec
  readonly door: PlacedDoor
  readonly opening: Opening
  readonly wall: PlateWall
}

const mm = (value: number): string => String(Math.round(value * 10) / 10)

/** The hinges of a door: cup and plate of each from one placing, so that they cannot disagree. */
export function placeHinges(request: HingeRequest): Parts {
  const { front, door } = request
  const chosen = chooseHinge(front, door.overlay)
  const panels = [door.panel.id]
  if ('nearest' in chosen) {
    const trouble: PlacingTrouble = {
      rule: 'hinge-overlay',
      severity: 'stop',
      panels,
      message: `${door.panel.name}: an overlay of ${mm(door.overlay)} mm is wanted, but no plate of ${chosen.hinge.id} gives it; the nearest is ${mm(chosen.nearest)} mm`,
      fix: `change the reveal or gap by ${mm(Math.abs(door.overlay - chosen.nearest))} mm, or choose another hinge`,
      at: front.at,
    }
    return partsOf({ troubles: [trouble] })
  }
  const { hinge, setting } = chosen
  const plateLine = plateLineOf(front, hinge, request.opening)
  const counted = countHinges(front, door)
  const room = cupRoom(hinge)
  const heights =
    typeof front.hinges === 'object'
      ? front.hinges.map((height) => door.z0 + height).sort((a, b) => a - b)
      : heightsByRule(request, counted.count, room, request.wall.gridAt(plateLine, ...plateHoles(hinge)))
  const hardware = heights.map((z, k) => placeHinge(request, hinge, setting, plateLine, z, k + 1))
  const troubles = [...counted.troubles, ...widthTroubles(request, hinge), ...heightTroubles(request, heights, room)]
  return partsOf({ hardware, troubles })
}

/** The first of the hinges to choose from that reaches the overlay with the usual cup distance most nearly. */
function chooseHinge(
  front: FrontSpec,
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
function plateLineOf(front: FrontSpec, hinge: CupHinge, opening: Opening): number {
  const inset = front.lay === 'inset' ? front.stock.thickness + hinge.insetExtra : 0
  return opening.front + inset + hinge.plateLine
}

function countHinges(front: FrontSpec, door: PlacedDoor): { count: number; troubles: PlacingTrouble[] } {
  const { length: height, width, thickness, stock } = door.panel
  const mass = doorMass(height, width, thickness, stock.density)
  const needed = hingesNeeded(height, width, mass)
  const asked =
    typeof front.hinges === 'number' ? front.hinges : typeof front.hinges === 'object' ? front.hinges.length : undefined
  const about = `${door.panel.name} is ${mm(height)} mm high, ${mm(width)} mm wide and weighs ${mm(mass)} kg`
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
          'divide the opening, or use a pair of doors or a lighter board',
        ),
      ],
    }
  }
  if (asked !== undefined && asked < needed) {
    return {
      count: asked,
      troubles: [
        trouble(
          'stop',
          `${about}; ${asked} hinges are asked for, it needs ${needed}`,
          `set \`hinges: ${needed}\` or leave it to the rule`,
        ),
      ],
    }
  }
  return { count: asked ?? needed, troubles: [] }
}

/** Evenly spread, on the grid of the pins if there is one, and clear of fixed shelves. */
function heightsByRule({ front, door, wall }: HingeRequest, count: number, room: number, grid?: PlateGrid): number[] {
  const heights = hingeHeights(door.z0, door.z1, count, { end: front.hingeEnd, room }, grid)
  const limits = { from: door.z0 + room, to: door.z1 - room }
  return heights.map((z) => clearOfShelves(z, wall.shelves, limits, grid?.pitch))
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

/** Cups must lie on the door, and not on each other. */
function heightTroubles(request: HingeRequest, heights: readonly number[], room: number): PlacingTrouble[] {
  const { door, front } = request
  const trouble = (message: string, fix: string): PlacingTrouble => ({
    rule: 'hinge-height',
    severity: 'stop',
    panels: [door.panel.id],
    message,
    fix,
    at: front.at,
  })
  const about = `${door.panel.name} is ${mm(door.z1 - door.z0)} mm high`
  const ends = heights
    .filter((z) => z - door.z0 < room - NOISE_MM || door.z1 - z < room - NOISE_MM)
    .map((z) => {
      const [end, from] = z - door.z0 < door.z1 - z ? ['lower', z - door.z0] : ['upper', door.z1 - z]
      return trouble(
        `${about}; a hinge ${mm(from)} mm from its ${end} end leaves no room for the cup`,
        `keep hinges at least ${mm(room)} mm from both ends of the door`,
      )
    })
  const pairs = heights.slice(1).flatMap((z, k) => {
    const apart = z - (heights[k] ?? z)
    if (apart >= 2 * room - NOISE_MM) return []
    return [
      trouble(`${about}; two of its hinges are only ${mm(apart)} mm apart`, `leave ${mm(2 * room)} mm between hinges`),
    ]
  })
  return [...ends, ...pairs]
}

/** One hinge at height z (module frame). Cup centre = cup distance + cup diameter / 2 from the door's edge [S9]. */
function placeHinge(
  request: HingeRequest,
  hinge: CupHinge,
  setting: HingeSetting,
  plateLine: number,
  z: number,
  number: number,
): PlacedHardware {
  const { door, opening, module } = request
  const fromEdge = setting.cupDistance + hinge.cupDiameter / 2
  const left = door.hang === 'left'
  const cup = left
    ? poseOf(X, Z, [door.x0 + fromEdge, door.hidden, z])
    : poseOf(MINUS_X, MINUS_Z, [door.x1 - fromEdge, door.hidden, z])
  const plate = left ? poseOf(Y, MINUS_Z, [opening.x0, plateLine, z]) : poseOf(Y, Z, [opening.x1, plateLine, z])
  return {
    id: `${module}/${door.panel.key}-hinge/${number}`,
    item: hinge,
    frame: module,
    stations: [
      { part: 'cup', panel: door.panel.id, pose: cup, wood: 'ahead' },
      { part: 'plate', panel: (left ? opening.left : opening.right).panel, pose: plate, wood: 'ahead' },
    ],
    settings: {},
    series: `${module}/${door.panel.key}-hinge`,
    note: `plate height ${mm(setting.plateHeight)} mm, cup distance ${mm(setting.cupDistance)} mm, overlay ${mm(door.overlay)} mm`,
    at: request.front.at,
  }
}
