import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { dataAt, dataNames } from '../../project/index.ts'
import { itemsOf } from './copied.ts'
import { useForm } from './form-state.ts'
import { OrderButtons } from './order-buttons.tsx'
import { Keys } from './place.tsx'
import { addRow, addToRow, looseModules, removeFromRow } from './project-actions.ts'
import { Section } from './section.tsx'
import { shownValue } from './written.ts'

const PLAN = 'floor plan'

/** Which modules stand beside each other: rows of names, in order. */
export function FloorPart(): JSX.Element {
  const form = useForm()
  const data = form.data.value
  const rows = itemsOf(dataAt(data, [PLAN]))
  const loose = looseModules(data)
  const [first] = loose.length > 0 ? loose : dataNames(data, 'modules')
  return (
    <Section path={[PLAN]} title={PLAN} gist={`${rows.length} ${rows.length === 1 ? 'row' : 'rows'}`}>
      {() => (
        <>
          <ol class="items">
            {rows.map((row, k) => (
              // A row is known by its place in the plan.
              <li key={String(k)}>
                <Section path={[PLAN, k]} title={`row ${k + 1}`} gist={shownValue(dataAt(row, ['row'])) ?? ''} inner>
                  {() => <Row row={k} count={rows.length} loose={loose} />}
                </Section>
              </li>
            ))}
          </ol>
          <p class="quiet">
            {loose.length === 0
              ? 'All modules stand in a row.'
              : `In no row, so each stands alone: ${loose.join(', ')}.`}
          </p>
          {first !== undefined && loose.length > 0 && (
            <button type="button" onClick={() => form.change(addRow(form.now(), first))}>
              Add a row with {first}
            </button>
          )}
        </>
      )}
    </Section>
  )
}

function Row(props: { readonly row: number; readonly count: number; readonly loose: readonly string[] }): JSX.Element {
  const form = useForm()
  const { row, count, loose } = props
  const path = [PLAN, row]
  const data = form.data.value
  const names = itemsOf(dataAt(data, [...path, 'row'])).map((name) => String(name))
  const wanted = useSignal('')
  const next = loose.includes(wanted.value) ? wanted.value : loose[0]
  return (
    <>
      <ol class="row-of-modules" aria-label={`modules of row ${row + 1}, from the left`}>
        {names.map((name, k) => (
          <li key={name}>
            <span class="label">{name}</span>
            <OrderButtons
              what={name}
              ways={['Left', 'Right']}
              place={k}
              count={names.length}
              move={(to) => form.change([{ path: [...path, 'row', k], move: to }])}
              remove={() => form.change(removeFromRow(form.now(), row, k))}
            />
          </li>
        ))}
      </ol>
      {next !== undefined && (
        <div class="presses">
          <label>
            <span class="unseen">Module to add to row {row + 1}</span>
            <select value={next} onChange={({ currentTarget }) => (wanted.value = currentTarget.value)}>
              {loose.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <button type="button" onClick={() => form.change(addToRow(form.now(), row, next))}>
            Add at the right
          </button>
        </div>
      )}
      <Keys path={path} except={['row']} />
      <OrderButtons
        what={`row ${row + 1}`}
        place={row}
        count={count}
        move={(to) => form.change([{ path, move: to }])}
        remove={() => form.change([{ path, value: undefined }])}
      />
    </>
  )
}
