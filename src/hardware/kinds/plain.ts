import type { Figure, Figures, Item } from '../types.ts'
import { type Builder, type FigureSpec, isSize } from './kind.ts'

/** Endings of field names that say another unit than mm, and no part of the trade word. */
const UNITS = [
  ['Kg', 'kilograms'],
  ['Deg', 'degrees'],
] as const

/** A field's trade word: `slideThickness` is `slide thickness`, `loadKg` is `load`. */
function wordOf(field: string): string {
  const ending = UNITS.find(([unit]) => field.endsWith(unit))?.[0] ?? ''
  const bare = field.slice(0, field.length - ending.length)
  return bare.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

/** How a field is written, by what stands in it; `undefined` for what is no figure. */
function specOf(field: string, value: unknown): FigureSpec | undefined {
  const form = formOf(field, value)
  if (form === undefined) return undefined
  const numbers = typeof value === 'object' && value !== null ? Object.values(value) : [value]
  const least = Math.min(...numbers.map(Number))
  const sign = least > 0 ? 'above 0' : least === 0 ? '0 or more' : 'any'
  return { field, form, sign, about: `Its ${wordOf(field)}.` }
}

function formOf(field: string, value: unknown): FigureSpec['form'] | undefined {
  if (typeof value === 'number') return UNITS.find(([unit]) => field.endsWith(unit))?.[1] ?? 'length'
  if (typeof value !== 'object' || value === null) return undefined
  const all = Object.values(value)
  if (all.length === 0 || !all.every((one) => typeof one === 'number')) return undefined
  if (Array.isArray(value)) return 'lengths'
  if (isSize(value as Figure)) return 'size'
  if (!('min' in value && 'max' in value)) return undefined
  return 'usual' in value ? 'range' : 'limits'
}

/**
 * A builder for an item whose kind has none: each field that holds numbers is a figure, by its name in words. The
 * drillings stay as they are, since nothing says how they follow; `holes` can replace them.
 */
export function plainBuilder(item: Item): { readonly builder: Builder; readonly figures: Figures } {
  const specs = Object.entries(item).flatMap(([field, value]) => specOf(field, value) ?? [])
  const fields = item as unknown as Figures
  return {
    builder: {
      kind: item.kind,
      figures: Object.fromEntries(specs.map((one) => [wordOf(one.field), one])),
      build: (identity, figures) => ({ ...item, ...figures, ...identity }) as Item,
      faults: () => [],
    },
    figures: Object.fromEntries(
      specs.flatMap(({ field }) => {
        const value = fields[field]
        return value === undefined ? [] : [[field, value] as const]
      }),
    ),
  }
}
