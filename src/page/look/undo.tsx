import type { JSX } from 'preact'
import { useEffect } from 'preact/hooks'
import { type Page, usePage } from '../state/page.ts'

/** Takes the last change back, or makes it again, wherever it was made. */
export function UndoPresses(): JSX.Element {
  const page = usePage()
  useEffect(() => {
    const press = (event: KeyboardEvent): void => undoByKey(event, page)
    document.addEventListener('keydown', press)
    return () => document.removeEventListener('keydown', press)
  }, [page])
  const { canUndo, canRedo } = page.document
  return (
    <div class="presses">
      <button type="button" disabled={!canUndo.value} aria-keyshortcuts="Control+Z" onClick={() => undo(page)}>
        Undo
      </button>
      <button
        type="button"
        disabled={!canRedo.value}
        aria-keyshortcuts="Control+Shift+Z Control+Y"
        onClick={() => redo(page)}
      >
        Redo
      </button>
    </div>
  )
}

function undo({ document, say }: Page): void {
  document.undo()
  say('undone')
}

function redo({ document, say }: Page): void {
  document.redo()
  say('done again')
}

/** What the keys of undo and redo ask for; with Command in place of Control where that is usual. */
export function asksFor({
  key,
  ctrlKey,
  metaKey,
  shiftKey,
  altKey,
}: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>): 'undo' | 'redo' | undefined {
  if (!(ctrlKey || metaKey) || altKey) return undefined
  const letter = key.toLowerCase()
  if (letter === 'z') return shiftKey ? 'redo' : 'undo'
  return letter === 'y' && !shiftKey ? 'redo' : undefined
}

function undoByKey(event: KeyboardEvent, page: Page): void {
  if (event.defaultPrevented || hasUndoOfItsOwn(event.target)) return
  const asked = asksFor(event)
  if (asked === undefined) return
  event.preventDefault()
  if (asked === 'undo' && page.document.canUndo.peek()) undo(page)
  if (asked === 'redo' && page.document.canRedo.peek()) redo(page)
}

/**
 * The text editor keeps the same history itself. A field whose content is not written into the definition (half typed, or
 * none of it) takes its own letters back; all other fields show what the definition says, so their history is its.
 */
function hasUndoOfItsOwn(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false
  return target.closest('.cm-editor, textarea, [contenteditable], [aria-invalid="true"], [data-own-undo]') !== null
}
