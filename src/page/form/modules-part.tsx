import type { JSX } from 'preact'
import { dataAt, dataNames } from '../../project/index.ts'
import { BayPart } from './bays/bay-part.tsx'
import { keysOf } from './copied.ts'
import { NameField } from './fields/name-field.tsx'
import { useForm } from './form-state.ts'
import { gistOf } from './gist.ts'
import { OrderButtons } from './order-buttons.tsx'
import { Keys, Place } from './place.tsx'
import { addModule, duplicateModule, freeName, removeModule } from './project-actions.ts'
import { Section } from './section.tsx'
import { AlsoSays } from './to-text.tsx'

/** The modules by name, and what is said of the chosen one. */
export function ModulesPart(): JSX.Element {
  const form = useForm()
  const { page } = form
  const names = dataNames(form.data.value, 'modules')
  const chosen = form.module.value
  const choose = (name: string): void => {
    page.moduleShown.value = name
    form.bay.value = undefined
  }
  const add = (): void => {
    const now = form.now()
    const name = freeName('module', dataNames(now, 'modules'))
    form.change(addModule(now, name, form.units.value))
    choose(name)
  }
  return (
    <section class="job-card" aria-label="modules">
      <h3>modules</h3>
      <div class="presses">
        {/* One row for two modules or two hundred. */}
        <label class="module-choice">
          <span class="unseen">Module shown here</span>
          <select value={chosen ?? ''} onChange={({ currentTarget: { value } }) => choose(value)}>
            {names.map((name) => (
              <option key={name} value={name}>
                {form.problemsAt(['modules', name], true).length > 0 ? `${name} (mistake inside)` : name}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={add}>
          Add a module
        </button>
      </div>
      {chosen !== undefined && (
        <ModuleCard key={form.placeKey(['modules', chosen])} name={chosen} names={names} choose={choose} />
      )}
    </section>
  )
}

/** Fields of a module that stand at its head; the rest folds. */
const HEAD = ['width', 'depth', 'carcase height', 'working height', 'stock'] as const

/** The groups of a module, in the order in which one thinks of them. */
const GROUPS = ['carcase', 'base', 'worktop', 'machine top', 'flip-over top', 'lipping', 'openings', 'loads'] as const

function ModuleCard(props: {
  readonly name: string
  readonly names: readonly string[]
  readonly choose: (name: string) => void
}): JSX.Element {
  const form = useForm()
  const { name, names, choose } = props
  const path = ['modules', name]
  const data = form.data.value
  const place = names.indexOf(name)
  const known: readonly string[] = [...HEAD, ...GROUPS, 'inside']
  const others = keysOf(dataAt(data, path)).filter((key) => !known.includes(key))
  return (
    <div class="module-card">
      <NameField path={path} taken={names} />
      <Keys path={path} only={HEAD} />
      <Section path={[...path, 'inside']} title="inside" gist={gistOf(dataAt(data, [...path, 'inside']))} open>
        {() => <BayPart module={name} />}
      </Section>
      {GROUPS.map((key) => (
        <Place key={key} path={[...path, key]} />
      ))}
      <AlsoSays path={path} keys={others} what="This module" />
      <OrderButtons
        what={name}
        place={place}
        count={names.length}
        move={(to) => form.change([{ path, move: to }])}
        remove={
          names.length < 2
            ? undefined
            : () => {
                form.change(removeModule(form.now(), name))
                choose(names[place + 1] ?? names[place - 1] ?? name)
              }
        }
      />
      <div class="presses">
        <button
          type="button"
          onClick={() => {
            const now = form.now()
            const copy = freeName(name, dataNames(now, 'modules'))
            form.change(duplicateModule(now, name, copy))
            choose(copy)
          }}
        >
          Duplicate {name}
        </button>
      </div>
    </div>
  )
}
