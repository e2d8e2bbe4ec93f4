import { BracketReading } from './brackets.ts'
import type { Frame, Frames } from './frames.ts'
import type { Found, Here } from './reading.ts'
import {
  afterBlanks,
  isBlank,
  isDash,
  isQuote,
  type Key,
  keyAt,
  lineEnd,
  plainEnd,
  quotedEnd,
  unquoted,
} from './words.ts'

/** Lines that are looked through behind the place for keys of the same group. */
const MOST_LINES = 400

/** Reads a text line by line, as block style has it. */
export class LineReading extends BracketReading {
  /** Lines further right belong to a text of several lines. */
  private literal: number | undefined

  constructor(text: string, offset: number, hear?: (frames: Frames) => void) {
    super(text, offset, hear)
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
}

const belongsOutside = (frame: Frame | undefined, column: number): boolean =>
  frame !== undefined && (frame.column > column || (frame.kind === 'list' && frame.column === column))

/** The last line before an offset that begins with a key of the root: nothing before it matters. */
function sectionStart(text: string, offset: number): number {
  for (let at = lineStart(text, offset); at > 0; at = lineStart(text, at - 1)) {
    if (/^[^\s#\-[\]{},'"]/.test(text.slice(at, at + 1)) && keyAt(text, at, lineEnd(text, at)) !== undefined) return at
  }
  return 0
}

const lineStart = (text: string, offset: number): number => (offset < 1 ? 0 : text.lastIndexOf('\n', offset - 1) + 1)
