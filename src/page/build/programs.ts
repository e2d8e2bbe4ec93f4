import { gzipSync } from 'node:zlib'
import type { Plugin } from 'vite'
import { inAscii } from './ascii.ts'

/** The program of a worker as it lies in the page, by its file's name: text that the browser neither reads nor runs by itself. */
export type Programs = ReadonlyMap<string, string>

/** Programs that lie packed, since they are large and wanted late. */
const PACKED: ReadonlySet<string> = new Set(['files'])

/** What would end the text in the page, or begin a script in it, has this in the place of its first letter. */
const MARK = '(less than)'
const ENDS_TEXT = /<(?=\/?script|!--)/gi

/**
 * How the page starts a program, as an expression; `options`: those of the worker. What is started more than once is kept as it
 * was first taken out of the page.
 */
export function startOf(name: string, options?: string): string {
  const started = (blob: string): string =>
    `new Worker(URL.createObjectURL(${blob})${options === undefined ? '' : `, ${options}`})`
  const text = `document.getElementById('${name}').textContent`
  if (PACKED.has(name)) {
    const bytes = `Uint8Array.from(atob(${text}), (letter) => letter.charCodeAt(0))`
    const plain = `new Blob([${bytes}]).stream().pipeThrough(new DecompressionStream('gzip'))`
    return `new Response(${plain}).blob().then((program) => ${started(`new Blob([program], ${SCRIPT})`)})`
  }
  return started(
    `(window.storyrodPrograms ??= {})['${name}'] ??= new Blob([${text}.replaceAll('${MARK}', '<')], ${SCRIPT})`,
  )
}

const SCRIPT = "{ type: 'text/javascript' }"

/**
 * Takes the programs of workers out of the script: megabytes that it would have to be read through for before it runs. What
 * `new` gives for one that lies packed is the promise of its worker.
 */
export function programsAside(programs: Map<string, string>): Plugin {
  return {
    name: 'programs-aside',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      const name = /([\w-]+)\.worker\.ts\?worker&inline$/.exec(id)?.[1]
      if (name === undefined) return undefined
      const [, program] = /^const jsContent = (".*");$/m.exec(code) ?? []
      if (program === undefined) throw new Error(`no program in ${id}`)
      programs.set(name, PACKED.has(name) ? packed(JSON.parse(program)) : plain(name, JSON.parse(program)))
      return { code: `export default function WorkerOf() { return ${startOf(name)} }`, map: null }
    },
  }
}

const packed = (program: string): string => gzipSync(program, { level: 9 }).toString('base64')

function plain(name: string, program: string): string {
  if (program.includes(MARK)) throw new Error(`the program of ${name} holds the mark itself`)
  return inAscii.script(program).replace(ENDS_TEXT, MARK)
}
