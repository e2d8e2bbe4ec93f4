import type { DefinitionPath } from '../../project/index.ts'
import { type Frame, Frames } from './frames.ts'
import {
  afterBlanks,
  beforeBlanks,
  isBlank,
  isColon,
  isQuote,
  plainEnd,
  quotedEnd,
  type Range,
  unquoted,
} from './words.ts'

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

/** Lines that are looked through behind the place for keys of the same group. */
const MOST_LINES = 400

/**
 * What stands at an offset of a definition's text, also of one that is only half typed: nothing in comments, in the
 * spaces that indent a line, and in texts of several lines. Line ends are LF or CRLF.
 */
export function pathAt(text: string, offset: number): Here | undefined {
  return new Reader(text, offset).read()
}

/** The names that a definition's text gives to its stock, modules and own hardware, in order. */
export function namesIn(text: string): Readonly<Record<'stock' | 'module' | 'hardware', readonly string[]>> {
  const names = { stock: [] as string[], module: [] as string[], hardware: [] as string[] }
  const lists: Readonly<Record<string, string[]>> = {
    stock: names.stock,
    modules: names.module,
    hardware: names.hardware,
  }
  const hear = ({ open }: Frames): void => {
    const list = open.length === 2 ? lists[open[0]?.key ?? ''] : undefined
    const name = open[1]?.key
    if (list !== undefined && name !== undefined) list.push(name)
  }
  new Reader(text, text.length + 1, hear).read()
  return names
}

/** A key on a line, and where its colon stands. */
interface Key extends Range {
  readonly name: string
  readonly colon: number
}

type Found = Omit<Here, 'siblings'> & { readonly column: number; group: Frame | undefined }

class Reader {
  private readonly frames = new Frames()
  private found: Found | undefined
  private settled = false
  /** What follows is no longer in the group where the place is. */
  private left = false
  /** Lines further right belong to a text of several lines. */
  private literal: number | undefined
  /** Offset in the line that a pair of brackets was opened on. */
  private at: number

  constructor(
    private readonly text: string,
    private readonly offset: number,
    private readonly hear: ((frames: Frames) => void) | undefined = undefined,
  ) {
    this.at = hear === undefined ? sectionStart(text, offset) : 0
  }

  read(): Here | undefined {
    if (this.text[this.at] === '\ufeff') this.at += 1
    let more = MOST_LINES
    while (this.at <= this.text.length && more > 0) {
      this.line()
      if (this.settled) {
        if (this.found === undefined) return undefined
        if (this.isOver(this.found)) break
        more -= 1
      }
    }
    if (this.found === undefined) return undefined
    const { column: _, group, ...here } = this.found
    const keys = group?.keys.filter(({ from }) => from !== here.from) ?? []
    return { ...here, siblings: [...new Set(keys.map(({ name }) => name))] }
  }

  /** True where no more keys of the same group can follow. */
  private isOver({ on, group }: Found): boolean {
    if (group === undefined) return on === 'value' || this.left
    return !this.frames.open.includes(group)
  }

  private line(): void {
    const start = this.at
    const end = lineEnd(this.text, start)
    const first = afterBlanks(this.text, start, end)
    const column = first - start
    const here = start <= this.offset && this.offset <= end && !this.settled
    if (this.literal !== undefined) {
      if (first === end || column > this.literal) {
        this.settled = this.settled || here
        this.at = end + 1
        return
      }
      this.literal = undefined
    }
    if (first === end || this.text[first] === '#') {
      if (here) this.onBlank(first === end ? this.offset - start : undefined)
      this.at = end + 1
      return
    }
    this.content(first, start, end, here)
  }

  /** A line without words: what would stand in the column of the cursor. */
  private onBlank(column: number | undefined): void {
    this.settled = true
    if (column === undefined) return
    const { open } = this.frames
    let depth = open.length
    while (depth > 0 && belongsOutside(open[depth - 1], column)) depth -= 1
    const inner = open[depth - 1]
    const group = inner?.kind === 'group' && inner.column === column ? inner : undefined
    const path = this.frames.path(group === undefined ? depth : depth - 1)
    // Below a key with its value on its own line nothing can stand.
    const on = { from: this.offset, to: this.offset, word: '', flow: false, colon: false }
    this.found = { path, on: 'key', ...on, column, group }
  }

  private content(first: number, start: number, end: number, here: boolean): void {
    const { text, frames } = this
    if (here && this.offset < first) this.settled = true
    let at = first
    frames.endedBy(at - start, isDash(text, at))
    while (isDash(text, at)) {
      const column = at - start
      frames.endedBy(column, true)
      const list =
        frames.top?.kind === 'list' && frames.top.column === column ? frames.top : frames.push('list', false, column)
      list.index += 1
      const next = afterBlanks(text, at + 1, end)
      if (here && !this.settled && this.offset <= next && (next === end || text[next] === '#')) {
        if (this.offset > at) this.put('either', { from: this.offset, to: this.offset }, false, next - start)
        this.settled = true
      }
      if (here && !this.settled && this.offset < next) this.settled = true
      at = next
    }
    if (at >= end || text[at] === '#') {
      this.settled = this.settled || here
      this.at = end + 1
      return
    }
    const key = keyAt(text, at, end)
    if (key === undefined) this.scalar(at, start, end, here, at === first ? 'key' : 'either')
    else this.pair(key, start, end, here)
  }

  private pair(key: Key, start: number, end: number, here: boolean): void {
    const { frames } = this
    const column = key.from - start
    frames.endedBy(column, false)
    const group =
      frames.top?.kind === 'group' && frames.top.column === column ? frames.top : frames.push('group', false, column)
    this.adopt(group)
    group.key = key.name
    group.keys.push({ name: key.name, from: key.from })
    this.hear?.(frames)
    if (here && !this.settled && key.from <= this.offset && this.offset <= key.to) {
      this.found = {
        path: frames.path(frames.open.length - 1),
        on: 'key',
        from: key.from,
        to: key.to,
        word: key.name,
        flow: false,
        colon: true,
        column,
        group,
      }
    }
    if (here && this.offset <= key.colon) this.settled = true
    this.value(key.colon + 1, column, end, here)
  }

  /** What stands behind a colon on its line. */
  private value(from: number, column: number, end: number, here: boolean): void {
    const { text } = this
    let at = afterBlanks(text, from, end)
    if (text[at] === '&') {
      while (at < end && !isBlank(text[at])) at += 1
      at = afterBlanks(text, at, end)
    }
    const unit = text[at]
    if (at >= end || unit === '#') {
      if (here && !this.settled && this.offset <= at && this.offset >= from) {
        this.put('value', { from: this.offset, to: this.offset }, false, column)
      }
      this.settled = this.settled || here
      this.at = end + 1
    } else if (unit === '|' || unit === '>') {
      this.literal = column
      this.settled = this.settled || here
      this.at = end + 1
    } else if (here && !this.settled && this.offset < at) {
      this.put('value', { from: this.offset, to: this.offset }, false, column)
      this.settled = true
      this.value(at, column, end, false)
    } else this.plain(at, column, end, here, 'value')
  }

  /** A word that no colon follows: a value, or a key that is not typed to its end. */
  private scalar(at: number, start: number, end: number, here: boolean, as: 'key' | 'either'): void {
    const column = at - start
    const { top } = this.frames
    if (as === 'key' && here && !this.settled && !/[[{]/.test(this.text[at] ?? '')) {
      const to = isQuote(this.text[at]) ? Math.min(quotedEnd(this.text, at), end) : plainEnd(this.text, at, end, false)
      if (this.offset <= to) {
        this.frames.endedBy(column, false)
        const group =
          this.frames.top?.kind === 'group' && this.frames.top.column === column ? this.frames.top : undefined
        const depth = this.frames.open.length - (group === undefined ? 0 : 1)
        const word = unquoted(this.text.slice(at, to))
        this.found = {
          path: this.frames.path(depth),
          on: 'key',
          from: at,
          to,
          word,
          flow: false,
          colon: false,
          column,
          group,
        }
        this.settled = true
      }
    }
    this.plain(at, top === undefined ? -1 : column, end, here, as === 'key' ? 'value' : 'either')
  }

  private plain(at: number, column: number, end: number, here: boolean, on: 'value' | 'either'): void {
    const { text } = this
    if (text[at] === '{' || text[at] === '[') {
      this.brackets(at)
      return
    }
    const quoted = isQuote(text[at])
    const to = quoted ? quotedEnd(text, at) : plainEnd(text, at, end, false)
    const last = Math.max(end, quoted ? lineEnd(text, to) : end)
    const within = !this.settled && at <= this.offset && this.offset <= to
    if (within) this.put(on, { from: at, to }, false, column)
    if (here || within || (this.offset >= at && this.offset <= last)) this.settled = true
    this.at = last + 1
  }

  /** What stands in brackets, over as many lines as they take; a line that cannot be in them ends them, as if they were closed. */
  private brackets(from: number): void {
    const { text, frames } = this
    const column = frames.top?.column ?? -1
    const outer = frames.open.length
    let at = from
    let before = from
    while (at < text.length) {
      const unit = text[at]
      if (unit === '\n') {
        if (column >= 0 && this.escapes(at + 1, column)) break
        at += 1
        continue
      }
      if (isBlank(unit)) {
        at += 1
        continue
      }
      if (unit === '#' && (at === 0 || /\s/.test(text[at - 1] ?? ''))) {
        const end = lineEnd(text, at)
        this.gap(before, at)
        if (this.offset > at && this.offset <= end) this.settled = true
        at = end
        before = end
        continue
      }
      if (at > from) this.gap(before, at)
      at = this.flowToken(at, column)
      before = at
      if (frames.open.length === outer) break
    }
    if (frames.open.length > outer) {
      this.gap(before, at)
      frames.open.length = outer
    }
    const end = lineEnd(text, at)
    if (this.offset > at && this.offset <= end) this.settled = true
    this.at = text[at] === '\n' ? at + 1 : end + 1
  }

  /** True where a line begins with a key that is no further right than the one that the brackets belong to. */
  private escapes(start: number, column: number): boolean {
    const end = lineEnd(this.text, start)
    const first = afterBlanks(this.text, start, end)
    if (first === end || first - start > column) return false
    return isDash(this.text, first) || keyAt(this.text, first, end) !== undefined
  }

  private flowToken(at: number, column: number): number {
    const { text, frames } = this
    const unit = text[at] ?? ''
    if (unit === '{' || unit === '[') {
      const frame = frames.push(unit === '{' ? 'group' : 'list', true, column)
      this.adopt(frame)
      return at + 1
    }
    const { top } = frames
    if (unit === '}' || unit === ']') {
      if (top?.flow === true) frames.open.pop()
      return at + 1
    }
    if (unit === ',' && top !== undefined) {
      top.index += 1
      top.key = undefined
      top.valued = false
      return at + 1
    }
    if (isColon(text, at, true) || (unit === ':' && isQuote(text[at - 1]))) {
      if (top !== undefined) top.valued = true
      return at + 1
    }
    return this.flowWord(at)
  }

  private flowWord(at: number): number {
    const { text, frames } = this
    const { top } = frames
    const to = isQuote(text[at]) ? quotedEnd(text, at) : Math.max(at + 1, plainEnd(text, at, lineEnd(text, at), true))
    const isKey = top?.kind === 'group' && !top.valued
    const after = afterBlanks(text, to, text.length)
    const colon = isColon(text, after, true) || (text[after] === ':' && isQuote(text[at]))
    const within = !this.settled && at <= this.offset && this.offset <= to
    if (isKey) {
      top.key = unquoted(text.slice(at, to))
      if (colon || !within) top.keys.push({ name: top.key, from: at })
      this.hear?.(frames)
    }
    if (within) this.putInBrackets({ from: at, to }, colon)
    return to
  }

  /** Between two words in brackets, where one may be typed. */
  private gap(from: number, to: number): void {
    if (this.settled || this.offset < from || this.offset > to) return
    // Right at the next word, that is meant.
    if (this.offset === to && /[^\s,:{}[\]#]/.test(this.text[to] ?? ' ')) return
    this.putInBrackets({ from: this.offset, to: this.offset }, false)
  }

  private putInBrackets(range: Range, colon: boolean): void {
    const { open, top } = this.frames
    if (top === undefined || !top.flow) return
    this.settled = true
    const onKey = top.kind === 'group' && !top.valued
    const word = unquoted(this.text.slice(range.from, range.to))
    const path = this.frames.path(onKey ? open.length - 1 : open.length)
    this.found = {
      path,
      on: onKey ? 'key' : 'value',
      ...range,
      word,
      flow: true,
      colon,
      column: top.column,
      group: top,
    }
  }

  private put(on: Here['on'], range: Range, flow: boolean, column: number): void {
    const word = unquoted(this.text.slice(range.from, range.to))
    this.found = { path: this.frames.path(), on, ...range, word, flow, colon: false, column, group: undefined }
    this.settled = true
  }

  /** A group that begins behind the place where its first key is being typed. */
  private adopt(group: Frame): void {
    const { found } = this
    if (found === undefined || found.group !== undefined || found.on === 'value' || group.flow) return
    if (group.column === found.column) found.group = group
    if (group.column < found.column) this.left = true
  }
}

const belongsOutside = (frame: Frame | undefined, column: number): boolean =>
  frame !== undefined && (frame.column > column || (frame.kind === 'list' && frame.column === column))

const isDash = (text: string, at: number): boolean =>
  text[at] === '-' && (at + 1 >= text.length || text[at + 1] === '\n' || isBlank(text[at + 1]))

function lineEnd(text: string, from: number): number {
  const at = text.indexOf('\n', from)
  return at === -1 ? text.length : at
}

/** The key that stands at an offset of a line, where a colon follows. */
function keyAt(text: string, from: number, end: number): Key | undefined {
  let start = from
  if (text[start] === '&') {
    while (start < end && !isBlank(text[start])) start += 1
    start = afterBlanks(text, start, end)
  }
  if (/[[{|>#]/.test(text[start] ?? '#')) return undefined
  const to = isQuote(text[start]) ? quotedEnd(text, start) : plainEnd(text, start, end, false)
  if (to > end) return undefined
  const colon = afterBlanks(text, to, end)
  if (!isColon(text, colon, false)) return undefined
  return { from: start, to: beforeBlanks(text, start, to), name: unquoted(text.slice(start, to)), colon }
}

/** The last line before an offset that begins with a key of the root: nothing before it matters. */
function sectionStart(text: string, offset: number): number {
  for (let at = lineStart(text, offset); at > 0; at = lineStart(text, at - 1)) {
    if (/^[^\s#\-[\]{},'"]/.test(text.slice(at, at + 1)) && keyAt(text, at, lineEnd(text, at)) !== undefined) return at
  }
  return 0
}

const lineStart = (text: string, offset: number): number => (offset < 1 ? 0 : text.lastIndexOf('\n', offset - 1) + 1)
