import { useSignalEffect } from '@preact/signals'
import type { JSX } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { HoleFacts, HolePartner } from '../scene/types.ts'
import { inUnits } from './hole-words.ts'
import type { SheetState } from './sheet-state.ts'

/** Everything about the hole that is pointed at: beside it, or on a narrow sheet at its foot. */
export function HoleCard({ state, onEnter, onLeave }: CardProps): JSX.Element | null {
  const facts = state.cardFacts.value
  return facts === undefined ? null : <Card state={state} facts={facts} onEnter={onEnter} onLeave={onLeave} />
}

interface CardProps {
  readonly state: SheetState
  /** The pointer comes to the card, which then stays, and goes from it. */
  readonly onEnter: () => void
  readonly onLeave: () => void
}

function Card({ state, facts, onEnter, onLeave }: CardProps & { readonly facts: HoleFacts }): JSX.Element {
  const root = useRef<HTMLElement>(null)
  const units = state.units.value
  const others = units === 'in' ? 'mm' : 'in'
  useLayoutEffect(() => {
    const card = root.current
    if (card !== null) state.cardSize.value = { width: card.offsetWidth, height: card.offsetHeight }
  })
  useSignalEffect(() => {
    const at = state.cardAt.value
    if (root.current !== null)
      root.current.style.transform = at === undefined ? '' : `translate(${at[0]}px, ${at[1]}px)`
  })
  return (
    <section
      ref={root}
      class={`hole-card${state.isNarrow.value ? ' at-foot' : ''}`}
      aria-label="The hole"
      onPointerEnter={onEnter}
      onPointerLeave={onLeave}
    >
      <p class="what">
        <strong>{facts.purposes.join(' and ')}</strong> <span class="figures">{inUnits(facts.tool, units)}</span>
        {facts.tool.mm !== facts.tool.inch && <span class="figures other"> {inUnits(facts.tool, others)}</span>}
      </p>
      <p class="where">
        {facts.panelName}, {facts.surface}
      </p>
      <table>
        <tbody>
          {facts.from.map((distance) => (
            <tr key={distance.edge}>
              <th scope="row">from {distance.edge}</th>
              <td class="figures">{inUnits(distance, units)}</td>
              <td class="figures other">{inUnits(distance, others)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {facts.hardware.length > 0 && <p class="hardware">{facts.hardware.join('; ')}</p>}
      {facts.partners.length > 0 && (
        <ul class="partners">
          {facts.partners.map((partner) => (
            <Partner key={partner.id} partner={partner} state={state} />
          ))}
        </ul>
      )}
      {state.pinned.value && (
        <button type="button" class="plain let-go" onClick={() => state.pointAt(undefined)}>
          Let go
        </button>
      )}
    </section>
  )
}

function Partner({ partner, state }: { readonly partner: HolePartner; readonly state: SheetState }): JSX.Element {
  const { page } = state
  const isSeen = page.workshop.scene.value?.holes.some(({ id }) => id === partner.id) ?? false
  return (
    <li>
      {isSeen ? (
        <span>Partner: {partner.panelName}</span>
      ) : (
        <button
          type="button"
          onClick={() => {
            state.pinned.value = true
            state.look(partner.look)
          }}
        >
          Show partner in {partner.panelName}
        </button>
      )}
      <span class="figures"> {inUnits(partner.words, state.units.value)}</span>
    </li>
  )
}
