import { isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml'
import { namingAt } from '../accepted.ts'
import type { DefinitionPath } from '../types.ts'
import { printableKey } from './keys.ts'
import { type Parsed, pairOf } from './parsed.ts'
import type { Splice } from './splice.ts'
import { keyText, scalarText } from './written.ts'

/** Keys of the root whose keys are names, with what their names name. */
const NAMED: Readonly<Record<string, 'stock' | 'module' | 'hardware'>> = {
  stock: 'stock',
  modules: 'module',
  hardware: 'hardware',
}

/** A key renamed, with all that names it where it is the name of something. Throws where the name is taken. */
export function renamed(parsed: Parsed, path: DefinitionPath, group: YAMLMap, name: string): Splice[] {
  const old = String(path.at(-1))
  const pair = pairOf(group, old)
  if (pair === undefined || name === old) return []
  if (pairOf(group, name) !== undefined) throw new Error(`the name ${name} is taken`)
  const of = path.length === 2 ? NAMED[String(path[0])] : undefined
  const root = parsed.document.contents
  return [
    ...keyRenamed(parsed, pair, name),
    ...(of === undefined || root === null ? [] : new References(parsed, { of, old, name }).in(root)),
  ]
}

function keyRenamed(parsed: Parsed, pair: Pair, name: string): Splice[] {
  const key = pair.key as Node
  const [from, to] = key.range ?? [0, 0]
  return [{ from, to, insert: words(parsed, key, name, true) }]
}

/** A name in the quotes that another one had. */
function words(parsed: Parsed, node: Node, name: string, isKey: boolean): string {
  const quotes = isScalar(node) && node.type === 'QUOTE_SINGLE' ? 'single' : 'none'
  const double = parsed.style.json || (isScalar(node) && node.type === 'QUOTE_DOUBLE')
  if (isKey && (double || quotes === 'none')) return keyText(name, double)
  return scalarText(name, { quotes: double ? 'double' : quotes, flow: true })
}

/** What is renamed: the name of what, and both names. */
interface Change {
  readonly of: 'stock' | 'module' | 'hardware'
  readonly old: string
  readonly name: string
}

/** Finds the plain values that name something; one that several places share by an alias is changed once. */
class References {
  private readonly done = new Set<Node>()
  private readonly splices: Splice[] = []

  constructor(
    private readonly parsed: Parsed,
    private readonly change: Change,
  ) {}

  in(root: Node): Splice[] {
    this.look(root, [])
    return this.splices
  }

  private look(node: Node | null | undefined, path: DefinitionPath): void {
    if (isMap(node)) for (const pair of node.items) this.pair(pair, path)
    else if (isSeq(node)) {
      node.items.forEach((item, i) => {
        if (isPair(item)) this.pair(item, [...path, i])
        else this.look(item as Node | null, [...path, i])
      })
    } else if (isScalar(node) && this.names(node, path)) this.put(node, node)
    else if (isAlias(node)) {
      const target = this.parsed.opened(node)
      // The text behind the alias is changed where it stands; one that stands where nothing is named is not.
      if (isScalar(target) && this.names(target, path) && !this.done.has(target)) this.put(node, target)
    }
  }

  private pair(pair: Pair, path: DefinitionPath): void {
    this.look(pair.value as Node | null, [...path, printableKey(pair.key)])
  }

  private names(node: Node, path: DefinitionPath): boolean {
    const written = isScalar(node) ? (typeof node.value === 'string' ? node.value : node.source) : undefined
    return written === this.change.old && namingAt(path).some(({ of }) => of === this.change.of)
  }

  private put(node: Node, like: Node): void {
    const [from, to] = node.range ?? [0, 0]
    this.done.add(node)
    this.splices.push({ from, to, insert: words(this.parsed, like, this.change.name, false) })
  }
}
