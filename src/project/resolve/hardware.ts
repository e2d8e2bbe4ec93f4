import type { Item, ItemKind, ItemOf } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { orList } from '../schema/kinds.ts'
import type { DefinitionPath } from '../types.ts'
import { someOf } from './stock.ts'

/**
 * The item of that name, the project's own or the catalogue's, of one of some kinds. `undefined` when there is none, which is reported;
 * `more` are words that are allowed besides names, `wanted` what the kinds
 * are called together.
 */
export function itemNamed<K extends ItemKind>(
  context: Context,
  said: Said<string>,
  kinds: readonly K[],
  more: readonly string[] = [],
  wanted: string = orList(kinds),
): ItemOf<K> | undefined {
  const fitting = context.hardware.ofKinds(kinds)
  const found = fitting.find((item) => item.id === said.value)
  if (found !== undefined) return found
  const names = [...more, ...fitting.map((item) => item.id)]
  if (context.hardware.isTroubled(said.value)) return undefined
  const other = context.hardware.find(said.value)
  if (other !== undefined) {
    const what = `${quoted(said.value)} is a ${other.kind}, not a ${wanted}`
    context.report(said.path, what, { expected: someOf(names) })
    return undefined
  }
  reportUnknown(context, said, names)
  return undefined
}

/** Reports a name that no piece of hardware has. */
export function reportUnknown(context: Context, said: Said<string>, names: readonly string[]): void {
  const cut = cutByComment(context, said.path, said.value, names)
  if (cut !== undefined) {
    const what = `${quoted(said.value)} ends before the #, which begins a comment`
    context.report(said.path, what, { expected: `the name in quotes: "${cut}"` })
    return
  }
  const what = `there is no hardware ${quoted(said.value)}`
  context.report(said.path, what, { expected: someOf(names), nearest: context.nearest(said.value, names) })
}

/** The catalogue's item that stands for a kind where none is named, as the project has it. */
export function usualItem<K extends ItemKind>(context: Context, kind: K, id: string): ItemOf<K> {
  const item = context.hardware.usual(kind).find((one) => one.id === id)
  if (item === undefined) throw new Error(`the catalogue has no ${kind} "${id}"`)
  return item
}

/** The name that was meant when a bare `screw #8x1-3/4` was cut at its number sign, which begins a comment in YAML. */
function cutByComment(
  context: Context,
  path: DefinitionPath,
  value: string,
  names: readonly string[],
): string | undefined {
  const comment = context.source.place(path)?.comment
  if (comment === undefined) return undefined
  const whole = `${value} #${comment}`
  return names.find((name) => name.includes('#') && (whole === name || whole.startsWith(`${name} `)))
}

/** Diameter of the largest hole that an item wants, mm: two fasteners nearer than this would share a hole. */
export function largestBore(item: Item): number {
  const drillings = Object.values(item.parts).flat()
  return Math.max(0, ...drillings.map((drilling) => Math.max(drilling.diameter, drilling.sink?.diameter ?? 0)))
}
