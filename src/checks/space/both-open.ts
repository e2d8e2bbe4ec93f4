import {
  type Box,
  boxSolid,
  type Curve,
  cross,
  gapBetweenSolids,
  type Pose,
  poseOf,
  type Solid,
} from '../../geometry/index.ts'
import type { Finding } from '../types.ts'
import { panelWords } from '../words.ts'
import { type Floor, type Front, type Hung, spanAlong } from './floor.ts'
import { travelled } from './pulling.ts'
import { grouped, type Scene } from './scene.ts'
import { sweptBox } from './turning-front.ts'

/**
 * Fronts of two modules that look different ways and would meet if both were open: doors and flaps at up to a right angle,
 * drawers as far as they come out. One note for two modules; none where one of the two meets what stands still already.
 */
export function bothOpen({ finder }: Scene, floor: Floor, reported: readonly Finding[]): Finding[] {
  const known = new Set(reported.filter(({ rule }) => rule === 'corner-swing').flatMap(({ panels }) => panels))
  const swept = floor.fronts.map((front) => ({ front, box: roughly(front), solid: solidOf(front) }))
  const pairs = finder
    .pairs(
      swept.map(({ box }) => box),
      0,
    )
    .flatMap(([k, n]): (readonly [Front, Front])[] => {
      const [a, b] = [swept[k], swept[n]]
      if (a === undefined || b === undefined || !looksAnotherWay(a.front, b.front)) return []
      if (!floor.together(a.front.module, b.front.module)) return []
      return gapBetweenSolids(a.solid, b.solid) > 0 ? [] : [[a.front, b.front]]
    })
  const runs = grouped(pairs, ([a, b]) => JSON.stringify([a.module.key, b.module.key]))
  return [...runs.values()].flatMap((run): Finding[] => {
    const [pair] = run
    if (pair === undefined || run.some((both) => both.some(({ panel }) => known.has(panel.id)))) return []
    const [a, b] = pair
    const more = run.length === 1 ? '' : `, and so do ${run.length - 1} more pairs of their fronts`
    return [
      {
        rule: 'corner-swing',
        severity: 'note',
        panels: [a.panel.id, b.panel.id],
        places: [],
        message: `${panelWords(a.panel)} and ${panelWords(b.panel)} meet when both are open${more}`,
        fix: 'open one at a time',
        at: a.panel.at,
      },
    ]
  })
}

const looksAnotherWay = (a: Front, b: Front): boolean =>
  a.module.key !== b.module.key && a.out[0] * b.out[0] + a.out[1] * b.out[1] < 0.5

function roughly(front: Front): Box {
  return front.hung === undefined ? travelled(front, front.travel ?? 0) : sweptBox(front, front.hung)
}

const solidOf = (front: Front): Solid =>
  front.hung === undefined ? boxSolid(travelled(front, front.travel ?? 0)) : quarterDisc(front, front.hung)

/** The space that a door takes as it opens to a right angle; its thickness lies behind it all the way. */
function quarterDisc(front: Front, hung: Hung): Solid {
  const { width, pivot, across } = hung
  const axis = cross(across, front.out)
  const pose: Pose = poseOf(across, front.out, pivot)
  const [door] = front.boxes
  const [low, high] = door === undefined ? [0, 0] : spanAlong(door.box, axis, pivot)
  const quarter: Curve = { from: [width, 0], to: [0, width], bulge: Math.tan(Math.PI / 8) }
  const pieces: Curve[] = [{ from: [0, 0], to: [width, 0], bulge: 0 }, quarter]
  return { kind: 'prism', pose, pieces, low, high }
}
