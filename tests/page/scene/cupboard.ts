import type { Look, Scene, SceneHole } from '../../../src/page/scene/index.ts'
import { sceneOf } from '../../../src/page/scene/index.ts'
import { built, ROUND_STOCK } from '../../support/define.ts'

/**
 * A cupboard on casters, 600 × 560 × 720, boards of 18, back of 6. Sides: x 0..18 and 582..600, y 20..554 (18 of the door and 2 of
 * its gap before them, 6 of the back behind), z 0..702 under the top. Fixed shelf 200 under the top: z 484..502. Door x 1.5..598.5,
 * y 0..18, z 1.5..500.5, hinged at the left. Underside 100 above the floor.
 */
export const cupboard = built(`${ROUND_STOCK}
modules:
  cupboard:
    width: 600
    depth: 560
    carcase height: 720
    stock: board
    base: { casters: caster 75, inset: 85 }
    carcase: { top: over, bottom: between, back: { sits: applied, stock: thin } }
    inside:
      stacked:
        - { size: 200 }
        - { loose shelves: 1, front: { kind: door, hang: left } }
`)

export const look = (wanted: Look): Scene => sceneOf(cupboard, wanted)

/** A hole of a scene by the end of its id; fails the test where it is not drawn. */
export function hole(scene: Scene, id: string): SceneHole {
  const found = scene.holes.find((one) => one.id === `cupboard/${id}`)
  if (found === undefined) throw new Error(`no hole ${id}`)
  return found
}

/** Rounded to 0.001, as drawn. */
export const rounded = (point: readonly number[]): number[] => point.map((value) => Math.round(value * 1000) / 1000 + 0)

/** The words of a kind, in the order of the alphabet. */
export const wordsOf = (scene: Scene, kind: string): string[] =>
  scene.words.flatMap((word) => (word.kind === kind ? [word.text] : [])).sort()
