import type { Bay, FrontSpec, ModuleSpec, Split } from '../project/index.ts'
import { board } from './boards.ts'
import { type Bound, type Cell, cellOf, type Opening, splitCells } from './carcase/index.ts'
import { INSET_CLEARANCE_MM, type Leaf, placeFront } from './fronts/index.ts'
import { joinPanels, letIn } from './joints/index.ts'
import { type Filled, innerDrawers, leaf } from './leaf.ts'
import { merge, type Parts } from './parts.ts'
import type { Walk } from './walk.ts'

/** Everything inside the one opening of a shell: partitions, fixed shelves, pin rows, loose shelves, fronts. */
export function inside(spec: ModuleSpec, opening: Opening, sidesFoot: number, shell: Parts): Parts {
  const walk: Walk = {
    spec,
    sidesFoot,
    fronts: countFronts(spec.inside, ['door', 'pair']),
    flaps: countFronts(spec.inside, ['flap']),
    next: { partition: 1, fixedShelf: 1, shelf: 1, pins: 1, front: 1, flap: 1, frontPanel: 1, drawer: 1 },
    drawersPlaced: new Set(),
    panels: new Map(shell.panels.map((panel) => [panel.id, panel])),
    shell,
    plates: new Map(),
  }
  const filled = fill(walk, spec.inside, opening)
  return merge([filled.parts, innerDrawers(walk, filled.leaves)])
}

function countFronts(bay: Bay, kinds: readonly FrontSpec['kind'][]): number {
  const own = bay.front !== undefined && kinds.includes(bay.front.kind) ? 1 : 0
  return (bay.split?.bays ?? []).reduce((sum, child) => sum + countFronts(child, kinds), own)
}

function fill(walk: Walk, bay: Bay, opening: Opening): Filled {
  const behind = bay.front?.lay === 'inset' ? bay.front.stock.thickness + INSET_CLEARANCE_MM : 0
  const inner: Opening = { ...opening, front: opening.front + behind }
  const frontName = bay.front === undefined ? '' : nameFront(walk, bay.front)
  const filled = bay.split === undefined ? leaf(walk, bay, inner) : split(walk, bay, bay.split, inner)
  if (bay.front === undefined) return filled
  const front = placeFront(walk, bay, bay.front, opening, filled.leaves, frontName)
  return {
    parts: merge([filled.parts, front, innerDrawers(walk, filled.leaves, front)]),
    leaves: filled.leaves,
  }
}

/** Doors and flaps are numbered where there are several of them; fixed panels always are. */
function nameFront(walk: Walk, { kind }: FrontSpec): string {
  if (kind === 'fixed') return `front panel ${walk.next.frontPanel++}`
  if (kind === 'flap') return walk.flaps === 1 ? 'flap' : `flap ${walk.next.flap++}`
  const number = walk.next.front++
  return walk.fronts === 1 ? 'door' : `door ${number}`
}

function split(walk: Walk, bay: Bay, wanted: Split, opening: Opening): Filled {
  const beside = wanted.direction === 'side by side'
  const cells = splitCells(cellOf(bay, opening), wanted)
  const parts: Parts[] = []
  const leaves: Leaf[] = []
  // Bays are listed from the left or from the top; `rest` is what of the opening is still to be filled.
  let rest = opening
  wanted.bays.forEach((child, k) => {
    const [own, next] = [cells[k], cells[k + 1]]
    const divided = own === undefined || next === undefined ? undefined : divider(walk, wanted, rest, own, next)
    if (divided !== undefined) parts.push(divided.parts)
    const filled = fill(walk, child, divided?.before ?? rest)
    parts.push(filled.parts)
    leaves.push(...filled.leaves)
    // Pin rows that must not meet over the divider stand on the other parity than the bay on its left.
    if (divided !== undefined) rest = { ...divided.after, parity: beside ? flip(filled.leaves) : opening.parity }
  })
  return { parts: merge(parts), leaves }
}

/** The parity that the last of these bays does not have. */
function flip(leaves: readonly Leaf[]): 0 | 1 {
  return leaves.at(-1)?.opening.parity === 0 ? 1 : 0
}

/** The partition or fixed shelf between the first bay of an opening and the next, its joints, and the openings on both sides. */
function divider(
  walk: Walk,
  wanted: Split,
  opening: Opening,
  own: Cell,
  next: Cell,
): { parts: Parts; before: Opening; after: Opening } {
  const { spec } = walk
  const t = wanted.stock.thickness
  const beside = wanted.direction === 'side by side'
  // A board let in is longer at that end; one that meets no panel there is not.
  const before = letIn(wanted.joint, thicknessOf(beside ? opening.bottom : opening.left))
  const beyond = letIn(wanted.joint, thicknessOf(beside ? opening.top : opening.right))
  const low = beside ? own.x1 : own.z0 - t
  const panel = board({
    module: spec.key,
    role: beside ? 'partition' : 'fixed shelf',
    name: beside ? `partition ${walk.next.partition++}` : `fixed shelf ${walk.next.fixedShelf++}`,
    stock: wanted.stock,
    box: {
      min: [beside ? low : opening.x0 - before, opening.front, beside ? opening.z0 - before : low],
      max: [beside ? low + t : opening.x1 + beyond, opening.rear, beside ? opening.z1 + beyond : low + t],
    },
    at: spec.at,
  })
  const ends = beside ? [opening.bottom, opening.top] : [opening.left, opening.right]
  const bounds = ends.flatMap((bound) => (bound === undefined ? [] : [bound.panel, bound.also ?? []].flat()))
  const joints = bounds.flatMap((id) => {
    const head = walk.panels.get(id)
    return head === undefined
      ? []
      : [
          joinPanels({
            module: spec.key,
            head,
            tip: panel,
            joint: wanted.joint,
            at: spec.at,
            asked: [...wanted.at, 'dividers', 'joint'],
            limits: spec,
          }),
        ]
  })
  walk.panels.set(panel.id, panel)
  const bound = (beyond: Cell): Bound => ({ panel: panel.id, thickness: t, beyond })
  return {
    parts: merge([{ panels: [panel] }, ...joints]),
    before: beside ? { ...opening, x1: low, right: bound(next) } : { ...opening, z0: low + t, bottom: bound(next) },
    after: beside ? { ...opening, x0: low + t, left: bound(own) } : { ...opening, z1: low, top: bound(own) },
  }
}

const thicknessOf = (bound: Bound | undefined): number => bound?.thickness ?? 0
