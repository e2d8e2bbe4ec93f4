import type { JSX } from 'preact'
import { useId } from 'preact/hooks'
import type { Outline } from '../protocol.ts'
import type { Look } from '../scene/types.ts'
import { lookAtModule, lookAtSubject, type Seen, type Subject, seenOf, subjectOf, waysToSee } from './looks.ts'
import type { SheetState } from './sheet-state.ts'

/** The title block of the sheet: what is drawn, and where one chooses what is drawn. */
export function TitleBlock({ state }: { readonly state: SheetState }): JSX.Element | null {
  const { workshop } = state.page
  const outline = workshop.outline.value
  const look = workshop.look.value
  if (outline === undefined || look === undefined) return null
  const subject = subjectOf(outline, look)
  return (
    <section class="title-block" aria-label="What is drawn">
      <ModuleCell state={state} outline={outline} look={look} subject={subject} />
      <PanelCell state={state} look={look} subject={subject} />
      <SeenCell state={state} look={look} subject={subject} />
      <MoreCell state={state} look={look} subject={subject} outline={outline} />
      <Facts state={state} />
    </section>
  )
}

interface CellProps {
  readonly state: SheetState
  readonly look: Look
  readonly subject: Subject
}

function ModuleCell({ state, outline, look, subject }: CellProps & { readonly outline: Outline }): JSX.Element {
  const id = useId()
  return (
    <div class="cell module">
      <label class="label" for={id}>
        module
      </label>
      <select
        id={id}
        value={subject.module?.key ?? ''}
        onChange={({ currentTarget: { value } }) =>
          state.look(lookAtModule(outline, value === '' ? undefined : value, look))
        }
      >
        <option value="">all modules</option>
        {outline.modules.map(({ key, name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </div>
  )
}

function PanelCell({ state, look, subject: { module, panel } }: CellProps): JSX.Element {
  const id = useId()
  return (
    <div class="cell panel">
      <label class="label" for={id}>
        panel
      </label>
      <select
        id={id}
        value={panel?.id ?? ''}
        disabled={module === undefined}
        onChange={({ currentTarget: { value } }) => {
          const chosen = module?.panels.find((one) => one.id === value)
          const subject: Subject = { ...(module && { module }), ...(chosen && { panel: chosen }) }
          const ways = waysToSee(subject)
          const seen = seenOf(look)
          state.look(lookAtSubject(subject, ways.includes(seen) ? seen : (ways[0] ?? 'Isometric'), look))
        }}
      >
        <option value="">{module === undefined ? 'choose a module first' : 'the whole module'}</option>
        {module?.panels.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
    </div>
  )
}

function SeenCell({ state, look, subject }: CellProps): JSX.Element {
  const ways = waysToSee(subject)
  const seen = seenOf(look)
  return (
    <Choice
      legend="seen"
      options={ways.map((way) => [way, way])}
      value={seen}
      onChoose={(way: Seen) => state.look(lookAtSubject(subject, way, look))}
    />
  )
}

/** A choice of few, side by side. */
function Choice<T extends string>({
  legend,
  options,
  value,
  onChoose,
}: {
  readonly legend: string
  readonly options: readonly (readonly [value: T, words: string])[]
  readonly value: T
  readonly onChoose: (value: T) => void
}): JSX.Element {
  const name = useId()
  return (
    <div class="cell choice">
      <span class="label" aria-hidden="true">
        {legend}
      </span>
      <fieldset class="switch">
        <legend class="unseen">{legend}</legend>
        {options.map(([option, words]) => (
          <label key={option}>
            <input type="radio" name={name} checked={option === value} onChange={() => onChoose(option)} />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
    </div>
  )
}

const DOORS = [
  ['on', 'On'],
  ['off', 'Off'],
  ['open', 'Open'],
] as const

/** What else can be chosen: doors, the other panel of a pair, how far apart. */
function MoreCell({ state, look, subject, outline }: CellProps & { readonly outline: Outline }): JSX.Element | null {
  switch (look.kind) {
    case 'front':
      return (
        <Choice
          legend="doors"
          options={DOORS}
          value={look.doors}
          onChoose={(doors) => state.look({ ...look, doors })}
        />
      )
    case 'pair':
      return <MateCell state={state} look={look} subject={subject} outline={outline} />
    case 'isometric':
      return <SpreadCell state={state} look={look} />
    case 'face':
    case 'floor':
      return null
    default:
      return look satisfies never
  }
}

function MateCell({
  state,
  look,
  subject,
  outline,
}: CellProps & { readonly look: Look & { kind: 'pair' }; readonly outline: Outline }): JSX.Element {
  const id = useId()
  const nameOf = (mate: string): string => {
    const module = outline.modules.find(({ panels }) => panels.some((panel) => panel.id === mate))
    const panel = module?.panels.find((one) => one.id === mate)
    if (module === undefined || panel === undefined) return mate
    return module.key === subject.module?.key ? panel.name : `${module.name}: ${panel.name}`
  }
  return (
    <div class="cell mate">
      <label class="label" for={id}>
        facing
      </label>
      <select
        id={id}
        value={look.panels[1]}
        onChange={({ currentTarget: { value } }) => {
          const mate = subject.panel?.mates.find((one) => one === value)
          if (mate !== undefined) state.look({ kind: 'pair', panels: [look.panels[0], mate] })
        }}
      >
        {subject.panel?.mates.map((mate) => (
          <option key={mate} value={mate}>
            {nameOf(mate)}
          </option>
        ))}
      </select>
    </div>
  )
}

const QUARTERS = [0, 1, 2, 3] as const
/** Steps of the slider. */
const APART_STEPS = 20

function SpreadCell({
  state,
  look,
}: {
  readonly state: SheetState
  readonly look: Look & { kind: 'isometric' }
}): JSX.Element {
  const id = useId()
  const turn = (): void => state.look({ ...look, turn: QUARTERS[(look.turn + 1) % QUARTERS.length] ?? 0 })
  return (
    <div class="cell spread">
      <label class="label" for={id}>
        apart
      </label>
      <input
        id={id}
        type="range"
        min="0"
        max={APART_STEPS}
        value={Math.round(look.apart * APART_STEPS)}
        aria-valuetext={look.apart === 0 ? 'together' : `${Math.round(look.apart * 100)} percent apart`}
        onInput={({ currentTarget }) => state.look({ ...look, apart: currentTarget.valueAsNumber / APART_STEPS })}
      />
      <button type="button" aria-label="Turn by a quarter" onClick={turn}>
        Turn
      </button>
    </div>
  )
}

function Facts({ state }: { readonly state: SheetState }): JSX.Element {
  const { title, facts } = state.heading.value
  return (
    <div class="cell drawn">
      <p>{title}</p>
      {facts.length > 0 && (
        <dl class="drawn-facts">
          {facts.map(([label, words]) => (
            <div key={label} class="fact">
              <dt>{label}</dt>
              <dd class="figures">{words}</dd>
            </div>
          ))}
        </dl>
      )}
    </div>
  )
}
