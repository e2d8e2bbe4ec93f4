import type { Style } from './parsed.ts'
import type { Written } from './written.ts'

/** The longest line that a group or list in brackets may make; a longer one is written in block style. */
const WIDEST = 110

/** A value in one line, groups and lists in brackets. */
export function inline(value: Written, { json }: Pick<Style, 'json'>): string {
  if (typeof value === 'string') return value
  if ('items' in value) return `[${value.items.map((item) => inline(item, { json })).join(', ')}]`
  if (value.pairs.length === 0) return '{}'
  return `{ ${value.pairs.map(([key, one]) => `${key}: ${inline(one, { json })}`).join(', ')} }`
}

const isEmpty = (value: Written): boolean =>
  typeof value !== 'string' && ('items' in value ? value.items.length === 0 : value.pairs.length === 0)

/** True where a value has room on a line that is so many columns wide before it. */
export const fits = (value: Written, width: number, style: Style): boolean =>
  typeof value === 'string' || isEmpty(value) || width + 1 + inline(value, style).length <= WIDEST

/** What follows a key, a dash or an opening quote: words on the same line, or lines below it. */
export type Behind = { readonly same: string } | { readonly below: readonly string[] }

/** A value behind a key in block style whose line is so many columns wide up to there. */
export function behind(value: Written, width: number, indent: number, style: Style): Behind {
  if (typeof value === 'string' || fits(value, width, style)) return { same: inline(value, style) }
  return { below: blockLines(value, indent + style.step, style) }
}

/** The lines of a group or list in block style, without line ends. */
export function blockLines(value: Exclude<Written, string>, indent: number, style: Style): string[] {
  const margin = ' '.repeat(indent)
  if ('items' in value) return value.items.flatMap((item) => itemLines(item, indent, style))
  return value.pairs.flatMap(([key, one]) => {
    const start = `${margin}${key}:`
    const rest = behind(one, start.length, indent, style)
    return 'same' in rest ? [`${start} ${rest.same}`] : [start, ...rest.below]
  })
}

/** The lines of one item of a list in block style, its dash in a column. */
export function itemLines(item: Written, column: number, style: Style): string[] {
  const dash = `${' '.repeat(column)}- `
  if (typeof item === 'string' || fits(item, dash.length, style)) return [dash + inline(item, style)]
  const [first = '', ...others] = blockLines(item, column + 2, style)
  return [dash + first.trimStart(), ...others]
}
