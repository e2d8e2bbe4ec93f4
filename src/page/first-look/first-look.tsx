import './first-look.css'
import type { JSX } from 'preact'
import { useEffect, useMemo } from 'preact/hooks'
import { usePage } from '../state/page.ts'
import { type FirstSteps, firstSteps, type Step } from './steps.ts'

/** Three steps for those who have never been here, in a strip that covers nothing; kept away once it is put away. */
export function FirstLook(): JSX.Element | null {
  return usePage().settings.firstLook.value === 'shown' ? <Strip /> : null
}

function Strip(): JSX.Element {
  const page = usePage()
  const first = useMemo(() => firstSteps(page), [page])
  useEffect(() => first.watch(), [first])
  const { allDone } = first
  return (
    <section class="first-look" aria-labelledby="first-look-heading">
      <h2 id="first-look-heading">First look</h2>
      <Steps first={first} />
      {allDone.value && <p class="first-look-end">That is the whole of it. Judge and Take away wait for you.</p>}
      <button
        type="button"
        class={allDone.value ? 'main' : ''}
        onClick={() => {
          page.settings.firstLook.value = 'put away'
          page.say('first look put away; it is in Settings')
          document.getElementById('see')?.focus()
        }}
      >
        Put away
      </button>
    </section>
  )
}

/** A narrow screen shows only the step that is next. */
function Steps({ first: { steps } }: { readonly first: FirstSteps }): JSX.Element {
  const next = steps.findIndex(({ done }) => !done.value)
  return (
    <ol>
      {steps.map((step, k) => (
        <StepLine key={step.words} step={step} isNext={k === next} />
      ))}
    </ol>
  )
}

function StepLine({ step, isNext }: { readonly step: Step; readonly isNext: boolean }): JSX.Element {
  const { area } = usePage()
  const isDone = step.done.value
  return (
    <li class={`${isDone ? 'done' : ''}${isNext ? 'next' : ''}`} {...(isNext && { 'aria-current': 'step' })}>
      <svg class="box" viewBox="0 0 20 20" aria-hidden="true">
        <path class="frame" d="M2 2h16v16H2z" />
        {isDone && <path class="tick-mark" d="M4.5 10.5 8.5 15 17 3.5" />}
      </svg>
      {/* Where the areas stand beside each other, this does no more than say where to look. */}
      <button type="button" class="plain" onClick={() => goThere(step, area)}>
        {step.words}
      </button>
      {isDone && <span class="unseen">, done</span>}
    </li>
  )
}

function goThere(step: Step, area: { value: Step['area'] }): void {
  area.value = step.area
  document.getElementById(step.area.toLowerCase())?.focus()
}
