import type { Bay } from '../project/index.ts'
import type { Opening } from './carcase.ts'
import { merge, type Parts } from './parts.ts'
import type { Leaf } from './plate-wall.ts'
import { looseShelves } from './shelves.ts'
import type { Walk } from './walk.ts'

export interface Filled {
  readonly parts: Parts
  readonly leaves: readonly Leaf[]
}

/** What stands in a bay that is not split. */
export function leaf(walk: Walk, bay: Bay, opening: Opening): Filled {
  const leaves = [{ bay, opening }]
  if (bay.looseShelves === undefined) return { parts: merge([]), leaves }
  const parts = looseShelves({
    module: walk.spec.key,
    spec: bay.looseShelves,
    opening,
    sidesFoot: walk.sidesFoot,
    firstNumber: walk.next.shelf,
    rowNumber: walk.next.pins++,
  })
  walk.next.shelf += bay.looseShelves.count
  return { parts, leaves }
}
