import { NOISE_MM } from '../../geometry/index.ts'
import type { CupHinge } from '../../hardware/index.ts'
import type { PanelId } from '../types.ts'
import type { Span } from './hinge-rules.ts'

/** A hinge plate that a panel has already. Module frame, mm. */
export interface TakenPlate {
  readonly hinge: CupHinge
  /** From the module's front to its holes. */
  readonly plateLine: number
  /** Its middle along the hinge edge. */
  readonly at: number
  /** The edge of its door: a plate of a door hung at the other edge sits on the far face. */
  readonly hang: string
}

/** The plates placed so far, by the panel that they sit on. */
export type TakenPlates = Map<PanelId, TakenPlate[]>

/** Wood between the holes of two plates that are bored toward each other, mm; common practice, as for any two bores. */
const WALL_MM = 5

/** Offsets of a plate's holes along the hinge edge, mm. */
const holesAlong = (hinge: CupHinge): number[] => (hinge.parts.plate ?? []).map(({ y }) => y)

/** Half the distance between the holes of a plate, mm. */
function halfApart(hinge: CupHinge): number {
  const along = holesAlong(hinge)
  return (Math.max(...along) - Math.min(...along)) / 2
}

interface Wanted {
  readonly hinge: CupHinge
  readonly plateLine: number
  readonly hang: string
  /** Of the panel that takes the plates. */
  readonly thickness: number
}

/** Whether the holes of a plate at a place would meet, or nearly, those of plates on the far face of its panel. */
function meets(wanted: Wanted, taken: readonly TakenPlate[], at: number): boolean {
  return taken.some((other) => {
    if (other.hang === wanted.hang) return false
    return (wanted.hinge.parts.plate ?? []).some((hole) =>
      (other.hinge.parts.plate ?? []).some((far) => {
        const depth = [hole, far].reduce((sum, { depth: one }) => sum + (typeof one === 'number' ? one : 1e6), 0)
        if (depth + WALL_MM <= wanted.thickness + NOISE_MM) return false
        const along = at + hole.y - (other.at + far.y)
        const across = wanted.plateLine + hole.x - (other.plateLine + far.x)
        return Math.hypot(along, across) < (hole.diameter + far.diameter) / 2 + WALL_MM - NOISE_MM
      }),
    )
  })
}

/**
 * Places of hinges by rule, moved so that no plate meets one of another door on the far face of its panel: by half the
 * distance between the holes of a plate (16 mm, midway between the holes of a 32 mm grid), the outermost toward the
 * door's ends where there is room, or the next odd number of such steps. Common practice. One that finds no place stays,
 * and the checks say so.
 */
export function clearOfFarPlates(
  places: readonly number[],
  wanted: Wanted,
  taken: readonly TakenPlate[],
  limits: Span,
  fouls: (at: number) => boolean,
): number[] {
  const step = halfApart(wanted.hinge)
  return places.map((at, k) => {
    if (step <= NOISE_MM || !meets(wanted, taken, at)) return at
    const outward = k < places.length / 2 - NOISE_MM && k !== (places.length - 1) / 2 ? -1 : 1
    const tries = [1, 3, 5].flatMap((n) => [at + outward * n * step, at - outward * n * step])
    const free = (one: number): boolean =>
      one >= limits.from - NOISE_MM && one <= limits.to + NOISE_MM && !meets(wanted, taken, one) && !fouls(one)
    return tries.find(free) ?? at
  })
}
