import { type Context, quoted, type Said } from '../context.ts'
import { layersOf, said } from '../layers.ts'
import type { RawStands } from '../schema/definition.ts'
import { orList } from '../schema/kinds.ts'
import type { DefinitionPath, StandSpec } from '../types.ts'
import type { Nameable } from './rows.ts'
import { someOf, writtenName } from './stock.ts'

/** Ends that can be flush along a side; the first is the default. */
const LINES = {
  left: ['front', 'back', 'middle'],
  right: ['front', 'back', 'middle'],
  front: ['left', 'right', 'middle'],
  back: ['left', 'right', 'middle'],
} as const satisfies Record<StandSpec['side'], readonly StandSpec['lineUp'][]>

/**
 * Where a row stands; `undefined` when nothing is said, or the module that it stands against cannot be told, which is
 * reported. `placed` are the modules of earlier rows, by name.
 */
export function resolveStands(
  context: Context,
  stands: Said<unknown> | undefined,
  byName: ReadonlyMap<string, Nameable>,
  placed: ReadonlyMap<string, DefinitionPath>,
): StandSpec | undefined {
  if (stands === undefined) return undefined
  const layers = layersOf<RawStands>([stands])
  const against = anchor(context, said(layers, 'against'), byName, placed)
  const side = said(layers, 'at its')?.value
  const shift = context.lengthOr(said(layers, 'shift'), 0, { negative: true })
  const gap = context.lengthOr(said(layers, 'gap'), 0)
  const lineUp = side && resolveLineUp(context, said(layers, 'line up'), side)
  if (against === undefined || side === undefined || lineUp === undefined) return undefined
  const fronts = said(layers, 'fronts look')?.value ?? 'forward'
  return { against, side, fronts, lineUp, shift, gap, at: stands.path }
}

function anchor(
  context: Context,
  against: Said<number | string> | undefined,
  byName: ReadonlyMap<string, Nameable>,
  placed: ReadonlyMap<string, DefinitionPath>,
): string | undefined {
  if (against === undefined) return undefined
  const name = writtenName(context, against.path, against.value)
  const module = byName.get(name)
  if (module !== undefined && placed.has(name)) return module.key
  const known = [...placed.keys()]
  const what = module === undefined ? `there is no module ${quoted(name)}` : `${quoted(name)} stands in no earlier row`
  context.report(against.path, what, {
    expected: known.length === 0 ? 'a module of an earlier row; this is the first' : someOf(known),
    nearest: module === undefined ? context.nearest(name, known) : undefined,
  })
  return undefined
}

function resolveLineUp(
  context: Context,
  lineUp: Said<StandSpec['lineUp']> | undefined,
  side: StandSpec['side'],
): StandSpec['lineUp'] {
  const ends: readonly StandSpec['lineUp'][] = LINES[side]
  const first = LINES[side][0]
  if (lineUp === undefined || ends.includes(lineUp.value)) return lineUp?.value ?? first
  const what = `${quoted(lineUp.value)} has no meaning, since the row stands at the ${side}`
  context.report(lineUp.path, what, { expected: orList(ends) })
  return first
}
