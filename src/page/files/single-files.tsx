import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import type { FilesOfPanel, FilesOutline } from '../../outputs/index.ts'
import { usePage } from '../state/page.ts'
import type { Taking } from './taking.ts'

type Kind = keyof FilesOfPanel['files']

const KINDS: readonly (readonly [kind: Kind, words: string])[] = [
  ['svg', 'Drawings to look at (SVG)'],
  ['dxf', 'For the machine (DXF)'],
  ['pdf', 'Full-size pages (PDF)'],
]

/** What files that belong to no panel are, by the end of their path. */
const SHARED: Readonly<Record<string, string>> = {
  'measure-first.pdf': 'the page to print first, and to measure',
  'all-pages.pdf': 'all pages, with a cover; takes a while',
  'pages.json': 'what there is to print; takes a while',
  'panels.json': 'every panel and every hole, for other programs',
  'findings.json': 'the findings, for other programs',
  'findings.txt': 'the findings, to read',
}

/** Every file by its kind, each to be had alone. */
export function SingleFiles({ taking }: { readonly taking: Taking }): JSX.Element | null {
  const files = usePage().workshop.files.value
  if (files === undefined) return null
  const own = new Set(files.panels.flatMap(({ files: { svg, dxf, pdf } }) => [...svg, ...dxf, ...pdf]))
  const shared = files.paths.filter((path) => !own.has(path))
  return (
    <div class="take-part">
      {KINDS.map(([kind, words]) => {
        const count = files.panels.reduce((sum, panel) => sum + panel.files[kind].length, 0)
        return (
          <Fold key={kind} words={`${words}: ${count}`}>
            {() => <OfKind files={files} kind={kind} taking={taking} />}
          </Fold>
        )
      })}
      <Fold words={`Lists, and pages of all: ${shared.length}`}>
        {() => (
          <ul class="rows file-rows">
            {shared.map((path) => (
              <li key={path}>
                <span>{SHARED[lastStep(path)] ?? ''}</span>
                <Take taking={taking} path={path} words={lastStep(path)} />
              </li>
            ))}
          </ul>
        )}
      </Fold>
    </div>
  )
}

const lastStep = (path: string): string => path.replace(/^.*\//, '')

/** Filled when it is opened first: hundreds of presses that nobody looks at would cost every change. */
function Fold({ words, children }: { readonly words: string; readonly children: () => JSX.Element }): JSX.Element {
  const isOpen = useSignal(false)
  return (
    <details
      class="fold"
      onToggle={({ currentTarget }) => {
        isOpen.value = currentTarget.open
      }}
    >
      <summary>{words}</summary>
      {isOpen.value && children()}
    </details>
  )
}

function OfKind({
  files,
  kind,
  taking,
}: {
  readonly files: FilesOutline
  readonly kind: Kind
  readonly taking: Taking
}): JSX.Element {
  const modules = [...new Set(files.panels.map(({ module }) => module))]
  return (
    <>
      {modules.map((module) => {
        const panels = files.panels.filter((panel) => panel.module === module && panel.files[kind].length > 0)
        if (panels.length === 0) return null
        return (
          <section key={module}>
            <h3 class="take-module">{panels[0]?.moduleName}</h3>
            <ul class="rows file-rows">
              {panels.map((panel) => (
                <li key={panel.id}>
                  <span>{panel.name}</span>
                  {panel.files[kind].map((path) => (
                    <Take
                      key={path}
                      taking={taking}
                      path={path}
                      words={pressWords(kind, path)}
                      of={`${panel.moduleName}, ${panel.name}`}
                    />
                  ))}
                </li>
              ))}
            </ul>
          </section>
        )
      })}
    </>
  )
}

/** `face A`, as the file's own name ends; pages are of all faces. */
const pressWords = (kind: Kind, path: string): string =>
  kind === 'pdf' ? 'PDF' : `face ${path.slice(-`a.${kind}`.length, -`.${kind}`.length).toUpperCase()}`

function Take({
  taking,
  path,
  words,
  of,
}: {
  readonly taking: Taking
  readonly path: string
  readonly words: string
  readonly of?: string
}): JSX.Element {
  const off = taking.state.value.kind === 'busy' || taking.hindrance.value !== undefined
  return (
    <button type="button" disabled={off} data-path={path} onClick={() => taking.one(path)}>
      {words}
      {of !== undefined && <span class="unseen"> of {of}</span>}
    </button>
  )
}
