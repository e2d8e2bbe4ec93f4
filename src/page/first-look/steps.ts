import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Area, Page } from '../state/page.ts'
import { changesWidth } from './changes-width.ts'

/** One step of the first look. */
export interface Step {
  readonly words: string
  /** Where it is done. */
  readonly area: Area
  readonly done: ReadonlySignal<boolean>
}

export interface FirstSteps {
  readonly steps: readonly Step[]
  readonly allDone: ReadonlySignal<boolean>
  /** Watches what is done on the page, until the function that it returns is called. */
  readonly watch: () => () => void
}

type Watched = Pick<Page, 'document' | 'modulePressed' | 'hole'>

/** The three steps, each ticked off when the page sees it done; once done it stays so. */
export function firstSteps(page: Watched): FirstSteps {
  const pressed = signal(false)
  const widened = signal(false)
  const pointed = signal(false)
  return {
    steps: [
      { words: 'Press a module in the drawing', area: 'See', done: pressed },
      { words: 'Change its width in the form', area: 'Define', done: widened },
      { words: 'Point at a hole', area: 'See', done: pointed },
    ],
    allDone: computed(() => pressed.value && widened.value && pointed.value),
    watch: () => {
      const ends = [
        onceThere(page.modulePressed, pressed),
        watchWidth(page.document, widened),
        onceThere(page.hole, pointed),
      ]
      return () => {
        for (const end of ends) end()
      }
    },
  }
}

const onceThere = (what: ReadonlySignal<unknown>, done: Signal<boolean>): (() => void) =>
  effect(() => {
    if (what.value !== undefined) done.value = true
  })

/** Another definition that is opened has other widths, but nobody changed them. */
function watchWidth({ text, opened }: Watched['document'], done: Signal<boolean>): () => void {
  let last = { text: text.peek(), opened: opened.peek() }
  return effect(() => {
    if (done.peek()) return
    const now = { text: text.value, opened: opened.value }
    if (now.opened === last.opened && changesWidth(last.text, now.text)) done.value = true
    last = now
  })
}
