import { createHash } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin } from 'vite'
import { viteSingleFile } from 'vite-plugin-singlefile'

const folder = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/**
 * Nothing is fetched and nothing is sent: only the page's own scripts run (they are named by their hashes), its workers come
 * out of it as blobs, and no address may be connected to. The editor sets its styles from the script, so these are allowed.
 */
const policy = (scripts: readonly string[]): string =>
  [
    "default-src 'none'",
    `script-src ${scripts.map((script) => `'sha256-${createHash('sha256').update(script).digest('base64')}'`).join(' ')}`,
    'worker-src blob:',
    "style-src 'unsafe-inline'",
    'img-src data: blob:',
    'font-src data: blob:',
    'frame-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')

/** The program of a worker as it lies in the page, by its file's name: text that the browser neither reads nor runs by itself. */
const programs = new Map<string, string>()

/** What would end the text in the page, or begin a script in it, has this in the place of its first letter. */
const MARK = '\uE000'
const ENDS_TEXT = /<(?=\/?script|!--)/gi

/** How the page starts a program. The worker itself lets go of its address. */
const startOf = (name: string): string =>
  `new Worker(URL.createObjectURL(new Blob(['URL.revokeObjectURL(location.href);', ` +
  `document.getElementById('${name}').textContent.replaceAll('${MARK}', '<')], { type: 'text/javascript' })))`

/** Takes the programs of workers out of the script: four megabytes that it would have to be read through for before it runs. */
function programsAside(): Plugin {
  return {
    name: 'programs-aside',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      const name = /([\w-]+)\.worker\.ts\?worker&inline$/.exec(id)?.[1]
      if (name === undefined) return undefined
      const [, program] = /^const jsContent = (".*");$/m.exec(code) ?? []
      if (program === undefined) throw new Error(`no program in ${id}`)
      const text: string = JSON.parse(program)
      if (text.includes(MARK)) throw new Error(`the program of ${name} holds the mark itself`)
      programs.set(name, text.replace(ENDS_TEXT, MARK))
      return { code: `export default function WorkerOf() { return ${startOf(name)} }`, map: null }
    },
  }
}

/** Puts the page that is one file by now in the order in which it is needed, and writes the policy into it. */
function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    enforce: 'post',
    // After the one that puts script and style into the page.
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type === 'asset' && file.fileName.endsWith('.html'))
            file.source = withPolicy(inOrder(String(file.source)))
        }
      },
    },
  }
}

/**
 * The worker that draws is started before the page's own script is read, so that both get ready side by side; that script runs
 * where it stands and waits for nothing behind it; and what makes files, more than half of the page, comes last.
 */
function inOrder(html: string): string {
  const [script, code] = /<script type="module"[^>]*>([\s\S]*?)<\/script>/.exec(html) ?? []
  const [first, ...later] = ['workshop', 'files'].map((name): readonly [string, string] => {
    const program = programs.get(name)
    if (program === undefined) throw new Error(`no program ${name}`)
    return [name, `<script type="text/plain" id="${name}">${program}</script>`]
  })
  if (script === undefined || code === undefined || first === undefined) throw new Error('no script in the page')
  if (/\bimport\.meta\b/.test(code)) throw new Error('the script is a module in more than its name')
  const start = `<script>window.storyrodDrawer = ${startOf(first[0])}</script>`
  const own = `<script>(() => {'use strict';${code}})()</script>`
  const body = [first[1], start, own, ...later.map(([, text]) => text)].join('\n')
  return html.replace(script, () => '').replace('</body>', () => `${body}\n</body>`)
}

function withPolicy(html: string): string {
  const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, script = '']) => script)
  if (scripts.length !== 2 || scripts.includes('')) throw new Error(`${scripts.length} scripts in the page, not 2`)
  const charset = '<meta charset="utf-8" />'
  if (!html.includes(charset)) throw new Error('the page does not say its character set')
  return html.replace(
    charset,
    () => `${charset}\n    <meta http-equiv="Content-Security-Policy" content="${policy(scripts)}" />`,
  )
}

// The writer of PDF files is large, and only the worker that makes files writes them: all others are to leave it out.
const treeshake = { moduleSideEffects: [{ test: /node_modules.pdfkit/, sideEffects: false }] }

export default defineConfig({
  root: folder('.'),
  // One file: whatever it is built into holds nothing else.
  build: {
    outDir: folder('../../dist/page'),
    emptyOutDir: true,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    chunkSizeWarningLimit: 10_000,
    reportCompressedSize: false,
    rolldownOptions: { treeshake },
  },
  worker: {
    format: 'iife',
    rolldownOptions: { treeshake },
  },
  server: { fs: { allow: [folder('../..')] } },
  plugins: [programsAside(), viteSingleFile({ removeViteModuleLoader: true }), contentPolicy()],
})
