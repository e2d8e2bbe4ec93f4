import './look/page.css'
import { render } from 'preact'
import { App } from './app.tsx'
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
const root = document.getElementById('page')
if (root === null) throw new Error('the page has lost its root')
// What stood there until now was only to be seen while this was read.
root.replaceChildren()
render(<App page={page} />, root)
