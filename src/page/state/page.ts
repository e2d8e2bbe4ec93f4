import { type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { PanelId } from '../../assembly/index.ts'
import type { Vec3 } from '../../geometry/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import type { Face } from '../scene/types.ts'
import type { PageDocument } from './document.ts'
import type { Settings } from './settings.ts'
import type { Workshop } from './workshop.ts'

/** The four things that one does here. On a phone one is shown at a time. */
export const AREAS = ['Define', 'See', 'Judge', 'Take away'] as const
export type Area = (typeof AREAS)[number]

/** Everything that the parts of the page share. */
export interface Page {
  readonly document: PageDocument
  readonly workshop: Workshop
  readonly settings: Settings
  readonly area: Signal<Area>
  /** How the definition is shown. */
  readonly define: Signal<'form' | 'text'>
  /** Where in the definition something asks to be shown: the text goes to its line, the form to its field. Set anew each time. */
  readonly goTo: Signal<{ readonly path: DefinitionPath; readonly line?: number; readonly column?: number } | undefined>
  /** The module whose fields the form shows, by its name in the definition. */
  readonly moduleShown: Signal<string | undefined>
  /** The module that was pressed in the drawing, by its name in the definition. Set anew each time. */
  readonly modulePressed: Signal<{ readonly module: string } | undefined>
  /** The hole that is pointed at or focused; it and its partners light up. */
  readonly hole: Signal<{ readonly id: string; readonly panel: PanelId } | undefined>
  /** A place on a panel that something asks to be shown: the drawing turns to that face and rings it. Set anew each time. */
  readonly showPlace: Signal<PlaceShown | undefined>
  /** The finding whose flag was pressed in the drawing, by its key: Judge goes to it. Set anew each time. */
  readonly findingShown: Signal<{ readonly key: string } | undefined>
  /** There is work that no file holds. */
  readonly unsaved: Signal<boolean>
  /** What was last said to those who hear the page. */
  readonly said: ReadonlySignal<string>
  /** Says in short words what has changed, to those who hear the page. */
  readonly say: (words: string) => void
}

export interface PlaceShown {
  readonly panel: PanelId
  readonly face: Face
  /** Panel frame, mm. Nothing: the panel as a whole. */
  readonly at?: Vec3
}

export function pageOf(document: PageDocument, workshop: Workshop, settings: Settings): Page {
  const said = signal('')
  return {
    document,
    workshop,
    settings,
    area: signal('See'),
    define: signal('form'),
    goTo: signal(undefined),
    moduleShown: signal(undefined),
    modulePressed: signal(undefined),
    hole: signal(undefined),
    showPlace: signal(undefined),
    findingShown: signal(undefined),
    unsaved: signal(false),
    said,
    say: (words) => {
      // The same words twice are heard twice only where the text differs.
      said.value = said.peek() === words ? `${words}\u00a0` : words
    },
  }
}

export const PageContext = createContext<Page | undefined>(undefined)

/** What the parts of the page share; only below the context. */
export function usePage(): Page {
  const page = useContext(PageContext)
  if (page === undefined) throw new Error('a part of the page stands outside of it')
  return page
}
