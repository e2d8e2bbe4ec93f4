import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import type { LooseShelvesSpec } from '../types.ts'
import type { Room } from './bays.ts'

/** Loose shelves must leave wood between their clearances, and all of them must fit on top of each other. */
export function checkShelves(context: Context, shelves: LooseShelvesSpec, room: Room): void {
  const { count, stock, clearance, frontSetback, rearGap, at } = shelves
  if (room.width - 2 * clearance <= NOISE_MM) {
    const what = `${context.show(clearance)} at each end leaves no shelf in an opening ${context.show(room.width)} wide`
    context.report([...at, 'clearance'], what, { expected: `less than ${context.show(room.width / 2)}` })
  }
  if (room.depth - frontSetback - rearGap <= NOISE_MM) {
    const what =
      `front setback ${context.show(frontSetback)} and rear gap ${context.show(rearGap)} leave no shelf in an ` +
      `opening ${context.show(room.depth)} deep`
    context.report([...at, 'front setback'], what, { expected: `less than ${context.show(room.depth)} together` })
  }
  if (count * stock.thickness >= room.height) {
    const what = `${count} shelves ${context.show(stock.thickness)} thick do not fit in ${context.show(room.height)}`
    context.report(at, what, { expected: 'fewer shelves, or a higher opening', on: 'key' })
  }
}
