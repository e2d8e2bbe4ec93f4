import { type Box, cross, NOISE_MM } from '../../geometry/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding } from '../types.ts'
import { mm, panelWords } from '../words.ts'
import { type Floor, type Front, type Hung, OPENING, type Still, spanAlong } from './floor.ts'
import { boundsOf, eachAxis, SHAVING_MM } from './parts-of.ts'
import { grouped, type Scene } from './scene.ts'
import { firstStop as firstTurnStop, stillWords } from './turning-front.ts'

interface Stop {
  /** How far the drawer comes out, mm. */
  readonly out: number
  readonly what: string
  readonly still: Still
}

/** Drawers that meet something still before they are out as far as their slides go. */
export function pulling(scene: Scene, floor: Floor): Finding[] {
  const share = limitOf(scene.subject.project, 'drawer-room', 'warn')
  const doors = grouped(
    floor.fronts.filter(({ hung }) => hung?.flap === false),
    ({ module }) => module.key,
  )
  return floor.fronts.flatMap((front): Finding[] => {
    const { travel } = front
    if (travel === undefined) return []
    const enough = (travel * share) / 100
    const stop = firstStop(floor, front, travel)
    if (stop !== undefined && stop.out < enough - NOISE_MM) return [stopFinding(front, travel, stop)]
    return (doors.get(front.module.key) ?? []).flatMap((door) => behindDoor(floor, front, door, travel, enough))
  })
}

function stopFinding(front: Front, travel: number, stop: Stop): Finding {
  const own = stop.still.module.key === front.module.key
  const short = mm(travel - stop.out)
  return {
    rule: own ? 'drawer-room' : 'corner-swing',
    severity: 'warn',
    panels: [front.panel.id, stop.still.panel.id],
    places: [],
    message: `${panelWords(front.panel)} ${outWords(stop, travel)} meets ${stillWords(front, stop.still)}`,
    fix: own
      ? 'give the drawer another height or place'
      : `leave ${short} mm more before it: a filler at the corner, or another place for one of the modules`,
    at: front.panel.at,
  }
}

const outWords = ({ out, what }: Stop, travel: number): string =>
  out < SHAVING_MM ? `cannot come out, since ${what}` : `comes out only ${mm(out)} mm of ${mm(travel)} before ${what}`

/** An inner drawer whose door is stopped before it stands at a right angle, and hangs in its way. */
function behindDoor(floor: Floor, front: Front, door: Front, travel: number, enough: number): Finding[] {
  const { hung } = door
  const stop = hung && firstTurnStop(floor, door, hung)
  if (hung === undefined || stop === undefined || stop.degrees >= 90) return []
  const out = Math.min(...front.boxes.map(({ box }) => outBehind(box, door, hung, stop.degrees)))
  if (out >= Math.min(travel, enough) - NOISE_MM) return []
  return [
    {
      rule: 'drawer-room',
      severity: 'warn',
      panels: [front.panel.id, door.panel.id],
      places: [],
      message: `${panelWords(front.panel)} comes out only ${mm(out)} mm of ${mm(travel)} behind ${door.panel.name}, which opens only to ${Math.floor(stop.degrees)}°`,
      fix: `let ${door.panel.name} open to a right angle: hang it at its other edge, or leave more room before it`,
      at: front.panel.at,
    },
  ]
}

/** How far a box behind a door comes out until its near edge meets the hidden face of the door at that angle, mm. */
function outBehind(box: Box, door: Front, { pivot, across, width }: Hung, degrees: number): number {
  const free = Number.POSITIVE_INFINITY
  const axis = cross(across, door.out)
  const leaf = door.boxes[0]?.box ?? box
  const [low, high] = spanAlong(leaf, axis, pivot)
  const [from, to] = spanAlong(box, axis, pivot)
  const [near] = spanAlong(box, across, pivot)
  const [behind, lead] = spanAlong(box, door.out, pivot)
  const [hidden] = spanAlong(leaf, door.out, pivot)
  if (from >= high || to <= low || near >= width || near < 0 || behind > hidden || lead > hidden) return free
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  // The hidden face lies at `hidden` behind the show face; a point of it, `along` from the hinge edge, turned:
  // across: along × cos − hidden × sin, out: along × sin + hidden × cos.
  const along = (near + hidden * s) / c
  if (along > width) return free
  return Math.max(0, Math.max(0, along) * s + hidden * c - lead)
}

/** The box about all places that a drawer can come to. */
export function travelled(front: Front, travel: number): Box {
  const { min, max } = boundsOf(front.boxes.map(({ box }) => box))
  return {
    min: eachAxis((k) => min[k] + Math.min(0, front.out[k] * travel)),
    max: eachAxis((k) => max[k] + Math.max(0, front.out[k] * travel)),
  }
}

function firstStop(floor: Floor, front: Front, travel: number): Stop | undefined {
  const stills = floor.stillsNear(travelled(front, travel), 0).flatMap((k) => floor.stills[k] ?? [])
  let first: Stop | undefined
  for (const still of stills) {
    if (front.ids.has(still.panel.id) || !floor.together(still.module, front.module)) continue
    // The doors before an inner drawer are open when it is pulled.
    if (still.module.key === front.module.key && OPENING.includes(still.panel.role)) continue
    for (const { box, words } of front.boxes) {
      const out = gapAhead(front, box, still.box)
      if (out !== undefined && out < travel - NOISE_MM && (first === undefined || out < first.out)) {
        first = { out, what: words, still }
      }
    }
  }
  return first
}

/** How far a box can go out until it meets another; nothing where it passes beside it. */
function gapAhead({ out }: Front, box: Box, other: Box): number | undefined {
  for (const k of [0, 1, 2] as const) {
    if (out[k] === 0 && Math.min(box.max[k], other.max[k]) - Math.max(box.min[k], other.min[k]) <= SHAVING_MM)
      return undefined
  }
  const [, lead] = spanAlong(box, out, [0, 0, 0])
  const [near] = spanAlong(other, out, [0, 0, 0])
  return near - lead < -SHAVING_MM ? undefined : Math.max(0, near - lead)
}
