import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Actions } from './actions.ts'
import { inScene } from './flags.ts'
import { listenToGestures } from './gestures.ts'
import { HoleCard } from './hole-card.tsx'
import { holeWords } from './hole-words.ts'
import { isPicked, keyHandler, type PlacedPart } from './keys.ts'
import { Over } from './over.ts'
import { matesOf } from './readings.ts'
import { Flags } from './sheet-flags.tsx'
import type { SheetState } from './sheet-state.ts'
import { svgElement } from './svg.ts'
import { World } from './world.ts'

/** How long the card stays after the pointer has left hole and card, ms: the way from one to the other takes time. */
const LINGER_MS = 350

interface SheetProps {
  readonly state: SheetState
  readonly actions: Actions
}

/** The drawing itself: one stop of the Tab key, within which arrows walk. */
export function Sheet({ state, actions }: SheetProps): JSX.Element {
  const root = useRef<HTMLDivElement>(null)
  const svg = useRef<SVGSVGElement>(null)
  const linger = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const stay = (): void => clearTimeout(linger.current)
  const leave = (): void => {
    stay()
    linger.current = setTimeout(() => {
      if (!state.pinned.peek()) state.pointAt(undefined)
    }, LINGER_MS)
  }

  useLayoutEffect(() => {
    const sheet = svg.current
    const box = root.current
    if (sheet === null || box === null) return
    const world = new World()
    const over = new Over()
    sheet.append(world.defs, world.group, over.group)
    const measure = (): void => {
      const { width, height } = box.getBoundingClientRect()
      state.size.value = { width, height }
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    const ends = [
      state.follow(),
      ...paint(state, sheet, world, over),
      listenToGestures(sheet, {
        pan: actions.pan,
        zoom: actions.zoom,
        hover: (at, target) => hover(state, actions, world, at, target, { stay, leave }),
        press: (at, target, finger) => {
          // The keys then go on from what was pressed.
          box.querySelector<HTMLElement>('.sheet-list')?.focus({ preventScroll: true })
          press(state, actions, world, at, target, finger)
        },
        leave: () => {
          leave()
          const now = state.measuring.peek()
          if (now?.aim !== undefined)
            state.measuring.value = { ...(now.from && { from: now.from }), ...(now.to && { to: now.to }) }
        },
      }),
      listenToKeys(box, state, actions, world),
    ]
    return () => {
      stay()
      watch.disconnect()
      for (const end of ends) end()
      sheet.replaceChildren()
    }
  }, [state, actions])

  return (
    <div class={`drawing-paper${state.measuring.value === undefined ? '' : ' measures'}`} ref={root}>
      <SheetList state={state} />
      <svg ref={svg} aria-hidden="true" class="drawing-svg" />
      <Flags state={state} />
      <HoleCard state={state} onEnter={stay} onLeave={leave} />
    </div>
  )
}

/** For screen readers the sheet is a list of which only the chosen line is there. It takes the keys. */
function SheetList({ state }: { readonly state: SheetState }): JSX.Element {
  const { hole } = state.page
  const facts = state.facts.value
  const picked = state.picked.value
  const count = state.holeCount.value
  const holeSaid = facts && facts.id === hole.value?.id ? holeWords(facts, state.units.value) : undefined
  // A hole that was pressed comes with its panel; one that is only pointed at does not take its place.
  const chosen =
    picked === undefined || !state.pinned.value || holeSaid === undefined
      ? (picked?.name ?? holeSaid)
      : `${picked.name}: ${holeSaid}`
  const words = chosen ?? `${count} ${count === 1 ? 'hole' : 'holes'}; arrow keys walk them`
  const id = `sheet-line-${facts?.id ?? picked?.opening?.key ?? picked?.panel ?? picked?.module ?? 'none'}`.replaceAll(
    /[^\w-]/g,
    '-',
  )
  return (
    <div
      class="sheet-list"
      role="listbox"
      tabIndex={0}
      aria-label={`Drawing: ${state.heading.value.title}`}
      aria-activedescendant={id}
    >
      <div class="unseen" role="option" tabIndex={-1} id={id} key={id} aria-selected={chosen !== undefined}>
        {words}
      </div>
    </div>
  )
}

/** Keeps the picture at what the state says; returns what ends that. */
function paint(state: SheetState, sheet: SVGSVGElement, world: World, over: Over): readonly (() => void)[] {
  const { page, camera, off, drawn } = state
  const { scene } = page.workshop
  return [
    effect(() => {
      const now = scene.value
      if (now !== undefined) world.draw(now, off.value)
    }),
    effect(() => {
      const now = scene.value
      world.move(camera.value)
      if (now !== undefined) over.drawWords(now, camera.value, state.size.value)
    }),
    effect(() => {
      const picked = state.picked.value
      if (scene.value !== undefined) world.light(picked && ((part) => isPicked(part, picked)))
    }),
    effect(() => paintOver(state, over)),
    effect(() => {
      if (scene.value === undefined) return
      drawn.value = drawn.peek() + 1
      sheet.dataset.drawn = String(drawn.peek())
    }),
  ]
}

const NONE = { mates: [], fellows: [] }

function paintOver(state: SheetState, over: Over): void {
  const scene = state.page.workshop.scene.value
  const camera = state.camera.value
  const chosen = state.page.hole.value
  const facts = state.cardFacts.value
  const cardAt = state.card.at.value
  const readings = state.card.readings.value
  const measuring = state.measuring.value
  const ringed = state.ringed.value
  over.begin()
  if (scene !== undefined) {
    const hole = chosen && scene.holes.find(({ id }) => id === chosen.id)
    if (hole !== undefined && measuring === undefined) {
      const known = facts?.id === hole.id ? facts : undefined
      const { mates, fellows } = known === undefined ? NONE : matesOf({ scene, facts: known })
      for (const mate of mates) over.tie(hole, mate, camera)
      if (known !== undefined) over.sizes(readings)
      for (const fellow of fellows) over.ring(fellow, 'fellow', camera)
      for (const mate of mates) over.ring(mate, 'partner', camera)
      over.ring(hole, 'chosen', camera)
      if (known !== undefined && cardAt !== undefined) over.leader(hole, cardAt, state.card.size.value, camera)
    }
    const frame = ringed && scene.frames[ringed.panel]
    if (ringed?.at !== undefined && frame !== undefined) over.place(inScene(frame, ringed.at), camera)
    if (measuring !== undefined) over.measuring(measuring, scene, camera, state.units.value)
  }
  over.end()
}

type At = readonly [number, number]

function hover(
  state: SheetState,
  actions: Actions,
  world: World,
  at: At,
  target: Element | null,
  card: { readonly stay: () => void; readonly leave: () => void },
): void {
  const measuring = state.measuring.peek()
  if (measuring !== undefined) {
    const aim = actions.snapNear(at)
    const { from, to } = measuring
    state.measuring.value = { ...(from && { from }), ...(to && { to }), ...(aim && { aim }) }
    return
  }
  const title = world.partAt(target)?.title ?? ''
  const sheet = target?.closest('svg')
  if (sheet instanceof SVGElement && sheet.dataset.over !== title) {
    sheet.dataset.over = title
    setTitle(sheet, title)
  }
  if (state.pinned.peek()) return
  const hole = actions.holeAt(at)
  if (hole === undefined) {
    if (state.page.hole.peek() !== undefined) card.leave()
    return
  }
  card.stay()
  state.pointAt(hole)
}

/** What a pointer that rests on the drawing reads. */
function setTitle(sheet: SVGElement, words: string): void {
  let title = sheet.querySelector(':scope > title')
  if (title === null) {
    title = svgElement('title')
    sheet.prepend(title)
  }
  title.textContent = words
}

function press(
  state: SheetState,
  actions: Actions,
  world: World,
  at: At,
  target: Element | null,
  finger: boolean,
): void {
  state.ringed.value = undefined
  if (state.measuring.peek() !== undefined) {
    const point = actions.snapNear(at)
    if (point !== undefined) actions.setPoint(point)
    return
  }
  const hole = actions.holeAt(at)
  if (hole !== undefined) {
    // A second press lets go, which under a finger is the only way besides pressing elsewhere.
    if (finger && state.pinned.peek() && state.page.hole.peek()?.id === hole.id) state.pointAt(undefined)
    else actions.pressHole(hole)
    return
  }
  state.pointAt(undefined)
  actions.pressPart(world.partAt(target))
}

function listenToKeys(box: HTMLElement, state: SheetState, actions: Actions, world: World): () => void {
  const nextFlag = (): void => {
    const flags = [...box.querySelectorAll<HTMLButtonElement>('button.flag')]
    const now = flags.findIndex((flag) => flag.matches(':focus'))
    flags[(now + 1) % flags.length]?.focus()
  }
  let parts: { readonly of: unknown; readonly placed: readonly PlacedPart[] } | undefined
  const placedParts = (): readonly PlacedPart[] => {
    const scene = state.page.workshop.scene.peek()
    if (parts === undefined || parts.of !== scene) parts = { of: scene, placed: world.placedParts() }
    return parts.placed
  }
  const handle = keyHandler(state, actions, placedParts, nextFlag)
  const hear = (event: KeyboardEvent): void => {
    const { target } = event
    if (!(target instanceof HTMLElement)) return
    const isList = target.classList.contains('sheet-list')
    const isFlag = target.classList.contains('flag')
    // Presses have keys of their own; from a flag one goes on to the next, or back to the drawing.
    if (isFlag && event.key === 'Escape') box.querySelector<HTMLElement>('.sheet-list')?.focus()
    else if (isFlag && event.key.toLowerCase() === 'f') nextFlag()
    else if (isList ? !handle(event) : !(event.key === 'Escape' && actions.letGo())) return
    event.preventDefault()
    event.stopPropagation()
  }
  box.addEventListener('keydown', hear)
  return () => box.removeEventListener('keydown', hear)
}
