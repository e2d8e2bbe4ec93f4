/**
 * Pieces joined into as few lines as they fit on, in their order; a piece that fits on no line gets one of its own.
 * `between` stands between the pieces of a line, not at its ends.
 */
export function joinedInto(pieces: readonly string[], between: string, fits: (line: string) => boolean): string[] {
  const [first = '', ...rest] = pieces
  const lines: string[] = []
  let line = first
  for (const piece of rest) {
    const longer = `${line}${between}${piece}`
    if (fits(longer)) line = longer
    else {
      lines.push(line)
      line = piece
    }
  }
  return [...lines, line]
}
