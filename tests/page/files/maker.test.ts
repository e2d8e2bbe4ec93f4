import { unzipSync } from 'fflate'
import { expect, test } from 'vitest'
import type { FilesAnswer, FilesJob } from '../../../src/page/files/asks.ts'
import { filesMaker } from '../../../src/page/workers/files.ts'
import { FONTS } from '../../support/fonts.ts'

/** A box so small that all of it is drawn at once. */
const box = (opening: string): string => `storyrod: 1
stock: { ply: { thickness: 18 } }
modules:
  box:
    width: 400
    depth: 400
    carcase height: 400
    stock: ply
${opening}`

/** Both round holes are to be cut through the left side with 1 mm of wood between them: a stop. */
const STOP = `    openings:
      - { panel: left side, shape: round, diameter: 60, from: { front: 100, bottom: 200 } }
      - { panel: left side, shape: round, diameter: 60, from: { front: 161, bottom: 200 } }
`

async function answersTo(job: FilesJob): Promise<FilesAnswer[]> {
  const answers: FilesAnswer[] = []
  await filesMaker(
    () => FONTS,
    (answer) => answers.push(answer),
  )({ number: 7, ...job })
  expect(answers.every(({ number }) => number === 7)).toBe(true)
  return answers
}

const source = (text: string) => ({ text, file: 'box.yaml', files: [] })
const textOf = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')

test('files are announced as they are made, in the order of the list, with how far it is', async () => {
  const answers = await answersTo({ kind: 'all', source: source(box('')), anyway: false })
  const files = answers.flatMap((answer) => (answer.kind === 'file' ? [answer.file.path] : []))
  const steps = answers.flatMap((answer) => (answer.kind === 'progress' ? [answer] : []))
  expect(files.length).toBeGreaterThan(8)
  expect(steps.map(({ done }) => done)).toEqual(files.map((_, k) => k + 1))
  expect(steps.every(({ of }) => of === files.length)).toBe(true)
  expect([steps[0]?.what, steps.at(-1)?.what]).toEqual(['box', 'findings.txt'])
  expect(answers.at(-1)?.kind).toBe('done')
})

test('while a stop stands nothing is made; made anyway, every sheet says so', async () => {
  const text = box(STOP)
  for (const kind of ['zip', 'all'] as const) {
    expect(await answersTo({ kind, source: source(text), anyway: false })).toEqual([
      { number: 7, kind: 'refused', words: 'Nothing drawn from box.yaml: 1 finding of severity stop stands.' },
    ])
  }
  const printed = await answersTo({ kind: 'print', choice: { of: 'all' }, source: source(text), anyway: true })
  const sets = printed.flatMap((answer) => (answer.kind === 'pages' ? [answer] : []))
  const sheets = sets.flatMap(({ front, pages }) => (front ? [] : pages))
  expect(sheets.length).toBeGreaterThan(2)
  expect(sheets.filter(({ svg }) => !svg.includes('DO NOT CUT: 1 STOP STANDS'))).toEqual([])
  const zip = (await answersTo({ kind: 'zip', source: source(text), anyway: true })).find(({ kind }) => kind === 'file')
  if (zip?.kind !== 'file') throw new Error('no zip was made')
  expect(zip.file.path).toBe('box-drawings.zip')
  const files = unzipSync(zip.file.bytes)
  for (const [path, bytes] of Object.entries(files)) {
    // Of the page that is only measured, and where all are, the file says it in its title alone; a PDF breaks no title.
    expect(textOf(bytes), path).toMatch(/DO NOT CUT:/)
  }
})

test('what allows drawing does no harm where nothing forbids it: no sheet says anything', async () => {
  const answers = await answersTo({ kind: 'one', path: 'panels.json', source: source(box('')), anyway: true })
  const [file] = answers.flatMap((answer) => (answer.kind === 'file' ? [textOf(answer.file.bytes)] : []))
  expect(file).toContain('"storyrod panels"')
  expect(file).not.toContain('DO NOT CUT')
})

test('a definition with mistakes is refused in the words of the command; so is a file that is not there', async () => {
  const [broken] = await answersTo({ kind: 'all', source: source(box('    widht: 4\n')), anyway: true })
  expect(broken?.kind === 'refused' && broken.words).toContain('box.yaml:')
  expect(broken?.kind === 'refused' && broken.words).toContain('there is no key "widht" here')
  expect(await answersTo({ kind: 'one', path: 'svg/box/lid-a.svg', source: source(box('')), anyway: false })).toEqual([
    { number: 7, kind: 'refused', words: 'There is no file svg/box/lid-a.svg any more: the definition has changed.' },
  ])
})

test('pages are stretched for a printer that errs: 180 mm that come out as 175 mm are drawn 36/35 as large', async () => {
  const text = `${box('')}outputs: { check bars: [175, 180] }\n`
  const [page] = (
    await answersTo({ kind: 'print', choice: { of: 'measuring' }, source: source(text), anyway: true })
  ).flatMap((answer) => (answer.kind === 'pages' ? answer.pages : []))
  // A4 stays A4 as it is printed; what is drawn on it is on a sheet of 210 × 175 / 180 = 204.1667 mm.
  expect(page?.width).toBeCloseTo(210, 9)
  expect(page?.height).toBeCloseTo(297, 9)
  expect(page?.svg).toMatch(/width="210mm" height="297mm" viewBox="0 \S+ 204.166667 297" preserveAspectRatio="none"/)
})
