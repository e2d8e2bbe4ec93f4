import type { Said } from './context.ts'
import type { DefinitionPath } from './types.ts'

/** A type of which any part may be missing: what stays of raw data when the parts with problems are taken out. */
export type Loose<T> = T extends readonly (infer U)[]
  ? readonly (Loose<U> | undefined)[]
  : T extends object
    ? { readonly [K in keyof T]?: Loose<T[K]> | undefined }
    : T

/** One group of keys, and where it stands. */
export interface Layer<T> {
  readonly raw: Loose<T>
  readonly path: DefinitionPath
  /** A word that stands for a group of one key: that key has no place of its own. */
  readonly bare?: boolean
}

/** The same group, said at several places: the nearest comes first and wins, key by key. */
export type Layers<T> = readonly Layer<T>[]

/** The first layer that says a key, with its value and place. */
export function said<T extends object, K extends keyof T & string>(
  layers: Layers<T>,
  key: K,
): Said<NonNullable<Loose<T>[K & keyof Loose<T>]>> | undefined {
  for (const { raw, path, bare } of layers) {
    const value = (raw as Readonly<Record<string, unknown>>)[key]
    if (value !== undefined) return { value: value as never, path: bare ? path : [...path, key] }
  }
  return undefined
}

/** True when a value is a group of keys. */
export function isGroup(value: unknown): value is { readonly [key: string]: unknown } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** A group as layers, a bare word as a group of one key: `back: inset` says what `back: {sits: inset}` says. */
export function asLayers<T extends object>(
  values: readonly (Said<unknown> | undefined)[],
  key: keyof T & string,
): Layers<T> {
  return values.flatMap((one) => {
    if (one === undefined) return []
    if (isGroup(one.value)) return [{ raw: one.value as Loose<T>, path: one.path }]
    return [{ raw: { [key]: one.value } as Loose<T>, path: one.path, bare: true }]
  })
}

/** Layers of a group that a module and common both may say. */
export function layersOf<T extends object>(values: readonly (Said<unknown> | undefined)[]): Layers<T> {
  return values.flatMap((one) =>
    one !== undefined && isGroup(one.value) ? [{ raw: one.value as Layers<T>[number]['raw'], path: one.path }] : [],
  )
}
