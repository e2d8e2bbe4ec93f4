import './drawing.css'
import type { JSX } from 'preact'
import { useMemo } from 'preact/hooks'
import { usePage } from '../state/page.ts'
import { actionsOf } from './actions.ts'
import { KeyList } from './key-list.tsx'
import { Legend } from './legend.tsx'
import { Sheet } from './sheet.tsx'
import { sheetState } from './sheet-state.ts'
import { LastGood, MeasureStrip, PickStrip } from './strips.tsx'
import { TitleBlock } from './title-block.tsx'

/** The drawing of what is looked at: the sheet, what one does on it, and its title block. */
export function DrawingPane(): JSX.Element {
  const page = usePage()
  const state = useMemo(() => sheetState(page), [page])
  const actions = useMemo(() => actionsOf(state), [state])
  const isMeasuring = state.measuring.value !== undefined
  return (
    <div class={`drawing${page.workshop.problems.value.length > 0 ? ' is-last-good' : ''}`}>
      <div class="drawing-tools">
        <button type="button" disabled={!state.canGoBack.value} onClick={state.back}>
          Back
        </button>
        <button type="button" aria-pressed={isMeasuring} onClick={actions.toggleMeasuring}>
          Measure
        </button>
        <button type="button" onClick={state.fit}>
          Fit
        </button>
        <button type="button" aria-label="Nearer" onClick={() => actions.zoomMiddle(NEARER)}>
          +
        </button>
        <button type="button" aria-label="Farther" onClick={() => actions.zoomMiddle(1 / NEARER)}>
          −
        </button>
        <Legend state={state} />
        <KeyList />
      </div>
      <div class="drawing-stage">
        <LastGood state={state} />
        <Sheet state={state} actions={actions} />
        <PickStrip state={state} actions={actions} />
      </div>
      <MeasureStrip state={state} />
      <TitleBlock state={state} />
    </div>
  )
}

/** One press of a button. */
const NEARER = 1.5
