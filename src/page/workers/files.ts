import { type Zippable, zipSync } from 'fflate'
import type { Drawing } from '../../drawing/index.ts'
import {
  type Built,
  type DefinitionText,
  definitionText,
  type Fonts,
  type OutputFile,
  openDefinition,
  outputFile,
  outputFiles,
  outputPaths,
  type PrintChoice,
  printedPages,
  printWords,
  stampOf,
  stopsStanding,
  stopWords,
} from '../../outputs/index.ts'
import { renderProblems, stemOf } from '../../project/index.ts'
import { pageSvgOf } from '../../writers/index.ts'
import { type FilesAnswer, type FilesAsk, type FilesNews, type PrintedPage, whatIsDrawn } from '../files/asks.ts'
import type { DefinitionSource } from '../protocol.ts'

type Tell = (news: FilesNews) => void

/** A definition that may be drawn, and the warning that goes onto every sheet where a stop stands. */
interface Drawable {
  readonly built: Built
  readonly definition: DefinitionText
  readonly options: { readonly stamp?: string }
}

/** What the worker that makes files does, apart from the worker: the same files as the command, by the same rules. */
export function filesMaker(fonts: () => Fonts, post: (answer: FilesAnswer) => void): (ask: FilesAsk) => Promise<void> {
  const open = keeper()
  return async (ask) => {
    const tell: Tell = (news) => post({ number: ask.number, ...news })
    if (ask.kind === 'fonts') {
      tell({ kind: 'fonts', fonts: fonts() })
      tell({ kind: 'done' })
      return
    }
    const opened = open(ask.source, ask.anyway)
    if (typeof opened === 'string') {
      tell({ kind: 'refused', words: opened })
      return
    }
    switch (ask.kind) {
      case 'all':
        for await (const file of counted(opened, fonts(), tell)) tell({ kind: 'file', file })
        tell({ kind: 'done' })
        break
      case 'zip':
        tell({ kind: 'file', file: await zipped(opened, fonts(), tell) })
        tell({ kind: 'done' })
        break
      case 'one':
        await one(opened, fonts(), ask.path, tell)
        break
      case 'print':
        print(opened, ask.choice, tell)
        break
      default:
        ask satisfies never
    }
  }
}

/** Opens a definition, or says why nothing may be drawn of it; what was opened last is kept. */
function keeper(): (source: DefinitionSource, anyway: boolean) => Drawable | string {
  let key = ''
  let kept: ReturnType<typeof openDefinition> | undefined
  return (source, anyway) => {
    const now = JSON.stringify(source)
    if (kept === undefined || now !== key)
      kept = openDefinition(source.text, source.file, new Map(source.files), source.print)
    key = now
    if (!kept.ok) return kept.options?.join('\n') ?? renderProblems(kept.problems)
    const { built, locate } = kept
    const stops = stopsStanding(built.findings)
    if (stops > 0 && !anyway) return `Nothing drawn from ${source.file}: ${stopWords(stops)}.`
    return {
      built,
      definition: definitionText(source.file, locate),
      options: stops > 0 ? { stamp: stampOf(stops) } : {},
    }
  }
}

/** Every file, each announced as it is made. */
async function* counted(
  { built, definition, options }: Drawable,
  fonts: Fonts,
  tell: Tell,
): AsyncGenerator<OutputFile> {
  const of = outputPaths(built).length
  let done = 0
  for await (const file of outputFiles(built, fonts, definition, options)) {
    done += 1
    tell({ kind: 'progress', done, of, what: whatIsDrawn(file.path) })
    yield file
  }
}

/** Every file in a folder of the definition's name; the same bytes wherever and whenever it is made. */
async function zipped(drawable: Drawable, fonts: Fonts, tell: Tell): Promise<OutputFile> {
  const folder = `${stemOf(drawable.definition.file)}-drawings`
  const files: Zippable = {}
  // A zip has the local time of day and no zone, and begins in 1980: a local date is the same figures in all zones.
  const mtime = new Date(1980, 0, 1)
  for await (const { path, bytes } of counted(drawable, fonts, tell)) files[`${folder}/${path}`] = [bytes, { mtime }]
  return { path: `${folder}.zip`, bytes: zipSync(files) }
}

async function one({ built, definition, options }: Drawable, fonts: Fonts, path: string, tell: Tell): Promise<void> {
  const file = await outputFile(built, fonts, definition, path, options)
  if (file === undefined) {
    tell({ kind: 'refused', words: `There is no file ${path} any more: the definition has changed.` })
    return
  }
  tell({ kind: 'file', file })
  tell({ kind: 'done' })
}

function print({ built, options }: Drawable, choice: PrintChoice, tell: Tell): void {
  const made = printedPages(built, choice, options.stamp)
  for (let panels = 1; ; panels += 1) {
    const step = made.next()
    if (step.done === true) {
      const words = printWords(step.value, built.project.outputs)
      tell({ kind: 'done', ...(words !== undefined && { words }) })
      return
    }
    const { of, drawings, front } = step.value
    tell({ kind: 'pages', pages: drawings.map(printed), front })
    tell({ kind: 'progress', done: Math.min(panels, built.panels.length), of: built.panels.length, what: of })
  }
}

function printed(drawing: Drawing): PrintedPage {
  const { min, max } = drawing.view
  const [x, y] = drawing.stretch ?? [1, 1]
  return { width: (max[0] - min[0]) * x, height: (max[1] - min[1]) * y, svg: pageSvgOf(drawing) }
}
