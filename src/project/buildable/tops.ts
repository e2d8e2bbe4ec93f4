import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import { startOf, topSize } from '../top-sizes.ts'
import type { DefinitionPath, FromEdge, InsertSpec, MachineTopSpec, ModuleSpec, SlotSpec } from '../types.ts'

/** No cutter is narrower, mm; common practice. */
const NARROWEST_SLOT_MM = 1
/** No dust port is smaller, and no chamber lower, mm; common practice. */
const LEAST_CHAMBER_MM = 20

interface Size {
  readonly width: number
  readonly depth: number
}

/** Reports what of a machine top cannot be cut at all. */
export function checkMachineTop(context: Context, spec: ModuleSpec): void {
  const top = spec.machineTop
  if (top === undefined) return
  const board = topSize(spec, top.overhang)
  if (top.insert !== undefined) checkInsert(context, top, top.insert, board)
  for (const slot of top.slots) checkSlot(context, top, slot, board)
  checkChamber(context, spec, top)
}

function report(context: Context, at: DefinitionPath, what: string, expected: string): void {
  context.report(at, what, { expected, on: context.source.place(at) === undefined ? 'key' : 'value' })
}

function checkInsert(context: Context, top: MachineTopSpec, insert: InsertSpec, board: Size): void {
  const { show } = { show: (mm: number) => context.show(mm) }
  const { at, ledge, play } = insert
  checkReach(context, [...at, 'from left'], [...at, 'width'], insert.fromLeft, insert.width, play, board.width, 'wide')
  checkReach(
    context,
    [...at, 'from front'],
    [...at, 'depth'],
    insert.fromFront,
    insert.depth,
    play,
    board.depth,
    'deep',
  )
  const least = Math.min(insert.width, insert.depth)
  if (ledge.width >= least / 2 - NOISE_MM) {
    const what = `a ledge ${show(ledge.width)} wide all round closes an opening of ${show(insert.width)} × ${show(insert.depth)}`
    report(context, [...at, 'ledge', 'width'], what, `less than ${show(least / 2)}`)
  }
  if (ledge.depth >= top.stock.thickness - NOISE_MM) {
    const what = `${show(ledge.depth)} goes right through a top ${show(top.stock.thickness)} thick`
    report(context, [...at, 'ledge', 'depth'], what, `less than ${show(top.stock.thickness)}`)
  }
  if (2 * insert.cornerRadius > least + NOISE_MM) {
    const what = `corners of ${show(insert.cornerRadius)} are too large for a plate of ${show(insert.width)} × ${show(insert.depth)}`
    report(context, [...at, 'corner radius'], what, `at most ${show(least / 2)}`)
  }
}

/** A recess must lie within the top, on one axis. */
function checkReach(
  context: Context,
  placeAt: DefinitionPath,
  sizeAt: DefinitionPath,
  from: FromEdge,
  size: number,
  play: number,
  whole: number,
  dimension: 'wide' | 'deep',
): void {
  const room = whole - 2 * play
  if (size >= room - NOISE_MM) {
    const what = `the plate does not fit in a top ${context.show(whole)} ${dimension}`
    report(
      context,
      sizeAt,
      `${context.show(size)}: ${what}`,
      room > 0 ? `less than ${context.show(room)}` : 'a larger top',
    )
    return
  }
  const start = startOf(from, size, whole)
  if (start > play + NOISE_MM && start + size + play < whole - NOISE_MM) return
  const what = `a plate ${context.show(size)} ${dimension} at ${context.show(start)} reaches the edge of a top ${context.show(whole)} ${dimension}`
  report(
    context,
    placeAt,
    what,
    `centred, or more than ${context.show(play)} and less than ${context.show(whole - size - play)}`,
  )
}

function checkSlot(context: Context, top: MachineTopSpec, slot: SlotSpec, board: Size): void {
  const [beside, begin] = slot.along === 'width' ? ['from front', 'from left'] : ['from left', 'from front']
  const across = slot.along === 'width' ? board.depth : board.width
  const long = slot.along === 'width' ? board.width : board.depth
  if (slot.depth >= top.stock.thickness - NOISE_MM) {
    const what = `${context.show(slot.depth)} cuts right through a top ${context.show(top.stock.thickness)} thick`
    report(context, [...slot.at, 'depth'], what, `less than ${context.show(top.stock.thickness)}`)
  }
  if (slot.offset + slot.width >= across - NOISE_MM) {
    const what = `a slot ${context.show(slot.width)} wide at ${context.show(slot.offset)} does not lie on a top of ${context.show(across)}`
    report(context, [...slot.at, beside ?? ''], what, `less than ${context.show(Math.max(0, across - slot.width))}`)
  }
  if (slot.width < NARROWEST_SLOT_MM) {
    report(
      context,
      [...slot.at, 'width'],
      `${context.show(slot.width)} is no width of a slot`,
      `at least ${NARROWEST_SLOT_MM} mm`,
    )
  }
  const length = slot.length ?? long - slot.start
  if (slot.start + length > long + NOISE_MM || length <= NOISE_MM) {
    const at = slot.length === undefined ? begin : 'length'
    const what = `the slot would end ${context.show(slot.start + (slot.length ?? 0))} from the edge of a top of ${context.show(long)}`
    report(context, [...slot.at, at ?? ''], what, `a slot that ends at ${context.show(long)} or before`)
    return
  }
  const stopped = slot.start > NOISE_MM || slot.start + length < long - NOISE_MM
  if (stopped && length < slot.width + NOISE_MM) {
    const what = `a slot ${context.show(length)} long has no room for the round ends of a cutter ${context.show(slot.width)} wide`
    report(
      context,
      [...slot.at, slot.length === undefined ? (begin ?? '') : 'length'],
      what,
      `a slot longer than ${context.show(slot.width)}`,
    )
  }
}

function checkChamber(context: Context, spec: ModuleSpec, { chamber }: MachineTopSpec): void {
  if (chamber === undefined) return
  const top = spec.carcase.top === 'none' ? 0 : spec.stock.thickness
  const least = top + LEAST_CHAMBER_MM
  if (chamber.height < least - NOISE_MM) {
    const under = top === 0 ? '' : ` under a carcase top ${context.show(top)} thick`
    report(
      context,
      [...chamber.at, 'height'],
      `${context.show(chamber.height)} leaves no chamber${under}`,
      `at least ${context.show(least)}`,
    )
  }
  if (chamber.port !== undefined && chamber.port.diameter < LEAST_CHAMBER_MM) {
    const what = `${context.show(chamber.port.diameter)} is no diameter of a dust port`
    report(context, [...chamber.port.at, 'diameter'], what, `at least ${context.show(LEAST_CHAMBER_MM)}`)
  }
  if (chamber.port !== undefined && spec.carcase.back.sits === 'none') {
    context.report(chamber.port.at, 'the port needs a back to be cut into', {
      expected: 'carcase › back: applied, inset, grooved or rebated, or no port',
      on: 'key',
    })
  }
}
