import { Reading } from './reading.ts'
import {
  afterBlanks,
  isBlank,
  isColon,
  isDash,
  isQuote,
  keyAt,
  lineEnd,
  plainEnd,
  quotedEnd,
  type Range,
  unquoted,
} from './words.ts'

/** Reads what stands in brackets. */
export abstract class BracketReading extends Reading {
  /** Offset that has been read up to: the beginning of a line. */
  protected at = 0

  /** What stands in brackets, over as many lines as they take; a line that cannot be in them ends them, as if they were closed. */
  protected brackets(from: number): void {
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
}
