import { type Bay, baySizes, type FourEdges, type FrontLay, overlayFronts, type Split } from '../../project/index.ts'
import type { Bound } from './carcase.ts'

/** A bay as one sees it from in front, module frame, mm. */
export interface Cell {
  readonly bay: Bay
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
  /** Thickness of the panel at each edge, 0 where there is none: no overlay front of this bay reaches further. */
  readonly reach: FourEdges<number>
}

export type Edge = keyof FourEdges<unknown>

const OPPOSITE: Record<Edge, Edge> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' }

/** The cells of the bays of a split, from the left or from the top. Throws when their sizes do not fill the opening. */
export function splitCells(cell: Cell, split: Split): Cell[] {
  const beside = split.direction === 'side by side'
  const sizes = baySizes(beside ? cell.x1 - cell.x0 : cell.z1 - cell.z0, split)
  if (typeof sizes === 'string') throw new Error(`${cell.bay.at.join(' › ')}: ${sizes}`)
  const t = split.stock.thickness
  let before = 0
  return split.bays.map((bay, k) => {
    const size = sizes[k] ?? 0
    const from = before
    before += size + t
    const [near, far] = beside ? (['left', 'right'] as const) : (['top', 'bottom'] as const)
    const reach = {
      ...cell.reach,
      ...(k > 0 && { [near]: t }),
      ...(k < split.bays.length - 1 && { [far]: t }),
    }
    return beside
      ? { ...cell, bay, x0: cell.x0 + from, x1: cell.x0 + from + size, reach }
      : { ...cell, bay, z1: cell.z1 - from, z0: cell.z1 - from - size, reach }
  })
}

/** An opening with its bay as a cell. */
export function cellOf(
  bay: Bay,
  opening: Pick<Cell, 'x0' | 'x1' | 'z0' | 'z1'> & { readonly [edge in Edge]: Bound | undefined },
): Cell {
  const { x0, x1, z0, z1, left, right, top, bottom } = opening
  const of = (bound: Bound | undefined): number => bound?.thickness ?? 0
  return { bay, x0, x1, z0, z1, reach: { left: of(left), right: of(right), top: of(top), bottom: of(bottom) } }
}

/**
 * The overlay fronts that a front with this lay meets over the panel at one edge of its opening: those that lie against the
 * panel's far side, at any depth of the bays there, anywhere along the stretch that the front can cover. Fronts that
 * only come near each other round the corner of a crossing count, since both could reach over it.
 */
export function frontsBeyond(cell: Cell, lay: FrontLay, edge: Edge, beyond: Cell | undefined): FrontLay[] {
  if (beyond === undefined) return []
  const [from, to] = stretch(cell, edge)
  return facing(beyond, OPPOSITE[edge]).flatMap(({ cell: other, lays }) => {
    const [low, high] = stretch(other, edge)
    return lays.filter(({ gap }) => {
      const apart = Math.max(gap, lay.gap)
      return low < to + apart && from < high + apart
    })
  })
}

/** What a front over a cell can cover along one of its edges, at most. */
function stretch({ x0, x1, z0, z1, reach }: Cell, edge: Edge): readonly [from: number, to: number] {
  return edge === 'left' || edge === 'right' ? [z0 - reach.bottom, z1 + reach.top] : [x0 - reach.left, x1 + reach.right]
}

/** The overlay fronts over a cell or the bays in it that reach one of its edges. */
function facing(cell: Cell, edge: Edge): { readonly cell: Cell; readonly lays: FrontLay[] }[] {
  const lays = overlayFronts(cell.bay).map(({ lay }) => lay)
  if (lays.length > 0) return [{ cell, lays }]
  const { split } = cell.bay
  if (split === undefined) return []
  const cells = splitCells(cell, split)
  const across = split.direction === 'side by side' ? ['left', 'right'] : ['top', 'bottom']
  if (!across.includes(edge)) return cells.flatMap((one) => facing(one, edge))
  const last = edge === 'left' || edge === 'top' ? cells[0] : cells.at(-1)
  return last === undefined ? [] : facing(last, edge)
}
