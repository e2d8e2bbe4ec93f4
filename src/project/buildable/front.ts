import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import type { DefinitionPath, FourEdges, FrontLay, FrontSpec } from '../types.ts'
import type { Room } from './bays.ts'

const EDGES: readonly (keyof FourEdges<unknown>)[] = ['left', 'right', 'top', 'bottom']

/** A front must have a size, lie over the panels it covers, and take the hinges and the pull within its edges. */
export function checkFront(context: Context, front: FrontSpec, room: Room, thickestPanel: number): void {
  const door = largestDoor(front, room, thickestPanel)
  if (door.width <= NOISE_MM || door.height <= NOISE_MM) {
    const gaps = front.kind === 'pair' ? 'the gaps leave no doors' : 'the gaps leave no door'
    const what = `${gaps} in an opening of ${context.show(room.width)} × ${context.show(room.height)}`
    context.report(front.at, what, { expected: 'smaller gaps, or a larger opening', on: 'key' })
    return
  }
  checkReveals(context, front, thickestPanel)
  checkHingeHeights(context, front, door.height)
  checkPull(context, front, door)
}

/** The size that a door cannot exceed, mm; for an inset front it is the size itself. */
function largestDoor(front: FrontSpec, room: Room, thickestPanel: number): { width: number; height: number } {
  const beyond = front.lay === 'inset' ? -front.insetGap : thickestPanel
  const width = room.width + 2 * beyond
  return { width: front.kind === 'pair' ? (width - front.gap) / 2 : width, height: room.height + 2 * beyond }
}

/** An overlay front must lie over the panels around its opening. */
export function checkReveals(context: Context, front: FrontLay, thickestPanel: number): void {
  if (front.lay === 'inset') return
  for (const edge of EDGES) {
    const reveal = front.reveal[edge]
    if (reveal < thickestPanel) continue
    const all: DefinitionPath = [...front.at, 'reveal']
    const one: DefinitionPath = [...all, edge]
    const what = `${context.show(reveal)} leaves nothing of the front over a panel ${context.show(thickestPanel)} thick`
    context.report(context.source.place(one) === undefined ? all : one, what, {
      expected: `less than ${context.show(thickestPanel)}`,
    })
  }
}

function checkHingeHeights(context: Context, front: FrontSpec, doorHeight: number): void {
  const { hinges, at } = front
  if (typeof hinges === 'number' || hinges === 'auto') return
  hinges.forEach((height, i) => {
    if (height < doorHeight) return
    context.report([...at, 'hinges', i], `${context.show(height)} lies above the door`, {
      expected: `less than ${context.show(doorHeight)}`,
    })
  })
}

function checkPull(context: Context, front: FrontSpec, door: { width: number; height: number }): void {
  const { pull, at } = front
  if (pull === undefined) return
  const report = (key: string, what: string, most: number) =>
    context.report([...at, 'pull', key], what, {
      expected: most > 0 ? `less than ${context.show(most)}` : 'a shorter pull, or a larger door',
    })
  if (pull.edgeDistance >= door.width) {
    const what = `${context.show(pull.edgeDistance)} lies beyond a door ${context.show(door.width)} wide`
    report('edge distance', what, door.width)
  }
  const room = door.height - pull.item.centres
  if (pull.end !== 'middle' && pull.endDistance >= room) {
    const what = `the pull does not fit on a door ${context.show(door.height)} high, ${context.show(pull.endDistance)} from its end`
    report('end distance', what, room)
  } else if (room <= 0) {
    report('item', `the pull does not fit on a door ${context.show(door.height)} high`, 0)
  }
}
