import { NOISE_MM } from '../../geometry/index.ts'
import { baySizes } from '../bay-sizes.ts'
import type { Context } from '../context.ts'
import type { Bay, ModuleSpec, Split } from '../types.ts'
import { checkDrawers } from './drawers.ts'
import { checkFront } from './front.ts'
import { checkShelves } from './shelves.ts'

/** Clear sizes of an opening, mm. */
export interface Room {
  readonly width: number
  readonly height: number
  /** From the front of the opening to the inside of the back. */
  readonly depth: number
  /** There is no panel above, or below, that a flap could hang from. */
  readonly openAbove?: boolean
  readonly openBelow?: boolean
  /** A fixed front lies before it. */
  readonly shut?: boolean
}

/** Walks the openings of a module with their clear sizes and reports what does not fit into them. */
export function checkBays(context: Context, spec: ModuleSpec, room: Room): void {
  const { top, bottom } = spec.carcase
  checkBay(context, spec, spec.inside, { ...room, openAbove: top === 'none', openBelow: bottom === 'none' })
}

function checkBay(context: Context, spec: ModuleSpec, bay: Bay, room: Room): void {
  const { front, looseShelves, drawers, split } = bay
  if (front !== undefined) checkFront(context, front, room, thickestPanel(spec))
  const takes = front?.lay === 'inset' ? front.stock.thickness : 0
  const depth = room.depth - takes
  if (front !== undefined && depth <= NOISE_MM) {
    const what = `an inset front ${context.show(takes)} thick leaves no depth behind it`
    context.report([...front.at, 'lay'], what, { expected: 'a deeper module, or lay: overlay' })
    return
  }
  const shut = room.shut === true || front?.kind === 'fixed'
  const inner = { ...room, depth, shut }
  if (shut && drawers !== undefined) {
    context.report(drawers.at, 'drawers behind a fixed front cannot be pulled out', {
      expected: 'a door or flap before them, or drawers with fronts of their own',
      on: 'key',
    })
  }
  if (looseShelves !== undefined) checkShelves(context, looseShelves, inner)
  if (drawers !== undefined) checkDrawers(context, drawers, inner, thickestPanel(spec))
  if (split !== undefined) checkSplit(context, spec, bay, split, inner)
}

function checkSplit(context: Context, spec: ModuleSpec, bay: Bay, split: Split, room: Room): void {
  const path = [...bay.at, split.direction]
  const unsure = split.bays.some((child) => ['size', 'share'].some((key) => context.troubled([...child.at, key])))
  if (unsure) return
  const beside = split.direction === 'side by side'
  const sizes = baySizes(beside ? room.width : room.height, split, context.units)
  if (typeof sizes === 'string') {
    const unsized = split.bays.some((child) => child.size === undefined)
    context.report(path, sizes, {
      expected: unsized ? 'smaller sizes or fewer bays' : 'sizes that fill the opening, or one bay without a size',
      on: 'key',
    })
    return
  }
  const last = split.bays.length - 1
  split.bays.forEach((child, i) => {
    const size = sizes[i]
    if (size === undefined) return
    const between = { openAbove: i === 0 && room.openAbove === true, openBelow: i === last && room.openBelow === true }
    checkBay(context, spec, child, beside ? { ...room, width: size } : { ...room, ...between, height: size })
  })
}

/** No overlay front reaches further past its opening than this, mm. */
function thickestPanel(spec: ModuleSpec): number {
  const dividers = (bay: Bay): number =>
    (bay.split?.bays ?? []).reduce((most, child) => Math.max(most, dividers(child)), bay.split?.stock.thickness ?? 0)
  return Math.max(spec.stock.thickness, spec.carcase.rails?.stock.thickness ?? 0, dividers(spec.inside))
}
