import { isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml'
import { parseLength, type Units } from '../../length/index.ts'
import { acceptedAt } from '../accepted.ts'
import { holdsNames } from '../to-data.ts'
import type { DefinitionPath } from '../types.ts'
import { keyBehind } from './add.ts'
import { printableKey } from './keys.ts'
import { type Holder, type Parsed, pairOf } from './parsed.ts'
import { replaced } from './put.ts'
import type { Splice } from './splice.ts'
import { takenOut } from './take.ts'
import type { Edit, UnitsEdit } from './types.ts'
import { scalarText } from './written.ts'

const USUAL = 'usual sizes'

/** How the units are changed: what changes in place, and what has to be set afterwards. */
export interface UnitsPlan {
  readonly splices: readonly Splice[]
  readonly edits: readonly Edit[]
}

/**
 * Other units, and nothing else: each bare length gets the unit that it had, and usual sizes and fittings stay those that
 * they were. What aliases share stays shared, unless one and the same number is a length here and a count there.
 */
export function unitsChanged(parsed: Parsed, { units }: UnitsEdit): UnitsPlan {
  const root = parsed.document.contents
  if (!isMap(root)) throw new Error('the definition is empty')
  const before = unitsAt(root, 'units') ?? 'mm'
  if (units === before) return { splices: [], edits: [] }
  const lengths = new BareLengths(parsed, before, units).in(root)
  const usual = unitsAt(root, USUAL) ?? before
  return {
    splices: [...lengths.splices, ...unitsSet(parsed, root, units, usual)],
    edits: lengths.edits,
  }
}

function unitsAt(root: YAMLMap, key: string): Units | undefined {
  const said = root.get(key)
  return said === 'mm' || said === 'in' ? said : undefined
}

/** The unit said, and whose usual sizes hold where that is not the same; right behind it, where one looks for it. */
function unitsSet(parsed: Parsed, root: YAMLMap, units: Units, usual: Units): Splice[] {
  const [own, other] = [pairOf(root, 'units'), pairOf(root, USUAL)]
  const anchor = own ?? pairOf(root, 'title') ?? pairOf(root, 'storyrod') ?? root.items.at(-1)
  const added: (readonly [string, string])[] = []
  const splices: Splice[] = []
  const say = (pair: Pair | undefined, key: string, value: Units): void => {
    const node = pair?.value as Node | undefined
    if (pair === undefined)
      added.push([key, scalarText(value, { quotes: parsed.style.json ? 'double' : 'none', flow: true })])
    else splices.push(...replaced(parsed, { node, holder: { group: root, pair } }, value))
  }
  say(own, 'units', units)
  if (usual !== units) say(other, USUAL, usual)
  else if (other !== undefined)
    splices.push(...takenOut(parsed, { node: root, holder: undefined }, root.items.indexOf(other)))
  if (added.length > 0 && anchor !== undefined) splices.push(keyBehind(parsed, root, anchor, added))
  return splices
}

/** A plain value that stands in the text, with all that it is in the places that have it, by aliases too. */
interface Found {
  readonly holder: Holder
  readonly words: string
  readonly lengths: DefinitionPath[]
  others: number
}

/** Finds the plain numbers that are lengths. */
class BareLengths {
  private readonly found = new Map<Node, Found>()
  private readonly known = new Map<string, boolean>()

  constructor(
    private readonly parsed: Parsed,
    private readonly before: Units,
    private readonly after: Units,
  ) {}

  in(root: Node): UnitsPlan {
    this.look(root, [], undefined)
    const splices: Splice[] = []
    const edits: Edit[] = []
    for (const [node, { holder, words, lengths, others }] of this.found) {
      if (lengths.length === 0) continue
      if (others === 0) splices.push(...replaced(this.parsed, { node, holder }, words))
      else edits.push(...lengths.map((path): Edit => ({ path, value: words })))
    }
    return { splices, edits }
  }

  private look(node: Node | null | undefined, path: DefinitionPath, holder: Holder): void {
    if (isAlias(node)) this.look(this.parsed.opened(node), path, undefined)
    else if (isMap(node)) {
      for (const pair of node.items) {
        this.look(pair.value as Node | null, [...path, printableKey(pair.key)], { group: node, pair })
      }
    } else if (isSeq(node)) {
      node.items.forEach((item, index) => {
        // In brackets, `a: 1` is a group of one key.
        if (isPair(item)) this.look(item.value as Node | null, [...path, index, printableKey(item.key)], undefined)
        else this.look(item as Node | null, [...path, index], { list: node, index })
      })
    } else if (isScalar(node)) this.note(node, path, holder)
  }

  private note(node: Node, path: DefinitionPath, holder: Holder): void {
    const known = this.found.get(node)
    const words = known?.words ?? this.wordsFor(node)
    if (words === undefined) return
    // Where a value has its anchor, the text says it; that place comes before all of its aliases.
    const found: Found = known ?? { holder, words, lengths: [], others: 0 }
    if (this.isLength(path)) found.lengths.push(path)
    else found.others += 1
    this.found.set(node, found)
  }

  private wordsFor(node: Node): string | undefined {
    if (!isScalar(node)) return undefined
    const { value, source } = node
    if (typeof value === 'number')
      return withUnit(PLAIN.test(source ?? '') ? (source ?? '') : value, this.before, this.after)
    return typeof value === 'string' ? withUnit(value, this.before, this.after) : undefined
  }

  /** Places that differ by names and indices alone are alike. */
  private isLength(path: DefinitionPath): boolean {
    const general = path.map((step, depth) =>
      typeof step === 'number' ? 0 : depth === 1 && holdsNames(path.slice(0, 1)) ? 'a' : step,
    )
    const key = JSON.stringify(general)
    const known = this.known.get(key) ?? acceptedAt(general)?.length === true
    this.known.set(key, known)
    return known
  }
}

const PLAIN = /^-?\d+(?:\.\d+)?$/

/** A length with the unit that it has by the project; nothing for one that says its unit, is 0, or is none. */
function withUnit(said: number | string, before: Units, after: Units): string | undefined {
  const read = (words: number | string, units: Units): number | undefined => {
    const parsed = parseLength(words, units, { negative: true })
    return parsed.ok ? parsed.mm : undefined
  }
  const mm = read(said, before)
  if (mm === undefined || read(said, after) === mm) return undefined
  const words = `${String(said).trim()} ${before}`
  // A figure such as 1e-7 cannot carry a unit.
  return read(words, after) === mm
    ? words
    : `${Number(said)
        .toFixed(20)
        .replace(/\.?0+$/, '')} ${before}`
}
