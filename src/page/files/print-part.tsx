import { type Signal, useSignal, useSignalEffect } from '@preact/signals'
import type { JSX } from 'preact'
import type { FilesOutline, PrintChoice } from '../../outputs/index.ts'
import { usePage } from '../state/page.ts'
import type { PrintedPage } from './asks.ts'
import { useBench } from './bench.ts'
import { layOutForPrint, loadLetters } from './printing.ts'
import type { Taking } from './taking.ts'

/** Pages that are drawn and wait to be printed. */
interface Ready {
  readonly pages: readonly PrintedPage[]
  readonly words: string
}

/** Full-size pages onto paper, straight from the browser: choose, see how many sheets, print. */
export function PrintPart({ taking }: { readonly taking: Taking }): JSX.Element {
  const bench = useBench()
  const { document, workshop } = usePage()
  const choice = useSignal('measuring')
  const ready = useSignal<Ready | undefined>(undefined)
  // What was drawn is of the definition as it was.
  useSignalEffect(() => {
    void [document.source.value, choice.value, taking.anyway.given.value]
    ready.value = undefined
  })
  const off = taking.state.value.kind === 'busy' || taking.hindrance.value !== undefined
  const files = workshop.files.value
  return (
    <div class="take-part">
      <ol>
        <li>Print the page to measure alone, and measure its two bars of 180 mm.</li>
        <li>Where they are not 180 mm, say so under Paper and printer.</li>
        <li>
          Then print what you drill. In the browser's own window choose 100 % or actual size, no margins, no heads and
          feet.
        </li>
      </ol>
      <div class="field">
        <label for="print-what">What to print</label>
        <select
          id="print-what"
          value={choice.value}
          onChange={({ currentTarget }) => (choice.value = currentTarget.value)}
        >
          <option value="measuring">the page to measure</option>
          <option value="all">all pages, with a cover</option>
          {files !== undefined && <ModuleChoices files={files} />}
        </select>
      </div>
      <div class="presses">
        <button type="button" disabled={off} onClick={() => draw(choice.value, taking, ready, bench)}>
          Draw and count the sheets
        </button>
        <button
          type="button"
          class="main"
          disabled={off || ready.value === undefined}
          onClick={() => ready.value && print(ready.value, taking, bench)}
        >
          Print full size
        </button>
      </div>
      <p role="status">{ready.value?.words}</p>
    </div>
  )
}

function ModuleChoices({ files }: { readonly files: FilesOutline }): JSX.Element {
  const printed = files.panels.filter((panel) => panel.files.pdf.length > 0)
  const modules = [...new Set(printed.map(({ module }) => module))]
  return (
    <>
      {modules.map((module) => {
        const panels = printed.filter((panel) => panel.module === module)
        const name = panels[0]?.moduleName ?? module
        return (
          <optgroup key={module} label={name}>
            <option value={`module ${module}`}>all of {name}</option>
            {panels.map((panel) => (
              <option key={panel.id} value={`panel ${panel.id}`}>
                {name}: {panel.name}
              </option>
            ))}
          </optgroup>
        )
      })}
    </>
  )
}

/** `panel glaze-store/left-side` as the choice that it stands for. */
function choiceOf(value: string): PrintChoice {
  const [of = '', key = ''] = value.split(/ (.*)/)
  if (of === 'panel') return { of, panel: key }
  if (of === 'module') return { of, module: key }
  return { of: of === 'all' ? 'all' : 'measuring' }
}

async function draw(
  chosen: string,
  taking: Taking,
  ready: Signal<Ready | undefined>,
  { page }: ReturnType<typeof useBench>,
): Promise<void> {
  const source = page.document.source.peek()
  const front: PrintedPage[] = []
  const pages: PrintedPage[] = []
  let words: string | undefined
  const job = { kind: 'print', choice: choiceOf(chosen), source, anyway: taking.anyway.given.peek() } as const
  const done = await taking.run(job, 'Panels', (news) => {
    if (news.kind === 'pages') (news.front ? front : pages).push(...news.pages)
    if (news.kind === 'done') words = news.words
  })
  if (!done || page.document.source.peek() !== source) return
  ready.value = { pages: [...front, ...pages], words: sheetsOf(words, front.length) }
  taking.say('The pages are drawn.')
}

/** What goes through the printer, in words. */
function sheetsOf(words: string | undefined, front: number): string {
  const before = front === 1 ? '1 sheet' : `${front} sheets`
  if (words === undefined) return front === 0 ? 'There is nothing to print.' : `${before} to print.`
  return front === 0 ? `${words}.` : `${words}, and ${before} before them.`
}

async function print({ pages }: Ready, taking: Taking, { desk }: ReturnType<typeof useBench>): Promise<void> {
  try {
    await loadLetters(desk.crew)
  } catch (error) {
    // Without their letters the words of the pages would stand elsewhere than they were laid out.
    taking.say(`Nothing was printed: ${error instanceof Error ? error.message : error}`)
    return
  }
  addEventListener('afterprint', layOutForPrint(pages), { once: true })
  window.print()
}
