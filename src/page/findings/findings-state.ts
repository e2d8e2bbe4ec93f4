import { batch, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { FindingPlace, PageFinding } from '../protocol.ts'
import type { Page } from '../state/page.ts'
import { changeWords } from './change-words.ts'

/** A change that was made by one press, and can be taken back by one. */
export interface Made {
  readonly words: string
  /** The text that it led to: once that is changed further, this is no longer what Undo takes back. */
  readonly text: string
}

/** What can be done with findings, and what was. */
export interface FindingsState {
  /** The finding that was last gone to, by its key. */
  readonly shown: ReadonlySignal<string | undefined>
  readonly made: ReadonlySignal<Made | undefined>
  /** Goes to a finding: to its place in the drawing, or one of the further ones of its note, and to what asks for it. */
  readonly show: (finding: PageFinding, place?: Pick<FindingPlace, 'panel'> & Partial<FindingPlace>) => void
  /** Goes to the line of the definition. */
  readonly showLine: (at: {
    readonly path?: PageFinding['path']
    readonly line: number
    readonly column: number
  }) => void
  readonly applyFix: (finding: PageFinding) => void
  /** Sets the whole text, and says what that did. */
  readonly replace: (text: string, words: string) => void
  readonly takeBack: () => void
  /** Follows the page until the function that it returns is called. */
  readonly follow: () => () => void
}

export function findingsState(page: Page): FindingsState {
  const { document, workshop, say } = page
  const shown = signal<string | undefined>(undefined)
  const made = signal<Made | undefined>(undefined)
  const waiting: Signal<string | undefined> = signal(undefined)

  const note = (words: string): void => {
    made.value = { words, text: document.text.peek() }
    say(`${words}; Undo takes it back`)
  }
  const apply = ({ change }: PageFinding): void => {
    if (change === undefined) return
    document.edit(change)
    note(changeWords(change))
  }

  return {
    shown,
    made,
    show: (finding, place = finding.places[0] ?? panelOf(finding)) => {
      batch(() => {
        shown.value = finding.key
        page.goTo.value = { path: finding.path, line: finding.line, column: finding.column }
        if (place !== undefined) {
          const { panel, face = 'A', at } = place
          page.showPlace.value = { panel, face, ...(at !== undefined && { at }) }
        }
        page.area.value = place === undefined ? 'Define' : 'See'
      })
    },
    showLine: ({ path = [], line, column }) => {
      batch(() => {
        page.settings.define.value = 'open'
        page.define.value = 'text'
        page.area.value = 'Define'
        page.goTo.value = { path, line, column }
      })
    },
    // What was found in an earlier text may ask for what is no longer right, so the press waits for the next look.
    applyFix: (finding) => {
      if (workshop.checking.peek()) waiting.value = finding.key
      else apply(finding)
    },
    replace: (text, words) => {
      document.setText(text)
      note(words)
    },
    takeBack: () => {
      if (made.peek()?.text !== document.text.peek()) return
      document.undo()
      say('taken back')
    },
    follow: () => {
      const ends = [
        effect(() => {
          const key = waiting.value
          if (key === undefined || workshop.checking.value) return
          waiting.value = undefined
          const still = workshop.findings.peek().find((finding) => finding.key === key)
          if (still !== undefined) apply(still)
        }),
        effect(() => {
          const text = document.text.value
          if (made.peek() !== undefined && made.peek()?.text !== text) made.value = undefined
        }),
        effect(() => {
          if (page.findingShown.value !== undefined) shown.value = page.findingShown.value.key
        }),
      ]
      return () => {
        for (const end of ends) end()
      }
    },
  }
}

const panelOf = ({ panels: [panel] }: PageFinding): { readonly panel: string } | undefined =>
  panel === undefined ? undefined : { panel }
