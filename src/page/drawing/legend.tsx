import type { JSX } from 'preact'
import { memo } from 'preact/compat'
import type { SceneOperation } from '../scene/types.ts'
import { WORK_MARKS, workClass } from './marks.ts'
import type { SheetState } from './sheet-state.ts'

/** What is made on this drawing, each kind with its mark: to be shown or not. */
export function Legend({ state }: { readonly state: SheetState }): JSX.Element {
  const operations = state.operations.value
  const hidden = operations.filter(({ id }) => state.off.value.has(id)).length
  const setAll = (isOn: boolean): void => {
    state.off.value = new Set(isOn ? [] : operations.map(({ id }) => id))
  }
  return (
    <details
      class="legend"
      open={state.legendOpen.value}
      onToggle={({ currentTarget }) => (state.legendOpen.value = currentTarget.open)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !state.legendOpen.peek()) return
        event.stopPropagation()
        state.legendOpen.value = false
        event.currentTarget.querySelector('summary')?.focus()
      }}
    >
      <summary>
        Work{' '}
        <span class="quiet legend-count">
          {hidden === 0 ? operations.length : `${operations.length - hidden} of ${operations.length}`}
        </span>
      </summary>
      <div class="legend-body">
        {operations.length > 1 && (
          <div class="presses">
            <button type="button" disabled={hidden === 0} onClick={() => setAll(true)}>
              All on
            </button>
            <button type="button" disabled={hidden === operations.length} onClick={() => setAll(false)}>
              All off
            </button>
          </div>
        )}
        <ul class="rows">
          {operations.map((operation) => (
            <li key={operation.id}>
              <OperationRow
                operation={operation}
                isOn={!state.off.value.has(operation.id)}
                onTurn={() => {
                  const off = new Set(state.off.peek())
                  if (!off.delete(operation.id)) off.add(operation.id)
                  state.off.value = off
                }}
              />
            </li>
          ))}
        </ul>
        {operations.length === 0 && <p class="quiet">Nothing is bored or cut here.</p>}
      </div>
    </details>
  )
}

interface OperationRowProps {
  readonly operation: SceneOperation
  readonly isOn: boolean
  readonly onTurn: () => void
}

function OperationRow({ operation, isOn, onTurn }: OperationRowProps): JSX.Element {
  const { words, count, purposes, work } = operation
  return (
    <label class="tick operation">
      <input type="checkbox" checked={isOn} onChange={onTurn} />
      <WorkMark work={work} />
      <span class="operation-words">
        <span class="figures operation-tool">
          {count} × {words}
        </span>{' '}
        <span class="purposes">{purposes.join(', ')}</span>
      </span>
    </label>
  )
}

/** The mark of a kind of work as it is on the drawing, larger. */
const WorkMark = memo(function WorkMark({ work }: { readonly work: SceneOperation['work'] }): JSX.Element {
  const { layers } = WORK_MARKS[work]
  return (
    <svg class={`work-mark ${workClass(work)}`} viewBox="-10 -10 20 20" aria-hidden="true">
      {layers.map(({ width, form, of }) => (
        <path key={`${width} ${of}`} class={`mark ${form} ${of}`} style={`--width: ${width * 1.3}px`} d="M0 0h0" />
      ))}
      {work === 'grooves' && <path class="swatch" d="M-9 -5h18v10h-18zM-6 5L4 -5M0 5L9 -4M-9 2L-2 -5" />}
      {work === 'cutouts' && (
        <path class="swatch" d="M-9 -5h18v10h-18zM-6 5L4 -5M0 5L9 -4M-9 2L-2 -5M6 5L-4 -5M0 5L-9 -4M9 2L2 -5" />
      )}
    </svg>
  )
})
