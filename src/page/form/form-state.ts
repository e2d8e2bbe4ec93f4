import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Units } from '../../length/index.ts'
import {
  type Data,
  type DefinitionPath,
  dataAt,
  dataNames,
  definitionData,
  type Edit,
  type Problem,
} from '../../project/index.ts'
import type { Page } from '../state/page.ts'
import { type Field, fieldReader } from './control.ts'
import { followNames } from './known-names.ts'

/** What the parts of the form share. */
export interface Form {
  readonly page: Page
  /** What the definition says; while it is no YAML, what it said last. After a key press it follows a little later. */
  readonly data: ReadonlySignal<Data | undefined>
  /** What the definition says at this moment: what a press acts on, however fast it follows another. */
  readonly now: () => Data | undefined
  /** The text is no YAML: nothing can be changed here until its line is mended. */
  readonly unreadable: ReadonlySignal<Problem | undefined>
  /** The project's units, in which bare numbers are. */
  readonly units: ReadonlySignal<Units>
  /** Whose usual sizes hold where nothing is said: those of the units, unless the definition says others. */
  readonly usual: ReadonlySignal<Units>
  /** The module whose fields are shown: the one that was chosen, through renames; where it has gone, the one before it; else the first. */
  readonly module: ReadonlySignal<string | undefined>
  /** The opening of that module that is chosen. */
  readonly bay: Signal<DefinitionPath | undefined>
  /** Sections that were opened or closed by hand, by the key of their path. */
  readonly folds: Signal<ReadonlyMap<string, boolean>>
  /** The sentence about the field that has the focus. */
  readonly note: Signal<{ readonly key: string; readonly about: string } | undefined>
  /** Why the last change could not be made. */
  readonly refusal: Signal<string | undefined>
  /** What was last shown for `page.goTo`, so that it is not shown again when the form comes back. */
  readonly shown: { current: Page['goTo']['value'] }
  readonly fieldAt: (path: DefinitionPath) => Field | undefined
  /** What is wrong at a path itself or, with `below`, anywhere in it. */
  readonly problemsAt: (path: DefinitionPath, below?: boolean) => readonly Problem[]
  /** Changes the definition; those of one visit to a field are one step to undo. */
  readonly change: (edits: readonly Edit[], visit?: object) => void
  /** The definition as it was before a visit to a field, if that was the last to change it. */
  readonly takeBack: (visit: object) => void
  /** Shows the text as it stands at once, before the worker's model of it is there. */
  readonly catchUp: () => void
  /** One place of the definition, under whatever name its module or stock goes: what a field keeps while one renames. */
  readonly placeKey: (path: DefinitionPath) => string
}

export const pathKey = (path: DefinitionPath): string => JSON.stringify(path)

/** The state of a page's form, which stays while the text is shown in its place. */
export function formOf(page: Page): Form {
  const { form: model, problems } = page.workshop
  const { textNumber, formNumber } = page.workshop
  /** What a press has just written, until the worker's model is of that text or a later one. */
  const pressed = signal<{ readonly number: number; readonly data: Data } | undefined>(undefined)
  let last: Data | undefined
  const data = computed(() => {
    const own = pressed.value
    last = (own !== undefined && own.number > formNumber.value ? own.data : model.value?.data) ?? last
    return last
  })
  const now = (): Data | undefined => {
    const number = textNumber.peek()
    const isShown = number === formNumber.peek() || number === pressed.peek()?.number
    return isShown ? data.peek() : (definitionData(page.document.text.peek()) ?? data.peek())
  }
  const refusal = signal<string | undefined>(undefined)
  const module = computed(() => {
    const names = dataNames(data.value, 'modules')
    const shown = page.moduleShown.value
    return shown !== undefined && names.includes(shown) ? shown : names[0]
  })
  const bay = signal<DefinitionPath | undefined>(undefined)
  const folds = signal<ReadonlyMap<string, boolean>>(new Map())
  const catchUp = (): void => {
    const written = definitionData(page.document.text.peek())
    pressed.value = written === undefined ? undefined : { number: textNumber.peek(), data: written }
  }
  return {
    page,
    data,
    now,
    unreadable: computed(() =>
      model.value !== undefined && model.value.data === undefined ? problems.value[0] : undefined,
    ),
    units: computed(() => unitsAt(data.value, 'units') ?? 'mm'),
    usual: computed(() => unitsAt(data.value, 'usual sizes') ?? unitsAt(data.value, 'units') ?? 'mm'),
    module,
    bay,
    folds,
    note: signal(undefined),
    refusal,
    shown: { current: undefined },
    fieldAt: fieldReader(),
    problemsAt: (path, below = false) => {
      const key = pathKey(path)
      const inside = `${key.slice(0, -1)},`
      return problems.value.filter((problem) => {
        if (problem.path === undefined) return false
        const at = pathKey(problem.path)
        return at === key || (below && at.startsWith(inside))
      })
    },
    change: (edits, visit) => {
      refusal.value = undefined
      if (edits.length === 0) return
      try {
        page.document.edit(edits, visit)
        // While one types in a field, the key press must not wait for this: nothing else is pressed meanwhile.
        if (visit === undefined) catchUp()
      } catch (error) {
        refusal.value = error instanceof Error ? error.message : String(error)
      }
    },
    takeBack: (visit) => page.document.edit([], visit),
    catchUp,
    placeKey: followNames({ data, moduleShown: page.moduleShown, bay, folds }),
  }
}

function unitsAt(data: Data | undefined, key: string): Units | undefined {
  const said = dataAt(data, [key])
  return said === 'mm' || said === 'in' ? said : undefined
}

export const FormContext = createContext<Form | undefined>(undefined)

/** What the parts of the form share; only below the context. */
export function useForm(): Form {
  const form = useContext(FormContext)
  if (form === undefined) throw new Error('a part of the form stands outside of it')
  return form
}
