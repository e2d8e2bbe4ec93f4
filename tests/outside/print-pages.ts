import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { type Built, outputFiles } from '../../src/outputs/index.ts'
import { type BarReadings, PAPER_NAMES, type PaperName, paperSize } from '../../src/project/index.ts'
import { FONTS } from '../support/fonts.ts'
import { openSample, sampleStems } from '../support/samples.ts'

/**
 * Draws the full-size pages of a few panels of every sample on every paper, as they are and corrected for a printer that
 * errs, for print_runs.py to measure. Usage: tsx print-pages.ts FOLDER [SAMPLE...]. Each run has a folder with its panels.json
 * and the files that it lists; FOLDER/runs.json, or FOLDER/SAMPLE.json for samples that are named, lists the runs.
 */
const [target, ...named] = process.argv.slice(2)
if (target === undefined) throw new Error('usage: tsx print-pages.ts FOLDER [SAMPLE...]')

/** A printer that makes bars of 180 mm so long. */
const READINGS: readonly (BarReadings | undefined)[] = [undefined, { across: 179.2, down: 180.9 }]

/** Those with the most wood, the longest one, and those with the most holes. */
function chosen({ panels }: Built): Built['panels'] {
  const marked = panels.filter(
    ({ bores }) => bores.filter(({ surface }) => surface === 'A' || surface === 'B').length > 1,
  )
  const most = (size: (panel: (typeof panels)[number]) => number) => [...marked].sort((a, b) => size(b) - size(a))[0]
  const picked = [
    most(({ length, width }) => length * width),
    most(({ length, width }) => Math.max(length, width)),
    most(({ bores }) => bores.length),
  ]
  return marked.filter((panel) => picked.includes(panel))
}

interface RunOfPages {
  readonly sample: string
  readonly paper: PaperName
  /** Width of the roll, mm, where it is one. */
  readonly roll?: number
  readonly bars?: BarReadings
  readonly folder: string
}

type Sample = ReturnType<typeof openSample> & { readonly stem: string }

async function draw(
  { built, definition, stem: sample }: Sample,
  paper: PaperName,
  bars: BarReadings | undefined,
): Promise<RunOfPages> {
  const { bars: _, pageBudget: __, ...asked } = built.project.outputs
  const outputs = { ...asked, paper, ...(bars !== undefined && { bars }) }
  const few: Built = { ...built, project: { ...built.project, outputs }, panels: chosen(built), findings: [] }
  const folder = join(sample, paper.replaceAll(' ', '-'), bars === undefined ? 'as-it-is' : 'corrected')
  for await (const { path, bytes } of outputFiles(few, FONTS, definition)) {
    if (!path.endsWith('.pdf') && !path.endsWith('panels.json')) continue
    const file = join(target ?? '', folder, path)
    mkdirSync(dirname(file), { recursive: true })
    writeFileSync(file, bytes)
  }
  const { width, roll } = paperSize(paper)
  return { sample, paper, folder, ...(roll === true && { roll: width }), ...(bars !== undefined && { bars }) }
}

const runs: RunOfPages[] = []
for (const stem of named.length > 0 ? named : sampleStems) {
  const sample = { stem, ...openSample(stem) }
  for (const paper of PAPER_NAMES) for (const bars of READINGS) runs.push(await draw(sample, paper, bars))
}
mkdirSync(target, { recursive: true })
writeFileSync(join(target, named.length > 0 ? `${named.join('+')}.json` : 'runs.json'), JSON.stringify(runs, null, 1))
