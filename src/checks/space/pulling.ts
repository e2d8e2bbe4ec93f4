import { type Box, NOISE_MM } from '../../geometry/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding } from '../types.ts'
import { mm, panelWords } from '../words.ts'
import { type Floor, type Front, OPENING, type Still, spanAlong } from './floor.ts'
import { SHAVING_MM } from './parts-of.ts'
import type { Scene } from './scene.ts'
import { boundsOf, stillWords } from './swings.ts'

interface Stop {
  /** How far the drawer comes out, mm. */
  readonly out: number
  readonly what: string
  readonly still: Still
}

/** Drawers that meet something still before they are out as far as their slides go. */
export function pulling(scene: Scene, floor: Floor): Finding[] {
  return floor.fronts.flatMap((front): Finding[] => {
    const { travel } = front
    if (travel === undefined) return []
    const stop = firstStop(floor, front, travel)
    const share = limitOf(scene.subject.project, 'drawer-room', 'warn')
    if (stop === undefined || stop.out >= (travel * share) / 100) return []
    const own = stop.still.module.key === front.module.key
    return [
      {
        rule: own ? 'drawer-room' : 'corner-swing',
        severity: 'warn',
        panels: [front.panel.id, stop.still.panel.id],
        places: [],
        message: `${panelWords(front.panel)} comes out only ${mm(stop.out)} mm of ${mm(travel)} before ${stop.what === '' ? 'it' : stop.what.trimEnd()} meets ${stillWords(front, stop.still)}`,
        fix: own
          ? 'give the drawer another height or place'
          : `leave ${mm(travel - stop.out)} mm more before it: a filler at the corner, or another place for one of the modules`,
        at: front.panel.at,
      },
    ]
  })
}

/** The box about all places that a drawer can come to. */
export function travelled(front: Front, travel: number): Box {
  const { min, max } = boundsOf(front.boxes.map(({ box }) => box))
  const low = (k: 0 | 1 | 2): number => min[k] + Math.min(0, front.out[k] * travel)
  const high = (k: 0 | 1 | 2): number => max[k] + Math.max(0, front.out[k] * travel)
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] }
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
