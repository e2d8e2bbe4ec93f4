import { useSignalEffect } from '@preact/signals'
import type { ComponentChildren, JSX } from 'preact'
import { DrawingPane } from './drawing/drawing-pane.tsx'
import { FilesBar } from './files/files-bar.tsx'
import { TakeAway } from './files/take-away.tsx'
import { FindingsPane } from './findings/findings-pane.tsx'
import { FormPane } from './form/form-pane.tsx'
import { SettingsMenu } from './look/settings-menu.tsx'
import { AREAS, type Area, type Page, PageContext, usePage } from './state/page.ts'
import { TextPane } from './text/text-pane.tsx'

/** The whole page. */
export function App({ page }: { page: Page }): JSX.Element {
  useSignalEffect(() => {
    const theme = page.settings.theme.value
    const { dataset } = document.documentElement
    if (theme === 'as the system') delete dataset.theme
    else dataset.theme = theme
  })
  return (
    <PageContext.Provider value={page}>
      <header class="head">
        <h1>Storyrod</h1>
        <FilesBar />
        <SettingsMenu />
      </header>
      <main class="areas" data-area={page.area.value}>
        <AreaOf area="Define">
          <DefineSwitch />
          {page.define.value === 'form' ? <FormPane /> : <TextPane />}
        </AreaOf>
        <AreaOf area="See">
          <DrawingPane />
        </AreaOf>
        <AreaOf area="Judge">
          <FindingsPane />
        </AreaOf>
        <AreaOf area="Take away">
          <TakeAway />
        </AreaOf>
      </main>
      <AreaBar />
    </PageContext.Provider>
  )
}

const idOf = (area: Area): string => area.toLowerCase().replace(' ', '-')

function AreaOf({ area, children }: { area: Area; children: ComponentChildren }): JSX.Element {
  return (
    <section class={`area area-${idOf(area)}`} id={idOf(area)} aria-label={area}>
      {children}
    </section>
  )
}

function DefineSwitch(): JSX.Element {
  const { define } = usePage()
  return (
    <fieldset class="switch">
      <legend class="unseen">How the definition is shown</legend>
      {(['form', 'text'] as const).map((way) => (
        <label key={way}>
          <input type="radio" name="define" checked={define.value === way} onChange={() => (define.value = way)} />
          <span>{way === 'form' ? 'Form' : 'Text'}</span>
        </label>
      ))}
    </fieldset>
  )
}

/** At the foot of a phone's screen: which area is shown. */
function AreaBar(): JSX.Element {
  const { area } = usePage()
  return (
    <nav class="area-bar" aria-label="Parts of the page">
      {AREAS.map((one) => (
        <button key={one} type="button" aria-current={area.value === one} onClick={() => (area.value = one)}>
          {one}
        </button>
      ))}
    </nav>
  )
}
