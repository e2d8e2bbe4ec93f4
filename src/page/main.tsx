import './look/page.css'
import { effect, untracked } from '@preact/signals'
import { render } from 'preact'
import { App } from './app.tsx'
import { DeskContext, deskOf } from './files/desk.ts'
import { SAMPLE } from './sample.ts'
import { pageDocument } from './state/document.ts'
import { pageOf } from './state/page.ts'
import { keptSettings } from './state/settings.ts'
import { workshop } from './state/workshop.ts'
import { textExtensions } from './text/extensions.ts'
import { startChecker, startDrawer } from './workers/hands.ts'

/** Some browsers forbid a page from the disk to keep anything, and throw when it is only asked for. */
function storage(): Storage | undefined {
  try {
    return window.localStorage
  } catch {
    return undefined
  }
}

const settings = keptSettings(storage())
const document_ = pageDocument(SAMPLE, textExtensions())
const page = pageOf(document_, workshop(document_, startDrawer(), startChecker(), settings.units), settings)
const desk = deskOf(document_, storage())
effect(() => {
  page.unsaved.value = desk.work.unsaved.value
})
const root = document.getElementById('page')
if (root === null) throw new Error('the page has lost its root')

/** In the place of the picture of it that was to be seen while this was read. */
function begin(place: HTMLElement): void {
  place.replaceChildren()
  place.removeAttribute('inert')
  place.removeAttribute('aria-busy')
  render(
    <DeskContext.Provider value={desk}>
      <App page={page} />
    </DeskContext.Provider>,
    place,
  )
}

/** How long the drawing is waited for, ms: without it the page is still of use. */
const PATIENCE_MS = 6000

let begun = false
const beginOnce = (): void => {
  if (begun) return
  begun = true
  begin(root)
}
setTimeout(beginOnce, PATIENCE_MS)
// With its drawing, so that nothing that was there goes away for a moment.
effect(() => {
  if (page.workshop.scene.value !== undefined) untracked(beginOnce)
})
