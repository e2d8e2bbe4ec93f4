import { NOISE_MM } from '../../geometry/index.ts'
import type { ItemKind } from '../../hardware/index.ts'
import type { Bore, EdgeName, Panel } from '../../panel/index.ts'
import { typedLength } from '../typed.ts'
import type { Mend, Subject } from '../types.ts'

const ALONE: readonly ItemKind[] = ['dowel', 'through screw', 'one-piece screw']

/**
 * A fastener too near the end of its joint: the end distance at which it has so much more wood, mm. Nothing where the edge
 * does not lie across the line of its fellows, since then the end distance does not move it from there.
 */
export function longerEndDistance(
  { designs, project }: Subject,
  panel: Panel,
  bore: Bore,
  { edge, by }: { readonly edge: EdgeName | undefined; readonly by: number },
): Mend | undefined {
  const [use] = bore.uses
  const piece = use && designs.pieceOf(use.hardware)
  if (use === undefined || piece?.joint === undefined || edge === undefined) return undefined
  // A cam stands with its dowels, and a pocket leans: their places are not the end distance alone.
  if (!ALONE.includes(piece.item.kind)) return undefined
  const { edges } = panel
  const axis = edges.x0 === edge || edges.x1 === edge ? 0 : 1
  const apart = (other: Bore): boolean => Math.abs(other.at[axis] - bore.at[axis]) > NOISE_MM
  const fellows = panel.bores.filter((other) => other.uses.some(({ series }) => series === use.series))
  if (!fellows.some(apart)) return undefined
  const size = axis === 0 ? panel.length : panel.width
  const now = Math.min(bore.at[axis], size - bore.at[axis])
  const value = typedLength(now + by, project.units, 'up')
  // Where the joint is that of the whole carcase, a group of its own needs to say its fastener, too.
  const change = [
    { path: [...piece.joint, 'fasten'], value: piece.item.id },
    { path: [...piece.joint, 'end distance'], value },
  ]
  return { fix: `set \`end distance: ${value}\``, change }
}
