import { NOISE_MM } from '../../geometry/index.ts'
import { baySizes } from '../bay-sizes.ts'
import type { Context } from '../context.ts'
import type { Bay, CarcaseSpec, ModuleSpec, StretcherSpec } from '../types.ts'
import type { Room } from './bays.ts'
import { saidAt } from './said-at.ts'

/** What a top, or the rails in its place, takes of the height, mm. */
export function topThickness(carcase: CarcaseSpec, side: number): number {
  if (carcase.top === 'none') return 0
  return carcase.top === 'rails' ? (carcase.rails?.stock.thickness ?? 0) : side
}

/** Rails and stretchers must have room, and nothing in the carcase may run through a stretcher. */
export function checkStrips(context: Context, spec: ModuleSpec, room: Room): void {
  const { rails, stretchers } = spec.carcase
  if (rails !== undefined && 2 * rails.width >= room.depth - NOISE_MM) {
    const what = `two rails ${context.show(rails.width)} wide fill a depth of ${context.show(room.depth)}`
    context.report(saidAt(context, spec, 'carcase', 'rails', 'width'), what, {
      expected: `less than ${context.show(room.depth / 2)}, or top: between`,
    })
  }
  const floor = spec.carcase.bottom === 'none' ? 0 : spec.stock.thickness
  const placed = stretchers.map((stretcher) => ({ stretcher, ...extentOf(stretcher, floor, room) }))
  placed.forEach((one, i) => {
    if (!fits(context, one, floor, room)) return
    checkMeeting(context, one, placed.slice(0, i))
    checkInside(context, spec, one, floor, room)
  })
}

interface Placed {
  readonly stretcher: StretcherSpec
  readonly from: number
  readonly to: number
}

/** Heights of its lower and upper edge above the underside of the carcase, mm. */
function extentOf(stretcher: StretcherSpec, floor: number, room: Room): { from: number; to: number } {
  const { height, width } = stretcher
  const from = height === 'below top' ? floor + room.height - width : height
  return { from, to: from + width }
}

function fits(context: Context, { stretcher, from, to }: Placed, floor: number, room: Room): boolean {
  const top = floor + room.height
  if (from >= floor - NOISE_MM && to <= top + NOISE_MM) return true
  const what = `a stretcher from ${context.show(from)} to ${context.show(to)} does not lie within the carcase`
  context.report(stretcher.at, what, {
    expected: `between ${context.show(floor)} and ${context.show(top)}`,
    on: 'key',
  })
  return false
}

const overlap = (a: { from: number; to: number }, b: { from: number; to: number }): boolean =>
  Math.min(a.to, b.to) - Math.max(a.from, b.from) > NOISE_MM

function checkMeeting(context: Context, one: Placed, before: readonly Placed[]): void {
  const other = before.find((two) => two.stretcher.end === one.stretcher.end && overlap(one, two))
  if (other === undefined) return
  const { line } = context.source.locate(other.stretcher.at)
  const what = `this stretcher and the one on line ${line} are in the same place`
  context.report(one.stretcher.at, what, { expected: 'another height', on: 'key' })
}

/** Partitions, fixed shelves and inset fronts reach to the planes in which stretchers stand. */
function checkInside(context: Context, spec: ModuleSpec, one: Placed, floor: number, room: Room): void {
  const found = inTheWay(spec.inside, one, { from: floor, to: floor + room.height })
  if (found === undefined) return
  const what = `a stretcher from ${context.show(one.from)} to ${context.show(one.to)} runs into ${found}`
  context.report(one.stretcher.at, what, {
    expected: 'another height, or an inside that is not split there',
    on: 'key',
  })
}

/** What of a bay and of all within it a stretcher meets; `extent` is its clear height. */
function inTheWay(bay: Bay, one: Placed, extent: { from: number; to: number }): string | undefined {
  if (!overlap(one, extent)) return undefined
  if (bay.front?.lay === 'inset' && one.stretcher.end === 'front') return 'an inset front'
  const { split } = bay
  if (split === undefined) return undefined
  const beside = split.direction === 'side by side'
  if (beside) return 'a partition'
  const sizes = baySizes(extent.to - extent.from, split)
  if (typeof sizes === 'string') return undefined
  let top = extent.to
  for (const [i, child] of split.bays.entries()) {
    const from = top - (sizes[i] ?? 0)
    const inside = inTheWay(child, one, { from, to: top })
    if (inside !== undefined) return inside
    const shelf = { from: from - split.stock.thickness, to: from }
    if (i < split.bays.length - 1 && overlap(one, shelf)) return 'a fixed shelf'
    top = shelf.from
  }
  return undefined
}
