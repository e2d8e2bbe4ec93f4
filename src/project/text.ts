/** Lines of a text, found by offset. Line ends are LF or CRLF; a lone CR must have been made an LF before. */
export class Lines {
  private readonly starts: number[] = [0]

  constructor(private readonly text: string) {
    for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) this.starts.push(at + 1)
  }

  /** Line and column (from 1) of an offset; offsets outside the text count as its ends. */
  position(offset: number): { line: number; column: number } {
    const wanted = Math.max(0, Math.min(offset, this.text.length))
    let low = 0
    let high = this.starts.length - 1
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if ((this.starts[middle] ?? 0) <= wanted) low = middle
      else high = middle - 1
    }
    return { line: low + 1, column: wanted - (this.starts[low] ?? 0) + 1 }
  }

  /** A line without its line end. */
  lineText(line: number): string {
    const start = this.starts[line - 1] ?? this.text.length
    const next = this.starts[line]
    const whole = this.text.slice(start, next === undefined ? this.text.length : next - 1)
    return whole.endsWith('\r') ? whole.slice(0, -1) : whole
  }
}

/** How many bytes the text takes as UTF-8. */
export function utf8Length(text: string): number {
  let bytes = 0
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    // Each half of a surrogate pair takes two of its four bytes; a lone half takes three, and one byte is no matter here.
    if (unit < 0x80) bytes += 1
    else if (unit < 0x800 || (unit >= 0xd800 && unit < 0xe000)) bytes += 2
    else bytes += 3
  }
  return bytes
}
