import type { JSX } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { type RuleEntry, ruleEntry } from '../../rulebook/index.ts'
import { SeverityMark } from '../look/severity-mark.tsx'
import { usePage } from '../state/page.ts'
import { SEVERITY_WORDS } from './counts.ts'
import type { FindingsState } from './findings-state.ts'
import { type ChangedLimits, limitRows } from './limit-rows.ts'
import type { Note } from './notes.ts'
import { TypedWords } from './typed-words.tsx'

/** Further places that are named; the rest are counted, as in the command. */
const MOST_PLACES = 5

/** One numbered note. A press on its words goes to the place in the drawing and in the definition. */
export function NoteItem({
  note,
  state,
  canFix,
}: {
  readonly note: Note
  readonly state: FindingsState
  readonly canFix: boolean
}): JSX.Element {
  const { first, number, severity, alsoOn, keys } = note
  const head = useRef<HTMLButtonElement>(null)
  const { findingShown } = usePage()
  const isAsked = keys.includes(findingShown.value?.key ?? '')
  const isShown = keys.includes(state.shown.value ?? '')
  useEffect(() => {
    if (!isAsked) return
    head.current?.scrollIntoView({ block: 'nearest' })
    head.current?.focus()
  }, [isAsked, findingShown.value])
  return (
    <li class="note" {...(isShown && { 'aria-current': 'true' })}>
      <SeverityMark severity={severity} number={number} />
      <div class="note-body">
        <button ref={head} type="button" class="note-head" onClick={() => state.show(first)}>
          <span class="unseen">
            {SEVERITY_WORDS[severity][0]} {number}:{' '}
          </span>
          <span class="note-where">
            {first.module ?? 'the whole project'}
            {first.panelName !== undefined && `, ${first.panelName}`}
          </span>
          <span class="note-words">
            <TypedWords words={first.short} />
          </span>
        </button>
        <AlsoAt note={note} state={state} />
        {alsoOn.length > 0 && (
          <p class="note-more">
            the same on{' '}
            {alsoOn.map(({ name, panel, place }) => (
              <button key={panel} type="button" class="plain" onClick={() => state.show(first, place ?? { panel })}>
                {name}
              </button>
            ))}
          </p>
        )}
        {first.fix !== undefined && (
          <p class="note-fix">
            <span class="quiet">to mend it: </span>
            <TypedWords words={first.fix} />
          </p>
        )}
        <div class="presses">
          {first.change !== undefined && (
            <button type="button" aria-disabled={!canFix} onClick={() => canFix && state.applyFix(first)}>
              Apply this fix
            </button>
          )}
          <button type="button" class="plain" onClick={() => state.showLine(first)}>
            line {first.line}
          </button>
          <Rule id={first.rule} changed={first.limits ?? {}} />
        </div>
      </div>
    </li>
  )
}

/** The further places of a row of equal findings. */
function AlsoAt({
  note: { first, alsoAt },
  state,
}: {
  readonly note: Note
  readonly state: FindingsState
}): JSX.Element | null {
  if (alsoAt.length === 0) return null
  const rest = alsoAt.length - MOST_PLACES
  return (
    <p class="note-more">
      also{' '}
      {alsoAt.slice(0, MOST_PLACES).map((place, k) => (
        <button key={k} type="button" class="plain" onClick={() => state.show(first, place)}>
          {place.words}
        </button>
      ))}
      {rest > 0 && ` and ${rest} more`}
    </p>
  )
}

/** What the rule is, when it is asked for. */
function Rule({ id, changed }: { readonly id: string; readonly changed: ChangedLimits }): JSX.Element | null {
  const rule = ruleEntry(id)
  if (rule === undefined) return null
  return (
    <details class="fold rule">
      <summary>The rule</summary>
      <p>{rule.meaning}</p>
      <Limits rule={rule} changed={changed} />
      <p class="quiet">
        From: {rule.source}. In the definition: <code>findings: {id}</code>
      </p>
    </details>
  )
}

function Limits({
  rule: { limits },
  changed,
}: {
  readonly rule: RuleEntry
  readonly changed: ChangedLimits
}): JSX.Element | null {
  const rows = limitRows(limits, changed)
  if (rows.length === 0) return null
  return (
    <dl class="facts">
      {rows.map(({ name, figure, says, usual }) => [
        <dt key={`${name}:`}>{name}</dt>,
        <dd key={name}>
          <span class="figures">{figure}</span> {says}
          {usual !== undefined && <span class="quiet"> (set by the definition; default {usual})</span>}
        </dd>,
      ])}
    </dl>
  )
}
