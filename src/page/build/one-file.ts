import { createHash } from 'node:crypto'
import type { Plugin } from 'vite'
import { SAMPLE_AT_ONCE } from '../protocol.ts'
import { SETTINGS_KEY } from '../state/settings.ts'
import { inAscii } from './ascii.ts'
import { type Programs, startOf } from './programs.ts'

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

/**
 * Puts the page that is one file by now in the order in which it is needed, writes the policy into it, and has it begin with
 * a picture of itself.
 */
export function oneFile(programs: Programs, firstPicture: () => Promise<string>): Plugin {
  return {
    name: 'one-file',
    apply: 'build',
    enforce: 'post',
    // After the one that puts script and style into the page.
    generateBundle: {
      order: 'post',
      async handler(_, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type === 'asset' && file.fileName.endsWith('.html'))
            file.source = laidOut(String(file.source), programs, await firstPicture())
        }
      },
    },
  }
}

const CHARSET = '<meta charset="utf-8" />'

/** Where the first programs go. */
const HERE = '<!-- programs -->'

/**
 * The picture first; then the worker that draws, so that it gets ready while the rest is read; what makes files, half of the page;
 * and last the page's own script, which keeps the browser from all else while it begins.
 */
function laidOut(html: string, programs: Programs, picture: string): string {
  const [tag, code] = /<script type="module"[^>]*>([\s\S]*?)<\/script>/.exec(html) ?? []
  const [styleTag, style] = /<style[^>]*>([\s\S]*?)<\/style>/.exec(html) ?? []
  const [standIn] = /<div id="page">[\s\S]*?<\/main>\s*<\/div>/.exec(html) ?? []
  if (tag === undefined || code === undefined) throw new Error('no script in the page')
  if (styleTag === undefined || style === undefined) throw new Error('no style in the page')
  if (standIn === undefined) throw new Error('nothing in the page that a picture can stand in for')
  if (!html.includes(CHARSET)) throw new Error('the page does not say its character set')
  if (/\bimport\.meta\b/.test(code)) throw new Error('the script is a module in more than its name')
  const asText = (name: string): string => `<script type="text/plain" id="${name}">${programs.get(name)}</script>`
  const [theme, start] = [themeScript(), startScript()]
  const own = `(() => {'use strict';${inAscii.script(code)}})()`
  const first = `${asText('workshop')}\n<script>${start}</script>`
  const last = [...programs.keys()].filter((name) => name !== 'workshop').map(asText)
  const head = `${CHARSET}\n    <meta http-equiv="Content-Security-Policy" content="${policy([theme, start, own])}" />\n    <script>${theme}</script>`
  return inAscii
    .markup(
      html
        .replace(tag, () => '')
        .replace(styleTag, () => `<style>${inAscii.style(style)}</style>`)
        .replace(standIn, () => `<div id="page" inert aria-busy="true">${picture}</div>${HERE}`)
        .replace(CHARSET, () => head),
    )
    .replace(HERE, () => `\n${first}`)
    .replace('</body>', () => `${[...last, `<script>${own}</script>`].join('\n')}\n</body>`)
}

/** A theme that was chosen holds from the first picture on. Some browsers keep nothing for a page from the disk, and throw. */
const themeScript = (): string =>
  `try { const { theme } = JSON.parse(localStorage.getItem('${SETTINGS_KEY}'));` +
  "if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme } catch {}"

/**
 * Starts the worker that draws, with the sample, and keeps what it says until the page hears it. A file that is dropped before the
 * page can take it must not take the place of the page.
 */
const startScript = (): string =>
  "for (const kind of ['dragover', 'drop']) addEventListener(kind, (event) => {" +
  "if (event.dataTransfer?.types.includes('Files')) event.preventDefault() });" +
  `window.storyrodEarly = { worker: ${startOf('workshop', `{ name: '${SAMPLE_AT_ONCE}' }`)}, answers: [] };` +
  'storyrodEarly.worker.onmessage = ({ data }) => storyrodEarly.answers.push(data)'
