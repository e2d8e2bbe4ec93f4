import { history, isolateHistory, redo, redoDepth, undo, undoDepth } from '@codemirror/commands'
import { EditorState, type Extension, type Transaction, type TransactionSpec } from '@codemirror/state'
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { applyEdits, type Edit } from '../../project/index.ts'
import type { DefinitionSource } from '../protocol.ts'

/** A definition as it is opened: from a file, the sample, or what was kept of the last work. */
export interface OpenedText {
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
  readonly text: ReadonlySignal<string>
  readonly file: ReadonlySignal<string>
  readonly files: ReadonlySignal<ReadonlyMap<string, string>>
  readonly source: ReadonlySignal<DefinitionSource>
  readonly canUndo: ReadonlySignal<boolean>
  readonly canRedo: ReadonlySignal<boolean>
  /** Counts what was opened: with each, the history starts anew. */
  readonly opened: ReadonlySignal<number>
  /** What the text editor does, and all others through it. */
  readonly apply: (transaction: Transaction) => void
  /** Changes the definition as a form or a finding asks; one step to undo. Throws what `applyEdits` throws. */
  readonly edit: (edits: readonly Edit[]) => void
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
  const newState = (text: string): EditorState =>
    EditorState.create({ doc: text, extensions: [history(), ...extensions] })
  const state = signal(newState(first.text))
  const file = signal(first.file)
  const files = signal(first.files)
  const opened = signal(0)
  const text = computed(() => state.value.doc.toString())
  const apply = (transaction: Transaction): void => {
    state.value = transaction.state
  }
  const change = (spec: TransactionSpec): void => apply(state.value.update(spec))
  const setText = (next: string): void => {
    const now = text.value
    if (next === now) return
    change({ changes: differenceOf(now, next), annotations: isolateHistory.of('full'), userEvent: 'input.form' })
  }
  const command = (run: typeof undo) => (): void => {
    run({ state: state.value, dispatch: apply })
  }
  return {
    state,
    text,
    file,
    files,
    source: computed(() => ({ text: text.value, file: file.value, files: [...files.value] })),
    canUndo: computed(() => undoDepth(state.value) > 0),
    canRedo: computed(() => redoDepth(state.value) > 0),
    opened,
    apply,
    edit: (edits) => setText(applyEdits(text.value, edits)),
    setText,
    undo: command(undo),
    redo: command(redo),
    open: (next) => {
      file.value = next.file
      files.value = next.files
      state.value = newState(next.text)
      opened.value += 1
    },
    rename: (name) => {
      file.value = name
    },
    addFile: (name, content) => {
      files.value = new Map([...files.value, [name, content]])
    },
  }
}

/** The one stretch in which two texts differ. */
function differenceOf(before: string, after: string): { from: number; to: number; insert: string } {
  const most = Math.min(before.length, after.length)
  let from = 0
  while (from < most && before.charCodeAt(from) === after.charCodeAt(from)) from += 1
  let end = 0
  while (end < most - from && before.charCodeAt(before.length - 1 - end) === after.charCodeAt(after.length - 1 - end))
    end += 1
  return { from, to: before.length - end, insert: after.slice(from, after.length - end) }
}
