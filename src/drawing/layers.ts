import { roundMm } from '../geometry/index.ts'
import type { LayerPatterns } from '../project/index.ts'
import type { Entity, Layer, Operation } from './types.ts'

/** What an entity is cut or drawn with; decides its layer. Lengths in mm, angle in degrees. */
export type Work =
  | { readonly kind: 'outline' }
  | { readonly kind: 'bore'; readonly diameter: number; readonly depth: number | 'through' }
  | { readonly kind: 'countersink'; readonly diameter: number; readonly angleDeg: number }
  | { readonly kind: 'groove' | 'rebate'; readonly width: number; readonly depth: number }
  | { readonly kind: 'cutout' }
  | { readonly kind: 'pocket'; readonly depth: number }
  | { readonly kind: 'mark' }
  | { readonly kind: 'note' }

/** Something drawn, and what it is made with. */
export interface Drawn {
  readonly work: Work
  readonly entity: Entity
}

/** Longest name that older readers take. */
const LONGEST = 31

/**
 * Sorts what is drawn onto layers: outline, cutouts, bores by diameter then depth, countersinks, grooves, rebates, pockets, marks, notes.
 * Works whose patterns give one name share a layer when they are one operation; a name that another operation has
 * already taken gets the operation's word added, so that a note can never land on a drill's layer.
 */
export function layersOf(drawn: readonly Drawn[], patterns: LayerPatterns): Layer[] {
  // The sort is stable: within a work, the order in which things were drawn stays.
  const sorted = drawn
    .map((one) => ({ ...one, ranks: ranksOf(one.work) }))
    .sort((a, b) => compareRanks(a.ranks, b.ranks))
  // Outline, marks and notes are on every drawing: they have the first claim, so their names are the same on all.
  const names = new NameBook()
  for (const kind of ['outline', 'mark', 'note'] as const) names.nameFor(kind, fullName({ kind }, patterns))
  const layers = new Map<string, { name: string; operation: Operation; entities: Entity[] }>()
  const layerOf = (work: Work): { entities: Entity[] } => {
    const operation = operationOf(work)
    const name = names.nameFor(operation, fullName(work, patterns))
    const layer = layers.get(name) ?? { name, operation, entities: [] }
    layers.set(name, layer)
    return layer
  }
  let last: { ranks: Ranks; layer: { entities: Entity[] } } | undefined
  for (const { work, ranks, entity } of sorted) {
    if (!last || compareRanks(last.ranks, ranks) !== 0) last = { ranks, layer: layerOf(work) }
    last.layer.entities.push(entity)
  }
  return [...layers.values()]
}

/**
 * A pattern with its figures filled in: at most three decimals, `P` for the decimal point. Always a name that every
 * reader takes: capitals, digits, `-` and `_`, at most 31; a longer one is cut and ends in a check word of the whole.
 */
export function layerName(pattern: string, figures: Readonly<Record<string, number>>): string {
  return shortened(filledIn(pattern, figures))
}

function filledIn(pattern: string, figures: Readonly<Record<string, number>>): string {
  const filled = pattern.replace(/\{([a-z]+)\}/g, (braces, word: string) => {
    const value = Object.hasOwn(figures, word) ? figures[word] : undefined
    return value === undefined ? braces : String(roundMm(value)).replace('.', 'P')
  })
  const clean = filled
    .toUpperCase()
    .replace(/[^A-Z0-9_-]/g, '-')
    .replace(/^[_-]+/, '')
  return clean === '' ? 'LAYER' : clean
}

function shortened(full: string): string {
  if (full.length <= LONGEST) return full
  const check = checkWord(full)
  return `${full.slice(0, LONGEST - check.length - 1)}-${check}`
}

/** Six letters and digits that differ where the texts differ: FNV-1a, 32 bits (Fowler, Noll, Vo), from memory. */
function checkWord(text: string): string {
  let hash = 0x811c9dc5
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0
  return hash.toString(36).toUpperCase().padStart(7, '0').slice(-6)
}

/** Who has taken which name; one operation gets the same name for the same full name, always. */
class NameBook {
  readonly #holders = new Map<string, string>()

  nameFor(operation: Operation, full: string): string {
    const holder = `${operation} ${full}`
    const word = operation.toUpperCase()
    for (let k = 0; ; k += 1) {
      const wanted = k === 0 ? full : k === 1 ? `${full}-${word}` : `${full}-${word}-${k}`
      const name = shortened(wanted)
      const taken = this.#holders.get(name)
      if (taken === undefined) this.#holders.set(name, holder)
      if (taken === undefined || taken === holder) return name
    }
  }
}

function fullName(work: Work, patterns: LayerPatterns): string {
  switch (work.kind) {
    case 'outline':
    case 'cutout':
    case 'mark':
    case 'note':
      return filledIn(patterns[work.kind], {})
    case 'bore':
      return work.depth === 'through'
        ? filledIn(patterns.boreThrough, { diameter: work.diameter })
        : filledIn(patterns.bore, { diameter: work.diameter, depth: work.depth })
    case 'countersink':
      return filledIn(patterns.countersink, { diameter: work.diameter, angle: work.angleDeg })
    case 'groove':
    case 'rebate':
      return filledIn(patterns[work.kind], { width: work.width, depth: work.depth })
    case 'pocket':
      return filledIn(patterns.pocket, { depth: work.depth })
    default:
      return work satisfies never
  }
}

/** A rebate is a groove to the machine. */
const operationOf = (work: Work): Operation => (work.kind === 'rebate' ? 'groove' : work.kind)

const ORDER: readonly Work['kind'][] = [
  'outline',
  'cutout',
  'bore',
  'countersink',
  'groove',
  'rebate',
  'pocket',
  'mark',
  'note',
]

type Ranks = readonly [number, number, number]

const compareRanks = (a: Ranks, b: Ranks): number => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]

/** Kind, then the two figures; a through bore comes after the blind ones of its diameter. */
function ranksOf(work: Work): Ranks {
  const kind = ORDER.indexOf(work.kind)
  switch (work.kind) {
    case 'bore':
      return [kind, roundMm(work.diameter), work.depth === 'through' ? Number.MAX_VALUE : roundMm(work.depth)]
    case 'countersink':
      return [kind, roundMm(work.diameter), roundMm(work.angleDeg)]
    case 'groove':
    case 'rebate':
      return [kind, roundMm(work.width), roundMm(work.depth)]
    case 'pocket':
      return [kind, roundMm(work.depth), 0]
    default:
      return [kind, 0, 0]
  }
}
