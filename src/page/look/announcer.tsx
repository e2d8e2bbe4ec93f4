import { effect } from '@preact/signals'
import type { JSX } from 'preact'
import { useEffect } from 'preact/hooks'
import { countWords } from '../findings/counts.ts'
import { type Page, usePage } from '../state/page.ts'

/** Says in short words what has changed, to those who hear the page. */
export function Announcer(): JSX.Element {
  const page = usePage()
  useEffect(() => sayCounts(page), [page])
  return (
    <p id="said" class="unseen" role="status">
      {page.said}
    </p>
  )
}

/** `1 stop, 3 warnings`, or `the definition has 2 mistakes`, whenever that has become something else. */
function sayCounts({ workshop: { problems, findings, checking }, say }: Page): () => void {
  let last: string | undefined
  return effect(() => {
    // While typing goes on nobody wants to hear of it; the problems of a text that rests are known before its findings.
    if (checking.value) return
    const words = countWords(problems.value, findings.value)
    if (words !== last && last !== undefined) say(words)
    last = words
  })
}

/** The title of the project is that of the browser's tab, with a mark while there is unsaved work. */
export function titleOf(title: string, unsaved: boolean): string {
  return `${unsaved ? '* ' : ''}${title === '' ? 'Storyrod' : `${title} · Storyrod`}`
}

/** Keeps the title of the browser's tab. Returns what ends it. */
export function keepTitle({ workshop: { outline }, unsaved }: Page): () => void {
  return effect(() => {
    document.title = titleOf(outline.value?.title ?? '', unsaved.value)
  })
}
