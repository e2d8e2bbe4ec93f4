import { type Box, cross, norm, type Vec2, type Vec3 } from '../../geometry/index.ts'
import { mm as mmWords } from '../../length/index.ts'
import { type DefinitionPath, limitOf } from '../../project/index.ts'
import type { Finding } from '../types.ts'
import { panelWords } from '../words.ts'
import { type Floor, type Front, type Hung, type Still, spanAlong } from './floor.ts'
import { SHAVING_MM } from './parts-of.ts'
import type { Scene } from './scene.ts'
import { firstTurn } from './turning.ts'

/** The floor is long and deep enough for any flap, mm. */
const FLOOR_MM = 10_000
const DEGREES = 180 / Math.PI

/** What stops a front as it turns. */
export interface Stop {
  readonly degrees: number
  /** What of it meets: nothing for the front itself, else `its pull `. */
  readonly what: string
  /** Nothing for the floor. */
  readonly still?: Still
}

/** Doors and flaps that meet something still before they are open as far as they should be. */
export function swings(scene: Scene, floor: Floor): Finding[] {
  return floor.fronts.flatMap((front) => {
    const { hung } = front
    if (hung === undefined) return []
    const stop = firstStop(floor, front, hung)
    return stop === undefined ? [] : (findingOf(scene, floor, front, hung, stop) ?? [])
  })
}

/** A flap hung at the bottom is held by its stays where it lies level. */
const opensTo = ({ hung }: { readonly hung: Hung }): number =>
  hung.flap && hung.across[2] > 0 ? Math.min(90, hung.hinge.openingDeg) : hung.hinge.openingDeg

/** The first thing that a front meets within its hinges' opening angle. */
export function firstStop(floor: Floor, front: Front, hung: Hung): Stop | undefined {
  const most = opensTo({ hung })
  const axis = cross(hung.across, front.out)
  const reach = sweptBox(front, hung)
  const stills = floor.stillsNear(reach, 0).flatMap((k) => floor.stills[k] ?? [])
  const around = stills.filter((still) => canMeet(floor, front, hung, still))
  const parts = front.boxes.map((part) => ({ ...part, flat: cornersOf(part.box, hung, front.out) }))
  let first: Stop | undefined
  const take = (radians: number | undefined, what: string, still?: Still): void => {
    if (radians === undefined) return
    const degrees = radians * DEGREES
    if (degrees >= most || (first !== undefined && degrees >= first.degrees)) return
    first = { degrees, what, ...(still !== undefined && { still }) }
  }
  for (const still of around) {
    const flat = cornersOf(still.box, hung, front.out)
    for (const { box, words, flat: moving } of parts) {
      if (shared(spanAlong(box, axis, hung.pivot), spanAlong(still.box, axis, hung.pivot))) {
        take(firstTurn(moving, flat), words, still)
      }
    }
  }
  // Upright across: the front comes down toward the floor.
  if (hung.flap && hung.across[2] > 0) {
    const ground = rectangle([-hung.pivot[2] - FLOOR_MM, -hung.pivot[2]], [-FLOOR_MM, FLOOR_MM])
    for (const { words, flat } of parts) take(firstTurn(flat, ground), words)
  }
  return first
}

const shared = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > SHAVING_MM

/** What stands out before the shut front, in the same island; not what turns with it. */
function canMeet(floor: Floor, front: Front, hung: Hung, { module, panel, box }: Still): boolean {
  if (front.ids.has(panel.id) || !floor.together(module, front.module)) return false
  return spanAlong(box, front.out, hung.pivot)[1] > SHAVING_MM
}

/** A box as a rectangle in the plane in which a front turns: across from its pivot, and out. */
function cornersOf(box: Box, { pivot, across }: Hung, out: Vec3): Vec2[] {
  return rectangle(spanAlong(box, across, pivot), spanAlong(box, out, pivot))
}

const rectangle = ([u0, u1]: readonly [number, number], [v0, v1]: readonly [number, number]): Vec2[] => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
]

/** The box about all places that a front can come to, floor frame. */
export function sweptBox(front: Front, { pivot }: Hung): Box {
  const around = boundsOf(front.boxes.map(({ box }) => box))
  const far = norm(
    [0, 1, 2].map((k) =>
      Math.max(Math.abs(around.min[k as 0] - pivot[k as 0]), Math.abs(around.max[k as 0] - pivot[k as 0])),
    ) as unknown as Vec3,
  )
  const grow = (k: 0 | 1 | 2): readonly [number, number] => {
    const turning = front.out[k] !== 0 || front.hung?.across[k] !== 0
    return turning ? [pivot[k] - far, pivot[k] + far] : [around.min[k], around.max[k]]
  }
  const [x, y, z] = [grow(0), grow(1), grow(2)]
  return { min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] }
}

export function boundsOf(boxes: readonly Box[]): Box {
  const low = (k: 0 | 1 | 2): number => Math.min(...boxes.map(({ min }) => min[k]))
  const high = (k: 0 | 1 | 2): number => Math.max(...boxes.map(({ max }) => max[k]))
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] }
}

function findingOf(scene: Scene, floor: Floor, front: Front, hung: Hung, stop: Stop): Finding[] | undefined {
  const { project } = scene.subject
  const { module, panel } = front
  const { still } = stop
  const corner =
    still !== undefined && still.module.floorFromModule.x !== module.floorFromModule.x && turned(front, still)
  const rule = hung.flap ? 'flap-arc' : corner ? 'corner-swing' : 'door-swing'
  const enough = limitOf(project, rule, 'warn')
  const short = stop.degrees < enough
  // A flap that stops beyond that still holds what lies behind it open.
  if (!short && hung.flap) return undefined
  const met = still === undefined ? 'the floor' : stillWords(front, still)
  const offered = short ? otherHand(scene, floor, front, hung, enough) : undefined
  return [
    {
      rule,
      severity: short ? 'warn' : 'note',
      panels: [panel.id, ...(still === undefined ? [] : [still.panel.id])],
      places: [],
      message: `${panelWords(panel)} opens only to ${Math.floor(stop.degrees)}° before ${stop.what === '' ? 'it' : stop.what.trimEnd()} meets ${met}${short ? '' : `; its hinges open ${mmWords(hung.hinge.openingDeg)}°`}`,
      ...(offered ?? (short ? { fix: fixWords(hung) } : {})),
      at: panel.at,
    },
  ]
}

/** Whether what stands still belongs to a module that looks another way. */
const turned = ({ out }: Front, { module: { floorFromModule } }: Still): boolean =>
  out[0] * floorFromModule.y[0] + out[1] * floorFromModule.y[1] > -0.5

/** What is met, with its module where that is another. */
export const stillWords = ({ module }: Front, { module: other, words }: Still): string =>
  other.key === module.key ? words : `${words} of ${other.name}`

const fixWords = ({ flap }: Hung): string =>
  flap ? 'hang it at another edge, or leave more room there' : 'hang it at its other edge, or leave more room beside it'

/** The same door hung at its other edge, where it opens far enough. */
function otherHand(
  scene: Scene,
  floor: Floor,
  front: Front,
  hung: Hung,
  enough: number,
): Pick<Finding, 'fix' | 'change'> | undefined {
  const { panel } = front
  const at: DefinitionPath = panel.at
  const [only, pull] = front.boxes
  const single = !panel.name.endsWith(' left') && !panel.name.endsWith(' right')
  if (hung.flap || !single || only === undefined) return undefined
  const flipped: Hung = {
    ...hung,
    pivot: [0, 1, 2].map((k) => hung.pivot[k as 0] + hung.across[k as 0] * hung.width) as unknown as Vec3,
    across: [-hung.across[0], -hung.across[1], -hung.across[2]],
  }
  // Its pull goes to the other edge with it: mirrored about the middle of the door.
  const mirrored = pull === undefined ? [] : [{ ...pull, box: mirroredBox(pull.box, only.box, hung.across) }]
  const stop = firstStop(floor, { ...front, boxes: [only, ...mirrored] }, flipped)
  if (stop !== undefined && stop.degrees < enough) return undefined
  const leftNow = scene.subject.assembly.hardware.some(
    ({ stations, item }) =>
      item.kind === 'cup hinge' && stations.some((one) => one.panel === panel.id && one.pose.x[0] > 0),
  )
  const hang = leftNow ? 'right' : 'left'
  return { fix: `hang it at its ${hang} edge (\`hang: ${hang}\`)`, change: [{ path: [...at, 'hang'], value: hang }] }
}

function mirroredBox(box: Box, about: Box, across: Vec3): Box {
  const flip = (k: 0 | 1 | 2, value: number): number => (across[k] === 0 ? value : about.min[k] + about.max[k] - value)
  return {
    min: [
      Math.min(flip(0, box.min[0]), flip(0, box.max[0])),
      Math.min(flip(1, box.min[1]), flip(1, box.max[1])),
      box.min[2],
    ],
    max: [
      Math.max(flip(0, box.min[0]), flip(0, box.max[0])),
      Math.max(flip(1, box.min[1]), flip(1, box.max[1])),
      box.max[2],
    ],
  }
}
