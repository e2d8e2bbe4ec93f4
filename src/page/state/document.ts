import { history, historyField, isolateHistory, redo, redoDepth, undo, undoDepth } from '@codemirror/commands'
import { Compartment, EditorState, type Extension, type Transaction, type TransactionSpec } from '@codemirror/state'
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals'
import { applyEdits, changeOf, type Edit } from '../../project/index.ts'
import type { DefinitionSource } from '../protocol.ts'

/** A definition as it is opened: from a file, the sample, or what was kept of the last work. */
export interface OpenedText {
  /** With the byte order mark, where its file has one. */
  readonly text: string
  /** Its file's name, without folders. */
  readonly file: string
  /** The files that it names, by name. */
  readonly files: ReadonlyMap<string, string>
}

/**
 * The one definition that form and text both change. It is held as the state of the text editor, whether that is on the
 * screen or not, so that one history undoes all.
 */
export interface PageDocument {
  readonly state: ReadonlySignal<EditorState>
  /** Lines end with LF, whatever they end with in the file. */
  readonly text: ReadonlySignal<string>
  /** The text with the line ends and the byte order mark that it was opened with: what goes into a file. */
  readonly fileText: ReadonlySignal<string>
  readonly file: ReadonlySignal<string>
  readonly files: ReadonlySignal<ReadonlyMap<string, string>>
  readonly source: ReadonlySignal<DefinitionSource>
  readonly canUndo: ReadonlySignal<boolean>
  readonly canRedo: ReadonlySignal<boolean>
  /** Counts what was opened: with each, the history starts anew. */
  readonly opened: ReadonlySignal<number>
  /** What the text editor does, and all others through it. */
  readonly apply: (transaction: Transaction) => void
  /** Tells of every change, whoever makes it, until the function that it gives back is called. */
  readonly follow: (hear: (transaction: Transaction) => void) => () => void
  /**
   * Changes the definition as a form or a finding asks; one step to undo. Edits of one `visit` (of a field) that follow
   * each other are one step: each is made in the text as it was before the first, and no edit at all is
   * that text again, with the steps to undo and redo that it had. Throws what `applyEdits` throws.
   */
  readonly edit: (edits: readonly Edit[], visit?: object) => void
  /** Sets the whole text, as one step to undo; only what differs is replaced. */
  readonly setText: (text: string) => void
  readonly undo: () => void
  readonly redo: () => void
  /** Opens another definition in place of this one. */
  readonly open: (opened: OpenedText) => void
  /** Its file has another name from now on. */
  readonly rename: (file: string) => void
  /** A file that the definition names, added or replaced. */
  readonly addFile: (name: string, text: string) => void
}

/** A document that begins with `first`; `extensions` are those of the text editor. */
export function pageDocument(first: OpenedText, extensions: readonly Extension[] = []): PageDocument {
  const steps = new Compartment()
  const newState = (text: string): EditorState =>
    EditorState.create({ doc: text.slice(markOf(text).length), extensions: [steps.of(history()), ...extensions] })
  const state = signal(newState(first.text))
  const file = signal(first.file)
  const files = signal(first.files)
  const lineEnd = signal(lineEndOf(first.text))
  const mark = signal(markOf(first.text))
  const opened = signal(0)
  // Where the cursor moves only, the text is not put together again.
  const doc = computed(() => state.value.doc)
  const text = computed(() => doc.value.toString())
  const hearers = new Set<(transaction: Transaction) => void>()
  const apply = (transaction: Transaction): void => {
    state.value = transaction.state
    for (const hear of hearers) hear(transaction)
  }
  const change = (spec: TransactionSpec): void => apply(state.value.update(spec))
  const setText = (next: string): void => {
    const now = text.value
    if (next === now) return
    change({ changes: changeOf(now, next), annotations: isolateHistory.of('full'), userEvent: 'input.form' })
  }
  /** The steps as they were when the text was this one before: without what was tried since. */
  const setSteps = (before: EditorState): void => {
    const kept = before.field(historyField, false)
    change({ effects: steps.reconfigure([]) })
    change({ effects: steps.reconfigure([history(), historyField.init(() => kept)]) })
  }
  let last: { readonly visit: object; readonly before: EditorState; readonly state: EditorState } | undefined
  const edit = (edits: readonly Edit[], visit?: object): void => {
    const joined = visit !== undefined && last?.visit === visit && last.state === state.value ? last : undefined
    const before = joined?.before ?? state.value
    const told = joined === undefined ? text.value : before.doc.toString()
    const next = applyEdits(told, edits)
    batch(() => {
      if (joined !== undefined) undo({ state: state.value, dispatch: apply })
      if (joined !== undefined && next === told) setSteps(before)
      setText(next)
    })
    last = visit !== undefined && next !== told ? { visit, before, state: state.value } : undefined
  }
  const command = (run: typeof undo) => (): void => {
    run({ state: state.value, dispatch: apply })
  }
  return {
    state,
    text,
    fileText: computed(
      () => mark.value + (lineEnd.value === '\n' ? text.value : text.value.replaceAll('\n', lineEnd.value)),
    ),
    file,
    files,
    source: computed(() => ({ text: text.value, file: file.value, files: [...files.value] })),
    canUndo: computed(() => undoDepth(state.value) > 0),
    canRedo: computed(() => redoDepth(state.value) > 0),
    opened,
    apply,
    follow: (hear) => {
      hearers.add(hear)
      return () => hearers.delete(hear)
    },
    edit,
    setText,
    undo: command(undo),
    redo: command(redo),
    // At once, so that nobody sees the text of one with the files of the other.
    open: (next) =>
      batch(() => {
        file.value = next.file
        files.value = next.files
        lineEnd.value = lineEndOf(next.text)
        mark.value = markOf(next.text)
        state.value = newState(next.text)
        opened.value += 1
      }),
    rename: (name) => {
      file.value = name
    },
    addFile: (name, content) => {
      files.value = new Map([...files.value, [name, content]])
    },
  }
}

/** How the first line of a text ends; a text of one line as here. */
function lineEndOf(text: string): '\n' | '\r\n' {
  return /^[^\r\n]*\r\n/.test(text) ? '\r\n' : '\n'
}

/** The byte order mark that a text begins with. */
const markOf = (text: string): string => (text.startsWith('\ufeff') ? '\ufeff' : '')
