import { dirname, join, relative, resolve } from 'node:path'
import { withLineEnd } from './check.ts'
import type { Context } from './context.ts'
import { countOf, plural } from './counts.ts'
import { definitionsIn, readDefinitionFile, readNamedFile, stemOf } from './definition-file.ts'
import type { Design, FilesOptions, PrintOptions } from './engine.ts'
import { EXIT } from './exit-codes.ts'
import { loadFonts } from './fonts.ts'
import type { Replaced } from './replace-output.ts'
import { replaceOutput } from './replace-output.ts'
import { withStopRequest } from './stop-request.ts'
import { filesOfEarlierRun, findStrangers, renderStrangers } from './strangers.ts'
import { Trouble } from './trouble.ts'

export interface DrawOptions extends PrintOptions {
  readonly out?: string
  readonly anyway?: boolean
}

/** One definition and the folder that its drawings go to; both as they are shown to the person. */
interface Job {
  readonly definition: string
  readonly folder: string
  readonly anyway: boolean
  readonly print: PrintOptions
}

/** `storyrod draw`: draws one definition, or the samples when none is named. The exit code. */
export async function draw(context: Context, definition: string | undefined, options: DrawOptions): Promise<number> {
  if (options.out === '') throw new Trouble(EXIT.badInput, 'the folder after --out is empty.')
  const { out, anyway = false, paper, checkBars, pageBudget } = options
  const print = {
    ...(paper !== undefined && { paper }),
    ...(checkBars !== undefined && { checkBars }),
    ...(pageBudget !== undefined && { pageBudget }),
  }
  if (definition === undefined) return drawSamples(context, { folder: out ?? 'out-samples', anyway, print })
  const folder = out ?? join(dirname(definition), `${await stemOf(definition)}-drawings`)
  return drawOne(context, { definition, folder, anyway, print })
}

/** Draws each sample into a folder of its own. A sample that cannot be drawn does not keep the next from it. */
async function drawSamples(context: Context, job: Omit<Job, 'definition'>): Promise<number> {
  const home = join(context.io.home, 'out-samples')
  const names = await definitionsIn(context.io.disk, home)
  if (names.length === 0) {
    const words = `no sample definitions are in ${home}, where the installed program keeps them.`
    throw new Trouble(EXIT.diskTrouble, `${words}\n  Install Storyrod again, or name a definition of your own.`)
  }
  let worst: number = EXIT.done
  for (const name of names) {
    const definition = shown(context.io.cwd, join(home, name))
    const code = await drawOne(context, { ...job, definition, folder: join(job.folder, await stemOf(name)) })
    worst = Math.max(worst, code)
  }
  return worst
}

/** A path as short as it can be given from `cwd`: relative when it lies below. */
function shown(cwd: string, path: string): string {
  const short = relative(cwd, path)
  return short.startsWith('..') ? path : short
}

async function drawOne(context: Context, job: Job): Promise<number> {
  const { io, engine, progress } = context
  const text = await readDefinitionFile(io, job.definition)
  progress.show(`working out ${job.definition}`)
  const opened = await engine.open(text, job.definition, (name) => readNamedFile(io, job.definition, name), job.print)
  progress.clear()
  if (!opened.ok) {
    if (opened.of === 'options') throw new Trouble(EXIT.badInput, opened.problems)
    io.stderr.write(withLineEnd(opened.problems))
    return EXIT.badInput
  }
  const { design } = opened
  io.stdout.write(withLineEnd(design.findings))
  const stops = countOf('stop', design.severities)
  if (stops > 0 && !job.anyway) {
    io.stderr.write(await nothingDrawn(job.definition, stops))
    return EXIT.stopStands
  }
  await drawInto(context, job, design, stops)
  return EXIT.done
}

async function drawInto({ io, progress }: Context, job: Job, design: Design, stops: number): Promise<void> {
  const folder = resolve(io.cwd, job.folder)
  await assertDefinitionSafe(io, job, design.paths)
  const fonts = await loadFonts(io.disk)
  const earlier = await filesOfEarlierRun(io.disk, folder)
  const { stampOf } = await import('../outputs/index.ts')
  let done = 0
  let printed: string | undefined
  const options: FilesOptions = {
    fonts,
    ...(stops > 0 && { stamp: stampOf(stops) }),
    onPages: (words) => {
      printed = words
    },
  }
  const replaced = await withStopRequest(io, (stop) =>
    replaceOutput(io.disk, {
      folder,
      paths: design.paths,
      files: () => design.files(options),
      onFile: (path) => {
        done += 1
        progress.count(done, design.paths.length, whatIsDrawn(path))
      },
      stop,
    }),
  ).finally(() => progress.clear())
  io.stderr.write(renderStrangers(job.folder, await findStrangers(io.disk, folder, design.paths, earlier)))
  io.stdout.write(summary(job.folder, design.paths, replaced, printed))
}

/** Trouble when a drawing would take the place of the definition itself (`draw panels.json --out .`). */
async function assertDefinitionSafe(io: Context['io'], job: Job, paths: readonly string[]): Promise<void> {
  const folder = await io.disk.real(resolve(io.cwd, job.folder)).catch(() => undefined)
  if (folder === undefined) return
  const definition = await io.disk.real(resolve(io.cwd, job.definition)).catch(() => undefined)
  if (!paths.some((path) => join(folder, path) === definition)) return
  const words = `a drawing would take the place of the definition ${job.definition} itself.`
  throw new Trouble(EXIT.badInput, `${words}\n  Choose another folder with --out.`)
}

async function nothingDrawn(definition: string, stops: number): Promise<string> {
  const { stopWords } = await import('../outputs/index.ts')
  return `Nothing drawn from ${definition}: ${stopWords(stops)}.\n  Change the definition, or add --anyway: every drawing then says so.\n`
}

/** The module, in a path such as `svg/glaze-store/left-side-a.svg`; else the file. */
function whatIsDrawn(path: string): string {
  const names = path.split('/')
  return (names.length > 2 ? names[1] : names.at(-1)) ?? path
}

function summary(
  folder: string,
  paths: readonly string[],
  { written, same }: Replaced,
  printed: string | undefined,
): string {
  const kept = same === 0 ? '' : ` (${written} new or changed, ${same} the same as before)`
  const sheets = printed === undefined ? '' : `${printed}.\n`
  return `Drew ${plural(paths.length, 'file')} into ${folder}${kept}.\n${sheets}${openFirst(folder, paths)}`
}

/** Which files to open first, by what they are good for. */
function openFirst(folder: string, paths: readonly string[]): string {
  const uses: readonly (readonly [is: (path: string) => boolean, use: string])[] = [
    [(path) => path.endsWith('.svg'), 'to look at'],
    [(path) => path === 'templates/measure-first.pdf', 'to print first, and to measure'],
    [(path) => path === 'templates/all-pages.pdf', 'to print full size, all panels'],
    [(path) => /^templates\/.*\/.*\.pdf$/.test(path), 'to print full size, one panel'],
    [(path) => path.endsWith('.dxf'), 'for the machine'],
  ]
  const first = uses.flatMap(([is, use]) => {
    const path = paths.find(is)
    return path === undefined ? [] : [`  ${join(folder, path)}  ${use}\n`]
  })
  return first.length === 0 ? '' : `Open first:\n${first.join('')}`
}
