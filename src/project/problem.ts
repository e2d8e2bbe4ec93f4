import type { Lines } from './text.ts'
import type { DefinitionPath } from './types.ts'

/** A place in the text of a definition. Line and column count from 1; columns are UTF-16 units, a tab is one. */
export interface Position {
  readonly file: string
  readonly line: number
  readonly column: number
}

/** Where something is asked for: in the text, unless an option of the command (`--check-bars`) stands in its place. */
export interface Asked extends Position {
  readonly option?: string
}

/** One mistake in a definition, with everything that a person needs to put it right. */
export interface Problem extends Position {
  /** Where in words and what is wrong: `modules › glaze store › width: "60O" is not a length`. */
  readonly message: string
  /** What would be right: `a length such as 600, 600 mm, 23 7/16 in`. */
  readonly expected: string
  /** The known name that is nearest to the one that was written. */
  readonly nearest?: string
  /** The whole line that it stands in. */
  readonly lineText: string
  /** How many columns of that line are meant, at least 1. */
  readonly span: number
  /** The place in the definition that is wrong, or the key that is missing; nothing where the text is no YAML. */
  readonly path?: DefinitionPath
}

const PLACES = new Map<string | number | undefined, string>([
  ['side by side', 'bay'],
  ['stacked', 'bay'],
  ['floor plan', 'row'],
  ['row', 'place'],
  ['hinges', 'hinge'],
  ['stack', 'drawer'],
  ['thickness', 'reading'],
  ['openings', 'opening'],
])

export type ProblemWords = Pick<Problem, 'message' | 'expected' | 'nearest'>

/** A problem at offsets of a text, no wider than the line it begins on. */
export function problemAt(
  file: string,
  lines: Lines,
  [from, to]: readonly [from: number, to: number],
  words: ProblemWords,
): Problem {
  const { line, column } = lines.position(from)
  const lineText = lines.lineText(line)
  const span = Math.max(1, Math.min(to - from, lineText.length - column + 1))
  return { file, line, column, ...words, lineText, span }
}

/** Steps of a path that are shown; of a longer one the middle is left out. */
const MOST_STEPS = 9

/** A path in words: `modules › glaze store › inside › stacked › bay 2`; empty for the root. Counts from 1. */
export function pathInWords(path: DefinitionPath): string {
  const steps = path.map((step, i) => {
    if (typeof step === 'number') return `${PLACES.get(path[i - 1]) ?? 'item'} ${step + 1}`
    return step.trim() === '' ? '""' : cutText(printable(step), 40)
  })
  if (steps.length > MOST_STEPS) steps.splice(4, steps.length - MOST_STEPS + 1, '…')
  return steps.join(' › ')
}

const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** The text on one line: control characters, line ends and lone surrogates become a space. */
export function printable(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: taking them out is the purpose
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufffe\uffff]/g, ' ').replace(LONE_SURROGATE, ' ')
}

/** At most `most` characters, with an ellipsis for what was cut. */
export function cutText(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1).replace(LONE_SURROGATE, '')}…`
}

/** Longest part of a line that is shown, characters. */
const SHOWN = 100
/** How many problems are shown in full. */
const MOST_SHOWN = 200

/** All problems as text for a person, each with its line and a mark under the place; ends with a line end. */
export function renderProblems(problems: readonly Problem[]): string {
  const shown = problems.slice(0, MOST_SHOWN).map(renderProblem)
  const rest = problems.length - shown.length
  if (rest > 0) shown.push(`and ${rest} more problems\n`)
  return shown.join('\n')
}

function renderProblem(problem: Problem): string {
  const { file, line, column, message, expected, nearest } = problem
  const gutter = `  ${line} | `
  const { text, before, width } = window(problem)
  const hint = nearest === undefined ? '' : `; did you mean "${printable(nearest)}"?`
  return [
    `${file}:${line}:${column}  error  ${message}`,
    `${gutter}${text}`.trimEnd(),
    `${' '.repeat(gutter.length - 2)}| ${' '.repeat(before)}${'^'.repeat(width)}`,
    `  expected: ${expected}${hint}`,
    '',
  ].join('\n')
}

/** The part of the line about the column, what stands before the mark in it, and how wide the mark is. */
function window({ lineText, column, span }: Problem): { text: string; before: number; width: number } {
  const at = column - 1
  const start = lineText.length <= SHOWN ? 0 : Math.max(0, Math.min(at - 40, lineText.length - SHOWN))
  const end = Math.min(lineText.length, start + SHOWN)
  const head = start > 0 ? '…' : ''
  const tail = end < lineText.length ? '…' : ''
  const text = `${head}${printable(lineText.slice(start, end))}${tail}`
  return { text, before: head.length + at - start, width: Math.max(1, Math.min(span, end - at)) }
}
