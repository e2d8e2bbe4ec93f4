import type { JSX } from 'preact'
import type { Actions } from './actions.ts'
import { definitionName } from './looks.ts'
import type { SheetState } from './sheet-state.ts'
import { lengthWords, measured } from './snap.ts'

/** Over the sheet while the definition cannot be worked out: what is drawn is the last one that could. */
export function LastGood({ state }: { readonly state: SheetState }): JSX.Element | null {
  const { problems, scene } = state.page.workshop
  const count = problems.value.length
  if (count === 0 || scene.value === undefined) return null
  return (
    <p class="last-good">
      <span>
        <strong>Last good drawing:</strong> the definition has {count === 1 ? 'a mistake' : `${count} mistakes`}
      </span>
      <button type="button" onClick={() => (state.page.area.value = 'Judge')}>
        See {count === 1 ? 'it' : 'them'}
      </button>
    </p>
  )
}

/** What was pressed once, and where one can go from it. */
export function PickStrip({ state, actions }: StripProps): JSX.Element | null {
  const picked = state.picked.value
  // On a narrow sheet the card of a hole needs the room.
  if (picked === undefined || (state.card.isNarrow.value && state.cardFacts.value !== undefined)) return null
  const module = state.page.workshop.outline.value?.modules.find(({ key }) => key === picked.module)
  const seesFront = module !== undefined && definitionName(module) !== undefined && !module.isTop
  return (
    <div class="foot-strip">
      <strong>{picked.name}</strong>
      <button type="button" onClick={actions.goToPicked}>
        {picked.opening !== undefined
          ? 'Change it in Define'
          : picked.panel !== undefined
            ? 'Go to its face'
            : seesFront
              ? 'See its front'
              : 'See it alone'}
      </button>
      <button type="button" class="plain" onClick={() => state.pick(undefined)}>
        Let go
      </button>
    </div>
  )
}

interface StripProps {
  readonly state: SheetState
  readonly actions: Actions
}

/** How measuring goes, and what it says. */
export function MeasureStrip({ state }: { readonly state: SheetState }): JSX.Element | null {
  const measuring = state.measuring.value
  const scene = state.page.workshop.scene.value
  if (measuring === undefined || scene === undefined) return null
  const { from, to, aim } = measuring
  const units = state.units.value
  const second = to ?? (from && aim)
  const readings = from && second && measured(scene.look, scene.flat, from, second)
  return (
    <div class="measure-strip">
      {from === undefined && <span>Press the first point. It snaps to middles of holes, corners and edges.</span>}
      {from !== undefined && second === undefined && <span>Press the second point.</span>}
      {second !== undefined && readings === undefined && (
        <span>Between two panels that lie side by side here there is no distance.</span>
      )}
      {readings !== undefined && (
        <dl class="measured">
          {readings.map(({ way, mm }) => (
            <div key={way} class="measured-way">
              <dt>{way}</dt>
              <dd class="figures">{lengthWords(mm, units)}</dd>
              <dd class="figures quiet">{lengthWords(mm, units === 'in' ? 'mm' : 'in')}</dd>
            </div>
          ))}
        </dl>
      )}
    </div>
  )
}
