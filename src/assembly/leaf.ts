import type { Bay } from '../project/index.ts'
import type { Opening } from './carcase/index.ts'
import { placeDrawers } from './drawers/index.ts'
import type { Leaf } from './fronts/index.ts'
import { merge, type Parts } from './parts.ts'
import { looseShelves } from './shelves.ts'
import type { Walk } from './walk.ts'

export interface Filled {
  readonly parts: Parts
  readonly leaves: readonly Leaf[]
}

/** What stands in a bay that is not split. Inner drawers wait for the doors before them: see `innerDrawers`. */
export function leaf(walk: Walk, bay: Bay, opening: Opening): Filled {
  const leaves = [{ bay, opening }]
  if (bay.drawers?.fronts !== undefined) return { parts: drawersIn(walk, { bay, opening }), leaves }
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

/** The inner drawers of those leaves that have none yet; `before` are the doors and hinges that they lie behind. */
export function innerDrawers(walk: Walk, leaves: readonly Leaf[], before?: Parts): Parts {
  const waiting = leaves.filter(({ bay }) => bay.drawers !== undefined && !walk.drawersPlaced.has(bay))
  return merge(waiting.map((one) => drawersIn(walk, one, before)))
}

function drawersIn(walk: Walk, { bay, opening }: Leaf, before?: Parts): Parts {
  const { drawers } = bay
  if (drawers === undefined) return merge([])
  walk.drawersPlaced.add(bay)
  const firstNumber = walk.next.drawer
  walk.next.drawer += drawers.stack.length
  return placeDrawers({
    module: walk.spec.key,
    moduleName: walk.spec.name,
    bay,
    spec: drawers,
    opening,
    owner: walk.spec,
    frontGap: walk.spec.frontGap,
    firstNumber,
    ...(before && { before }),
  })
}
