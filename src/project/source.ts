import { Composer, type CST, type Document, Lexer, Parser } from 'yaml'
import type { Place, Span } from './places.ts'
import { type Position, type Problem, type ProblemWords, problemAt } from './problem.ts'
import { syntaxProblems } from './syntax.ts'
import { Lines, utf8Length } from './text.ts'
import { type Data, type Mistake, toData } from './to-data.ts'
import type { DefinitionPath } from './types.ts'

/** Most text that is read, bytes of UTF-8. */
export const MOST_BYTES = 4 * 1024 * 1024
/** Most levels of groups and lists within each other; the deepest bays that are allowed need 85. */
const MOST_LEVELS = 100

/** A definition's text, read as YAML: its data and where each part of it stands. */
export class Source {
  constructor(
    private readonly file: string,
    private readonly lines: Lines,
    readonly data: Data,
    /** Place of the value at a path, if the text has one. */
    readonly place: (path: DefinitionPath) => Place | undefined,
  ) {}

  /** Offsets that show a path: its key for a group or list in block style, else its value; or those of what holds it. */
  span(path: DefinitionPath, on: 'key' | 'value' = 'value'): Span {
    for (let depth = path.length; depth > 0; depth--) {
      const place = this.place(path.slice(0, depth))
      if (place === undefined) continue
      const keyIsMeant = on === 'key' || place.below || depth < path.length
      return keyIsMeant && place.key !== undefined ? place.key : place.value
    }
    return [0, 1]
  }

  /** File, line and column of a path. */
  locate(path: DefinitionPath): Position {
    return { file: this.file, ...this.lines.position(this.span(path)[0]) }
  }

  problem(span: Span, words: ProblemWords): Problem {
    return problemAt(this.file, this.lines, span, words)
  }
}

export type SourceResult =
  | { readonly ok: true; readonly source: Source; readonly mistakes: readonly Mistake[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Text without a byte order mark, with LF for each lone CR. */
export const plainEnds = (text: string): string => text.replace(/^\ufeff/, '').replace(/\r(?!\n)/g, '\n')

/**
 * Reads text as one YAML 1.2 document. Not ok: too much text, too many levels, and whatever is no YAML; then there is
 * no data at all. Repeated keys and wrong aliases are mistakes that leave the rest readable. A byte order mark, CRLF
 * and lone CR are accepted.
 */
export function readSource(original: string, file: string): SourceResult {
  const bytes = utf8Length(original)
  const text = bytes > MOST_BYTES ? original.slice(0, 1000) : plainEnds(original)
  const lines = new Lines(text)
  const refuse = (span: Span, message: string, expected: string): SourceResult => ({
    ok: false,
    problems: [problemAt(file, lines, span, { message, expected })],
  })
  if (bytes > MOST_BYTES) return refuse([0, 1], 'the file is larger than 4 MiB', 'at most 4 MiB of text')
  const { documents, tooDeep } = composed(text)
  if (tooDeep !== undefined) {
    return refuse([tooDeep, tooDeep + 1], `more than ${MOST_LEVELS} levels within each other`, 'at most 40 bays deep')
  }
  const problems = syntaxProblems(documents, text, file, lines)
  const [document] = documents
  if (problems.length > 0) return { ok: false, problems }
  if (document === undefined || document.contents === null) {
    return refuse([0, 1], 'the file is empty', 'a definition, beginning with: storyrod: 1')
  }
  const { data, places, mistakes, bomb } = toData(document, text)
  if (bomb !== undefined) return refuse(bomb.span, bomb.message, bomb.expected)
  return { ok: true, source: new Source(file, lines, data, (path) => places.at(path)), mistakes }
}

/** The YAML documents of a text, or the offset where it goes too deep. Line ends are LF or CRLF. */
export function composed(text: string): {
  readonly documents: readonly Document.Parsed[]
  readonly tooDeep?: number
} {
  const { tokens, tooDeep } = parseTokens(text)
  if (tooDeep !== undefined) return { documents: [], tooDeep }
  return { documents: [...new Composer({ uniqueKeys: false, strict: true }).compose(tokens, true, text.length)] }
}

/**
 * Tokens of a text, or the offset where it goes too deep. The parser is fed word by word, so that a text that goes
 * deeper and deeper is given up at once, and never reaches the composer, which walks by recursion.
 */
function parseTokens(text: string): { readonly tokens: readonly CST.Token[]; readonly tooDeep?: number } {
  const parser = new Parser()
  const tokens: CST.Token[] = []
  for (const lexeme of new Lexer().lex(text)) {
    tokens.push(...parser.next(lexeme))
    // The document itself and the value that is being read lie on the stack too.
    if (parser.stack.length > MOST_LEVELS + 2) return { tokens: [], tooDeep: parser.offset }
  }
  tokens.push(...parser.end())
  return { tokens }
}
