import type { DefinitionPath } from '../../project/index.ts'
import { type Frame, Frames } from './frames.ts'
import { type Range, unquoted } from './words.ts'

/** What a place in a definition's text is for. */
export interface Here extends Range {
  /** Of the value that stands or would stand here; on a key, of the group that the key is in. */
  readonly path: DefinitionPath
  /** `either`: the first word of a list's item in block style, which may become a value or a key. */
  readonly on: 'key' | 'value' | 'either'
  /** The word that stands here, without quotes; `from` and `to` are its ends. */
  readonly word: string
  /** In brackets. */
  readonly flow: boolean
  /** True where a colon follows the word. */
  readonly colon: boolean
  /** The other keys of the group that this is or would be in. */
  readonly siblings: readonly string[]
}

/** What was found at the place, and the group that its key is in, as far as that has begun. */
export type Found = Omit<Here, 'siblings'> & { readonly column: number; group: Frame | undefined }

/** A walk through a text up to a place, and on to the end of the group that the place is in. */
export abstract class Reading {
  protected readonly frames = new Frames()
  protected found: Found | undefined
  /** It is known what stands at the place, or that nothing does. */
  protected settled = false
  /** What follows is no longer in the group where the place is. */
  protected left = false

  constructor(
    protected readonly text: string,
    protected readonly offset: number,
    /** Told of every key that is read. */
    protected readonly hear: ((frames: Frames) => void) | undefined,
  ) {}

  protected put(on: Here['on'], range: Range, flow: boolean, column: number): void {
    const word = unquoted(this.text.slice(range.from, range.to))
    this.found = { path: this.frames.path(), on, ...range, word, flow, colon: false, column, group: undefined }
    this.settled = true
  }

  /** A group that begins behind the place where its first key is being typed. */
  protected adopt(group: Frame): void {
    const { found } = this
    if (found === undefined || found.group !== undefined || found.on === 'value' || group.flow) return
    if (group.column === found.column) found.group = group
    if (group.column < found.column) this.left = true
  }
}
