import {
  type Alias,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml'
import type { DefinitionPath } from '../types.ts'
import { printableKey } from './keys.ts'

/** Where a value stands: in a pair of a group, in a list, or as the whole definition. */
export type Holder =
  | { readonly group: YAMLMap; readonly pair: Pair }
  | { readonly list: YAMLSeq; readonly index: number }
  | undefined

/** A value of the text: its node, nothing behind a key without a value, and what holds it. */
export interface Spot {
  readonly node: Node | undefined
  readonly holder: Holder
}

/** How the text is written, so that what is added looks alike. */
export interface Style {
  /** Brackets and double quotes throughout. */
  readonly json: boolean
  /** What ends a line. */
  readonly eol: string
  /** Columns that a level is indented. */
  readonly step: number
}

/** A definition's text with its YAML nodes, whose offsets are those of the text. */
export class Parsed {
  readonly document: Document.Parsed
  readonly style: Style

  constructor(readonly text: string) {
    // A lone CR ends a line for the reader, and is none for the parser.
    this.document = parseDocument(text.replace(/\r(?!\n)/g, '\n'), { uniqueKeys: false, keepSourceTokens: true })
    const root = this.document.contents
    this.style = { json: isJson(root), eol: /\r\n|\n|\r/.exec(text)?.[0] ?? '\n', step: stepOf(root) }
  }

  /** The node that an alias stands for; any other stands for itself. */
  opened(node: Node | undefined): Node | undefined {
    return isAlias(node) ? node.resolve(this.document) : node
  }

  /** The value at a path; groups and lists on the way may stand behind aliases. Nothing where there is none. */
  spot(path: DefinitionPath): Spot | undefined {
    let spot: Spot | undefined = { node: this.document.contents ?? undefined, holder: undefined }
    for (const step of path) {
      spot = inside(this.opened(spot.node), step)
      if (spot === undefined) return undefined
    }
    return spot
  }

  /** All aliases that stand for a node, in the order of the text. */
  aliasesOf(node: Node): Alias[] {
    const found: Alias[] = []
    visit(this.document, {
      Alias: (_, alias) => {
        if (alias.resolve(this.document) === node) found.push(alias)
      },
    })
    return found
  }

  /** Offset of the beginning of the line that an offset stands in. */
  lineStart(offset: number): number {
    let at = offset
    while (at > 0 && !isBreak(this.text[at - 1])) at -= 1
    return at === 0 && this.text.startsWith('\ufeff') ? 1 : at
  }

  /** Offset of the end of the line that an offset stands in, before what ends it. */
  lineEnd(offset: number): number {
    let at = offset
    while (at < this.text.length && !isBreak(this.text[at])) at += 1
    return at
  }

  /** Offset behind the line end that stands at an offset. */
  afterBreak(offset: number): number {
    if (this.text.startsWith('\r\n', offset)) return offset + 2
    return isBreak(this.text[offset]) ? offset + 1 : offset
  }

  /** Column, from 0. */
  column(offset: number): number {
    return offset - this.lineStart(offset)
  }

  /** True where nothing but spaces stands before an offset on its line. */
  beginsLine(offset: number): boolean {
    return this.text.slice(this.lineStart(offset), offset).trim() === ''
  }
}

const isBreak = (unit: string | undefined): boolean => unit === '\n' || unit === '\r'

function inside(node: Node | undefined, step: string | number): Spot | undefined {
  if (isSeq(node)) {
    const index = Number(step)
    if (!(index in node.items)) return undefined
    return { node: (node.items[index] ?? undefined) as Node | undefined, holder: { list: node, index } }
  }
  if (!isMap(node)) return undefined
  const pair = pairOf(node, String(step))
  return pair && { node: (pair.value ?? undefined) as Node | undefined, holder: { group: node, pair } }
}

/** The pair of a group with a key. */
export const pairOf = (group: YAMLMap, key: string): Pair | undefined =>
  group.items.find((pair) => printableKey(pair.key) === key)

/** True for a value that says nothing: behind a key alone, or a written null. */
export const isNothing = (node: Node | undefined): boolean =>
  node === undefined || (isScalar(node) && (node.value === null || node.value === undefined))

/** True for groups and lists in brackets. */
export const isFlow = (node: Node | undefined): boolean => (isMap(node) || isSeq(node)) && node.flow === true

function isJson(root: Node | null): boolean {
  const key = isMap(root) && root.flow === true ? root.items[0]?.key : undefined
  return isScalar(key) && key.type === 'QUOTE_DOUBLE'
}

const USUAL_STEP = 2

/** Columns between the first group in block style within the root and the root. */
function stepOf(root: Node | null): number {
  if (!isMap(root) || root.flow === true) return USUAL_STEP
  for (const { value } of root.items) {
    const token = isMap(value) && value.flow !== true ? value.srcToken : undefined
    if (token?.type === 'block-map' && token.indent > 0 && token.indent <= 8) return token.indent
  }
  return USUAL_STEP
}
