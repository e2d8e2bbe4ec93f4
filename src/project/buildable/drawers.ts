import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import type { DrawersSpec } from '../types.ts'
import type { Room } from './bays.ts'
import { checkReveals } from './front.ts'

/** Drawers must leave a groove with wood behind it, a box between the clearances, and fronts with a size. */
export function checkDrawers(context: Context, drawers: DrawersSpec, room: Room, thickestPanel: number): void {
  checkBox(context, drawers, room)
  checkHeights(context, drawers, room, thickestPanel)
  const { fronts } = drawers
  if (fronts === undefined) return
  checkReveals(context, fronts, thickestPanel)
  const beyond = fronts.lay === 'inset' ? -fronts.insetGap : thickestPanel
  const width = room.width + 2 * beyond
  if (width <= NOISE_MM) {
    const what = `the gaps leave no drawer front in an opening ${context.show(room.width)} wide`
    context.report([...fronts.at, 'inset gap'], what, { expected: 'smaller gaps, or a wider opening' })
  }
  const centres = fronts.pull?.item.centres ?? 0
  if (fronts.pull !== undefined && width > NOISE_MM && centres >= width) {
    const what = `the pull does not fit on a drawer front ${context.show(width)} wide`
    context.report([...fronts.at, 'pull', 'item'], what, { expected: 'a shorter pull, or a wider opening' })
  }
  if (fronts.lay === 'inset' && room.depth <= fronts.stock.thickness + NOISE_MM) {
    const what = `an inset front ${context.show(fronts.stock.thickness)} thick leaves no depth behind it`
    context.report([...fronts.at, 'lay'], what, { expected: 'a deeper module, or lay: overlay' })
  }
}

function checkBox(context: Context, { box, at }: DrawersSpec, room: Room): void {
  const side = box.stock.thickness
  if (box.bottom === 'grooved' && box.grooveDepth >= side) {
    const what = `${context.show(box.grooveDepth)} cuts right through a side that is ${context.show(side)} thick`
    context.report([...at, 'box', 'groove depth'], what, { expected: `less than ${context.show(side)}` })
  }
  const clear = box.clearanceAbove + box.clearanceBelow
  if (clear >= room.height) {
    const what = `${context.show(clear)} above and below leave no box in an opening ${context.show(room.height)} high`
    const key = box.clearanceAbove > box.clearanceBelow ? 'clearance above' : 'clearance below'
    context.report([...at, 'box', key], what, { expected: `less than ${context.show(room.height)} together` })
  }
}

/** Fixed heights that no opening of that height takes, whatever its fronts cover. */
function checkHeights(context: Context, drawers: DrawersSpec, room: Room, thickestPanel: number): void {
  const { stack, fronts, at } = drawers
  const beyond = fronts === undefined ? 0 : fronts.lay === 'inset' ? -fronts.insetGap : thickestPanel
  const most = room.height + 2 * beyond
  const gaps = (stack.length - 1) * (fronts?.gap ?? 0)
  const sum = stack.reduce((total, place) => total + (place.height ?? 0), 0)
  const shared = stack.some((place) => place.height === undefined)
  if (shared ? sum + gaps < most - NOISE_MM : sum + gaps <= most + NOISE_MM) return
  const what = `the heights take ${context.show(sum)} and the gaps ${context.show(gaps)}; there are ${context.show(Math.max(0, most))} at most`
  const path = context.source.place([...at, 'stack']) === undefined ? at : [...at, 'stack']
  context.report(path, what, { expected: 'lower drawers, or fewer', on: 'key' })
}
