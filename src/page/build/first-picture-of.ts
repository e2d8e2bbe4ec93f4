import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Window } from 'happy-dom'
import { build, type Plugin } from 'vite'

/** What the page's code looks for where it is drawn without a browser. */
const GLOBALS = [
  'document',
  'window',
  'Element',
  'HTMLElement',
  'SVGElement',
  'Node',
  'ResizeObserver',
  'MutationObserver',
  'matchMedia',
  'requestAnimationFrame',
  'cancelAnimationFrame',
  'addEventListener',
  'removeEventListener',
] as const

/** How long what was put off still looks for a document, ms. */
const LAST_DOINGS_MS = 200

/**
 * The page's first picture, as markup: what `drawFirstPicture` of this module draws. So one sees the sample as soon as the
 * browser has read the head of the page, and not only when all programs run.
 */
export async function firstPicture(module: string): Promise<string> {
  const draw = await loaded(module)
  const window = new Window({ width: 1280, height: 800 })
  const before = GLOBALS.map((name) => Object.getOwnPropertyDescriptor(globalThis, name))
  for (const name of GLOBALS) {
    const value: unknown = window[name]
    const bound = typeof value === 'function' && /^[a-z]/.test(name) ? value.bind(window) : value
    Object.defineProperty(globalThis, name, { value: bound, configurable: true, writable: true })
  }
  try {
    const root = window.document.createElement('div')
    window.document.body.append(root)
    return await draw(root)
  } finally {
    // What the page meant to do after its first drawing finds nothing to do it on.
    await new Promise((resolve) => setTimeout(resolve, LAST_DOINGS_MS))
    for (const [index, name] of GLOBALS.entries()) {
      const earlier = before[index]
      if (earlier === undefined) Reflect.deleteProperty(globalThis, name)
      else Object.defineProperty(globalThis, name, earlier)
    }
    await window.happyDOM.close()
  }
}

/** Built into one file first: loaded module by module it would take ten times as long. */
async function loaded(module: string): Promise<(root: unknown) => Promise<string>> {
  const built = await build({
    configFile: false,
    root: join(module, '../..'),
    logLevel: 'error',
    plugins: [withoutStyles],
    build: { ssr: module, write: false, minify: false },
    ssr: { noExternal: true },
  })
  const [file] = [built].flat().flatMap((one) => ('output' in one ? one.output : []))
  if (file?.type !== 'chunk') throw new Error('the first picture is no program')
  const folder = mkdtempSync(join(tmpdir(), 'first-picture-'))
  try {
    const path = join(folder, 'first-picture.mjs')
    writeFileSync(path, file.code)
    const { drawFirstPicture } = await import(pathToFileURL(path).href)
    return drawFirstPicture
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A picture that is only markup has no use for them. */
const withoutStyles: Plugin = {
  name: 'without-styles',
  enforce: 'pre',
  load: (id) => (/\.css$/.test(id) ? { code: '', moduleType: 'js' } : undefined),
}
