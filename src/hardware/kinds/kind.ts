import type { Figure, Figures, Item, ItemKind } from '../types.ts'

/** What names a piece of hardware, apart from its figures. */
export interface Identity {
  readonly id: string
  readonly title: string
  readonly source: string
}

/**
 * How a figure is written: a length; a size `[x, y]`; a list of lengths; a range `{least, most, usual}` or without the
 * usual; a number of kilograms or degrees; one of some words; a free word.
 */
export type FigureForm = 'length' | 'size' | 'lengths' | 'range' | 'limits' | 'kilograms' | 'degrees' | 'word' | 'text'

/** Which lengths a figure may have. */
export type Sign = 'above 0' | '0 or more' | 'any'

/** One figure that a project can change: the field that it fills, and how it is written. */
export interface FigureSpec {
  readonly field: string
  readonly form: FigureForm
  readonly sign: Sign
  /** All words of form `word`. */
  readonly words?: readonly string[]
  /** A sentence for editors. */
  readonly about: string
}

/** A figure that cannot be, with its trade word and what would do. */
export interface Fault {
  readonly word: string
  readonly what: string
  readonly expected: string
}

/** A length in mm as the reader of the message writes lengths. */
export type Show = (mm: number) => string

/** How pieces of hardware of one kind are made of their figures. */
export interface Builder {
  readonly kind: ItemKind
  /** By the trade word that a definition uses. */
  readonly figures: Readonly<Record<string, FigureSpec>>
  /** The item; its drillings follow from the figures. */
  readonly build: (identity: Identity, figures: Figures) => Item
  /** What cannot be: figures that fit no board, or do not agree with each other. */
  readonly faults: (figures: Figures, show: Show) => readonly Fault[]
}

/** A builder with the types of its figures and items, for the catalogue. */
export interface KindBuilder<F extends Figures, I extends Item> extends Builder {
  readonly make: (identity: Identity & F) => I
}

/**
 * The builder of a kind. To add one: a file in this folder with the kind's figures as a type, the trade word of each
 * with its field and form, a function that makes the item of them, and what cannot be; and its line in index.ts.
 */
export function kindBuilder<F extends Figures, I extends Item>(parts: {
  readonly kind: ItemKind
  readonly figures: Readonly<Record<string, FigureSpec & { readonly field: keyof F & string }>>
  readonly build: (identity: Identity, figures: F) => I
  readonly faults: (figures: F, show: Show) => readonly Fault[]
}): KindBuilder<F, I> {
  const { kind, figures, faults } = parts
  const build = (identity: Identity, own: F): I => ({ ...parts.build(identity, own), figures: own })
  return {
    kind,
    figures,
    // The figures of an item came from its own kind, and are changed field by field in the form that `figures` names.
    build: (identity, own) => build(identity, own as F),
    faults: (own, show) => faults(own as F, show),
    make: ({ id, title, source, ...own }) => build({ id, title, source }, own as unknown as F),
  }
}

const spec =
  (form: FigureForm) =>
  <K extends string>(field: K, sign: Sign, about: string): FigureSpec & { field: K } => ({ field, form, sign, about })

/** Figures by form, for the tables of the kinds: field, sign, a sentence for editors. */
export const figure = {
  length: spec('length'),
  size: spec('size'),
  lengths: spec('lengths'),
  range: spec('range'),
  limits: spec('limits'),
  kilograms: <K extends string>(field: K, about: string) => spec('kilograms')(field, 'above 0', about),
  degrees: <K extends string>(field: K, about: string) => spec('degrees')(field, 'above 0', about),
  word: <K extends string>(field: K, words: readonly string[], about: string) => ({
    ...spec('word')(field, 'any', about),
    words,
  }),
  text: <K extends string>(field: K, about: string) => spec('text')(field, 'any', about),
}

/** A fault where `wrong`, else nothing. */
export function faultIf(wrong: boolean, word: string, what: string, expected: string): Fault[] {
  return wrong ? [{ word, what, expected }] : []
}

/** True for a figure that is a size. */
export const isSize = (value: Figure): value is { readonly x: number; readonly y: number } =>
  typeof value === 'object' && 'x' in value
