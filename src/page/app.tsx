import { useComputed, useSignalEffect } from '@preact/signals'
import type { ComponentChildren, JSX } from 'preact'
import { useEffect } from 'preact/hooks'
import { DrawingPane } from './drawing/drawing-pane.tsx'
import { FilesBar } from './files/files-bar.tsx'
import { FilesStrips } from './files/strips.tsx'
import { TakeAway } from './files/take-away.tsx'
import { FindingsCount } from './findings/findings-count.tsx'
import { FindingsPane } from './findings/findings-pane.tsx'
import { FirstLook } from './first-look/first-look.tsx'
import { FormPane } from './form/form-pane.tsx'
import { Announcer, keepTitle } from './look/announcer.tsx'
import { AreaBar } from './look/area-bar.tsx'
import { Rod } from './look/rod.tsx'
import { SettingsMenu } from './look/settings-menu.tsx'
import { UndoPresses } from './look/undo.tsx'
import { AREAS, type Area, type Page, PageContext, usePage } from './state/page.ts'
import { TextPane } from './text/text-pane.tsx'

/** The whole page. It is put together once: what changes is drawn anew by the part that shows it. */
export function App({ page }: { readonly page: Page }): JSX.Element {
  useEffect(() => keepTitle(page), [page])
  useSignalEffect(() => {
    const theme = page.settings.theme.value
    const { dataset } = document.documentElement
    if (theme === 'as the system') delete dataset.theme
    else dataset.theme = theme
  })
  return (
    <PageContext.Provider value={page}>
      <button type="button" class="skip" onClick={() => skipToDrawing(page)}>
        Skip to the drawing
      </button>
      <header class="head">
        <h1>Storyrod</h1>
        <div class="files">
          <FilesBar />
        </div>
        <UndoPresses />
        <SettingsMenu />
      </header>
      <Rod />
      <FilesStrips />
      <FirstLook />
      <Areas>
        <AreaOf area="Define" beside={<DefineHead />} before={<Unfold />}>
          <DefineBody />
        </AreaOf>
        <AreaOf area="See">
          <DrawingPane />
        </AreaOf>
        <AreaOf area="Judge" beside={<FindingsCount />}>
          <FindingsPane />
        </AreaOf>
        <AreaOf area="Take away">
          <TakeAway />
        </AreaOf>
      </Areas>
      <AreaBar />
      <Announcer />
    </PageContext.Provider>
  )
}

/** On a phone the drawing may not be the area that is shown. */
function skipToDrawing({ area }: Page): void {
  area.value = 'See'
  document.getElementById('see')?.focus()
}

function Areas({ children }: { readonly children: ComponentChildren }): JSX.Element {
  const { area, settings } = usePage()
  const folded = useComputed(() => `areas${settings.define.value === 'folded' ? ' define-folded' : ''}`)
  return (
    <main class={folded} data-area={area}>
      {children}
    </main>
  )
}

const idOf = (area: Area): string => area.toLowerCase().replace(' ', '-')

/** One area, headed as a numbered note of a drawing; `beside`: what stands in its head. */
function AreaOf({
  area,
  beside,
  before,
  children,
}: {
  readonly area: Area
  readonly beside?: ComponentChildren
  readonly before?: ComponentChildren
  readonly children: ComponentChildren
}): JSX.Element {
  const id = idOf(area)
  return (
    <section class={`area area-${id}`} id={id} tabIndex={-1} aria-labelledby={`${id}-heading`}>
      {before}
      <div class="area-head">
        <h2 id={`${id}-heading`}>
          <span class="note-number">{AREAS.indexOf(area) + 1}</span> {area}
        </h2>
        {beside}
      </div>
      <div class="area-body">{children}</div>
    </section>
  )
}

function DefineBody(): JSX.Element {
  return usePage().define.value === 'form' ? <FormPane /> : <TextPane />
}

function DefineHead(): JSX.Element {
  const { define, settings } = usePage()
  return (
    <>
      <fieldset class="switch at-end">
        <legend class="unseen">How the definition is shown</legend>
        {(['form', 'text'] as const).map((way) => (
          <label key={way}>
            <input type="radio" name="define" checked={define.value === way} onChange={() => (define.value = way)} />
            <span>{way === 'form' ? 'Form' : 'Text'}</span>
          </label>
        ))}
      </fieldset>
      <button type="button" class="plain fold-define" onClick={() => fold('folded', settings.define)}>
        Put aside<span class="unseen"> Define</span>
      </button>
    </>
  )
}

function Unfold(): JSX.Element {
  const { settings } = usePage()
  return (
    <button type="button" class="unfold" onClick={() => fold('open', settings.define)}>
      <span class="note-number">1</span> Bring back Define
    </button>
  )
}

/** The press that was used goes away with it, so the focus goes to the one that takes it back. */
function fold(to: 'open' | 'folded', define: Page['settings']['define']): void {
  define.value = to
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>(to === 'folded' ? '.unfold' : '.fold-define')?.focus()
  })
}
