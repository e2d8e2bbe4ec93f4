import { type Document, isCollection, isScalar, type Node, visit } from 'yaml'
import type { Span } from './places.ts'
import { type Problem, problemAt } from './problem.ts'
import type { Lines } from './text.ts'
import { MULTIPLE_DOCUMENTS, yamlWords } from './yaml-words.ts'

/**
 * What the YAML parser found, in plain words, one a line: what follows on the same line is mostly the same mistake,
 * and so are tabs in the lines after the first.
 */
export function syntaxProblems(
  documents: readonly Document.Parsed[],
  text: string,
  file: string,
  lines: Lines,
): Problem[] {
  const byLine = new Map<number, Problem>()
  const add = (span: Span, words: { message: string; expected: string }) => {
    const problem = problemAt(file, lines, span, words)
    const known = byLine.get(problem.line)
    if (known === undefined || known.column > problem.column) byLine.set(problem.line, problem)
  }
  let tabs = 0
  for (const document of documents) {
    for (const { code, message, pos } of [...document.errors, ...document.warnings]) {
      if (code === 'TAB_AS_INDENT' && ++tabs > 1) continue
      add(whereToLook(document, text, code, message, pos), yamlWords(code, message))
    }
    if (document.directives?.yaml.explicit && document.directives.yaml.version !== '1.2') {
      const message = `this file asks for YAML ${document.directives.yaml.version}`
      add([0, 1], { message, expected: 'YAML 1.2, without the line that begins with %YAML' })
    }
  }
  const second = documents[1]
  if (second !== undefined) add([second.range[0], second.range[0] + 3], MULTIPLE_DOCUMENTS)
  return [...byLine.values()].sort((a, b) => a.line - b.line)
}

/** Where a person should look: at what was opened and not closed, or at the first word behind an indent. */
function whereToLook(document: Document.Parsed, text: string, code: string, message: string, pos: Span): Span {
  const [from, to] = pos
  if (/closing ["']quote|end with a/.test(message)) return opened(document, text, from) ?? pos
  if (code !== 'BAD_INDENT') return pos
  const spaces = /^ */.exec(text.slice(from, from + 200))?.[0].length ?? 0
  return [from + spaces, Math.max(to, from + spaces + 1)]
}

const CLOSERS: Readonly<Record<string, string>> = { '[': ']', '{': '}', '"': '"', "'": "'" }

/** The mark that opens the innermost quote or bracket about an offset that is not closed. */
function opened(document: Document.Parsed, text: string, offset: number): Span | undefined {
  let latest: number | undefined
  const look = (node: Node) => {
    const range = node.range
    if (!range || range[0] > offset || offset > range[2]) return
    const closed = range[1] - range[0] > 1 && text[range[1] - 1] === CLOSERS[text[range[0]] ?? '']
    if (!closed) latest = Math.max(latest ?? 0, range[0])
  }
  visit(document, {
    Scalar: (_, node) => (isScalar(node) && node.type?.startsWith('QUOTE') ? look(node) : undefined),
    Collection: (_, node) => (isCollection(node) && node.flow === true ? look(node) : undefined),
  })
  return latest === undefined ? undefined : [latest, latest + 1]
}
