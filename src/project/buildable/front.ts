import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import type { DefinitionPath, FixedFrontSpec, FourEdges, FrontLay, FrontSpec } from '../types.ts'
import type { Room } from './bays.ts'

type Hung = Exclude<FrontSpec, FixedFrontSpec>

const EDGES: readonly (keyof FourEdges<unknown>)[] = ['left', 'right', 'top', 'bottom']

/**
 * A front must have a size, lie over the panels it covers, and take the hinges and the pull within its edges; a flap
 * needs a panel to hang from.
 */
export function checkFront(context: Context, front: FrontSpec, room: Room, thickestPanel: number): void {
  const door = largestDoor(front, room, thickestPanel)
  if (door.width <= NOISE_MM || door.height <= NOISE_MM) {
    const gaps = front.kind === 'pair' ? 'the gaps leave no doors' : `the gaps leave no ${wordFor(front)}`
    const what = `${gaps} in an opening of ${context.show(room.width)} × ${context.show(room.height)}`
    context.report(front.at, what, { expected: 'smaller gaps, or a larger opening', on: 'key' })
    return
  }
  checkReveals(context, front, thickestPanel)
  if (front.kind === 'fixed') return
  checkHung(context, front, room)
  checkHinges(context, front, door)
  checkPull(context, front, door)
}

/** What a front is called in a sentence. */
function wordFor({ kind }: FrontSpec): string {
  if (kind === 'fixed') return 'front'
  return kind === 'flap' ? 'flap' : 'door'
}

interface Size {
  readonly width: number
  readonly height: number
}

/** The size that a front cannot exceed, mm; for an inset front it is the size itself. */
function largestDoor(front: FrontSpec, room: Room, thickestPanel: number): Size {
  const insetGap = front.kind === 'fixed' ? 0 : front.insetGap
  const beyond = front.lay === 'inset' ? -insetGap : thickestPanel
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

function checkHung(context: Context, front: Hung, room: Room): void {
  if (front.kind !== 'flap') return
  const missing = front.hang === 'top' ? room.openAbove === true : room.openBelow === true
  if (!missing) return
  const at: DefinitionPath = [...front.at, 'hang']
  const [panel, other] = front.hang === 'top' ? ['top', 'bottom'] : ['bottom', 'top']
  context.report(
    context.source.place(at) === undefined ? front.at : at,
    `the carcase has no ${panel} that the flap could hang from`,
    { expected: `hang: ${other}, or a carcase with a ${panel}`, on: 'key' },
  )
}

function checkHinges(context: Context, front: Hung, door: Size): void {
  const { hinges, at } = front
  if (typeof hinges === 'number' || hinges === 'auto') return
  const flap = front.kind === 'flap'
  const along = flap ? door.width : door.height
  hinges.forEach((distance, i) => {
    if (distance < along) return
    const what = `${context.show(distance)} lies ${flap ? 'beyond the flap' : 'above the door'}`
    context.report([...at, 'hinges', i], what, { expected: `less than ${context.show(along)}` })
  })
}

function checkPull(context: Context, front: Hung, door: Size): void {
  const { pull, at } = front
  if (pull === undefined) return
  const report = (key: string, what: string, most: number) =>
    context.report([...at, 'pull', key], what, {
      expected: most > 0 ? `less than ${context.show(most)}` : `a shorter pull, or a larger ${word}`,
    })
  const flap = front.kind === 'flap'
  const word = wordFor(front)
  const [across, along] = flap ? [door.height, door.width] : [door.width, door.height]
  const size = `${context.show(along)} ${flap ? 'wide' : 'high'}`
  if (pull.edgeDistance >= across) {
    const what = `${context.show(pull.edgeDistance)} lies beyond a ${word} ${context.show(across)} ${flap ? 'high' : 'wide'}`
    report('edge distance', what, across)
  }
  const room = along - pull.item.centres
  if (pull.end !== 'middle' && pull.endDistance >= room) {
    const what = `the pull does not fit on a ${word} ${size}, ${context.show(pull.endDistance)} from its end`
    report('end distance', what, room)
  } else if (room <= 0) {
    report('item', `the pull does not fit on a ${word} ${size}`, 0)
  }
}
