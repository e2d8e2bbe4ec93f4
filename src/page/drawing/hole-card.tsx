import { useSignalEffect } from '@preact/signals'
import type { JSX } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { BothUnits, HoleFacts, HolePartner } from '../scene/types.ts'
import { inUnits } from './hole-words.ts'
import type { SheetState } from './sheet-state.ts'

/** Everything about the hole that is pointed at: beside it, or across the head or the foot of a sheet that is not wide. */
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
    if (card === null) return
    const [before, now] = [state.card.size.peek(), { width: card.offsetWidth, height: card.offsetHeight }]
    if (before?.width !== now.width || before.height !== now.height) state.card.size.value = now
  })
  useSignalEffect(() => {
    const at = state.card.at.value
    if (root.current !== null)
      root.current.style.transform = at === undefined ? '' : `translate(${at[0]}px, ${at[1]}px)`
  })
  const side = state.card.side.value
  return (
    <section
      ref={root}
      class={`hole-card${side === undefined ? '' : ` across at-${side}`}`}
      aria-label="The hole"
      onPointerEnter={onEnter}
      onPointerLeave={onLeave}
    >
      <div class="says">
        <p class="what">
          <strong>{facts.purposes.join(' and ')}</strong> <span class="figures">{inUnits(facts.tool, units)}</span>
          {saysMore(facts.tool) && <span class="figures other"> {inUnits(facts.tool, others)}</span>}
        </p>
        <p class="where">
          {facts.panelName}, {facts.surface}
        </p>
        {facts.hardware.length > 0 && <p class="hardware">for {facts.hardware.join('; ')}</p>}
      </div>
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
      {byPanel(facts.partners.filter(({ relation }) => relation === 'mate')).map((partners) => (
        <Partners key={partners[0].panel} partners={partners} facts={facts} state={state} />
      ))}
      {byPanel(facts.partners.filter(({ relation }) => relation === 'same hardware')).map((partners) => (
        <Partners key={`same ${partners[0].panel}`} partners={partners} facts={facts} state={state} />
      ))}
      {state.pinned.value && (
        <button type="button" class="plain let-go" onClick={() => state.pointAt(undefined)}>
          Let go
        </button>
      )}
    </section>
  )
}

/** A drill of 5 mm is one of 5 mm in inch projects, too: that need not be said twice. */
const saysMore = ({ mm, inch }: BothUnits): boolean => inch.replaceAll(' mm', '') !== mm

type Some<T> = readonly [T, ...T[]]

/** Partners in the order of their panels, those of one panel together. */
function byPanel(partners: readonly HolePartner[]): readonly Some<HolePartner>[] {
  const sorted = new Map<string, [HolePartner, ...HolePartner[]]>()
  for (const partner of partners) {
    const others = sorted.get(partner.panel)
    if (others === undefined) sorted.set(partner.panel, [partner])
    else others.push(partner)
  }
  return [...sorted.values()]
}

/** So many partners in one panel are told in words: a hinge has three. */
const TOLD = 3

function Partners({
  partners,
  facts,
  state,
}: {
  readonly partners: Some<HolePartner>
  readonly facts: HoleFacts
  readonly state: SheetState
}): JSX.Element {
  const [first] = partners
  const isSeen = state.page.workshop.scene.value?.holes.some(({ id }) => id === first.id) ?? false
  const [module = ''] = facts.panelName.split(': ')
  // Of the module that the hole itself is in, the name is known.
  const name = first.panelName.startsWith(`${module}: `) ? first.panelName.slice(module.length + 2) : first.panelName
  const count = partners.length
  const isMate = first.relation === 'mate'
  const holes = count === 1 ? 'hole of the same hardware' : `${count} holes of the same hardware`
  const mates = count === 1 ? 'partner' : `${count} partners`
  const what = isMate ? mates : holes
  const show = (): void => {
    state.pinned.value = true
    state.look(first.look)
  }
  return (
    <div class="partners">
      {isSeen ? (
        <p>
          {what} in {name}, ringed with {isMate ? 'dashes' : 'dots'}
        </p>
      ) : (
        <button type="button" onClick={show}>
          Show {what} in {name}
        </button>
      )}
      <p class="partner-words">
        {partners
          .slice(0, TOLD)
          .map(({ words }) => inUnits(words, state.units.value))
          .join('; ')}
        {partners.length > TOLD && ` and ${partners.length - TOLD} more`}
      </p>
    </div>
  )
}
