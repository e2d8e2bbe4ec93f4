import type { JSX } from 'preact'
import type { Problem } from '../../project/index.ts'
import { SeverityMark } from '../look/severity-mark.tsx'
import { usePage } from '../state/page.ts'
import type { FindingsState } from './findings-state.ts'
import { withNearest } from './nearest-name.ts'

/** More than these nobody reads at once; the rest are counted. */
const MOST_SHOWN = 50

/** The mistakes of a definition that cannot be drawn as it stands. */
export function Problems({ state }: { readonly state: FindingsState }): JSX.Element | null {
  const problems = usePage().workshop.problems.value
  if (problems.length === 0) return null
  const rest = problems.length - MOST_SHOWN
  return (
    <section class="notes" aria-labelledby="mistakes">
      <h3 id="mistakes">
        {problems.length} {problems.length === 1 ? 'mistake' : 'mistakes'}
        <span class="quiet"> in the definition; the drawing is the last good one</span>
      </h3>
      <ol class="rows">
        {problems.slice(0, MOST_SHOWN).map((problem, k) => (
          <ProblemItem key={k} problem={problem} state={state} />
        ))}
      </ol>
      {rest > 0 && <p class="quiet">and {rest} more</p>}
    </section>
  )
}

function ProblemItem({ problem, state }: { readonly problem: Problem; readonly state: FindingsState }): JSX.Element {
  const { document } = usePage()
  const { message, expected, nearest, lineText, column, span, line } = problem
  return (
    <li class="note">
      <SeverityMark severity="stop" />
      <div class="note-body">
        <button type="button" class="note-head" onClick={() => state.showLine(problem)}>
          <span class="unseen">mistake: </span>
          <span class="note-words">{message}</span>
        </button>
        <p class="note-line">
          <code>
            {lineText.slice(0, column - 1).trimStart()}
            <mark>{lineText.slice(column - 1, column - 1 + span)}</mark>
            {lineText.slice(column - 1 + span)}
          </code>
        </p>
        <p class="note-fix">
          <span class="quiet">expected: </span>
          {expected}
        </p>
        <div class="presses">
          {nearest !== undefined && (
            <button
              type="button"
              onClick={() => {
                const text = withNearest(document.state.peek().doc, problem)
                if (text !== undefined) state.replace(text, `line ${line} now says ${nearest}`)
              }}
            >
              Write “{nearest}”
            </button>
          )}
          <button type="button" class="plain" onClick={() => state.showLine(problem)}>
            line {line}
          </button>
        </div>
      </div>
    </li>
  )
}
