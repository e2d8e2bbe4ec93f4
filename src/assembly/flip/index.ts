import type { ModuleSpec } from '../../project/index.ts'
import { merge, type Parts } from '../parts.ts'
import type { PlacedPanel } from '../types.ts'
import { placeAxle, placeLocks } from './axle.ts'
import { flipPlace } from './place.ts'
import { platformBoards } from './platform.ts'
import { placeSkinScrews } from './skins.ts'
import { swingTroubles } from './swing.ts'

/**
 * The flip-over top of a module of that carcase height, if it has one: the platform as it rests, its axle, locking
 * bolts and screws, and what it would strike of the module's other panels.
 */
export function placeFlip(spec: ModuleSpec, height: number, others: readonly PlacedPanel[]): Parts {
  if (spec.flipOver === undefined) return merge([])
  const left = others.find((panel) => panel.role === 'left side')
  const right = others.find((panel) => panel.role === 'right side')
  if (left === undefined || right === undefined) throw new Error(`${spec.key} has no sides to turn a platform between`)
  const place = flipPlace(spec, spec.flipOver, height)
  const boards = platformBoards(place)
  const panels = [boards.upper, boards.front, boards.rear, boards.lower]
  return merge([
    { panels },
    placeAxle(place, { left, right }, boards),
    placeLocks(place, { left, right }, boards),
    placeSkinScrews(place, boards),
    { troubles: swingTroubles(place, others, boards) },
  ])
}
