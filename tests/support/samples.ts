import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Built, type DefinitionText, openDefinition } from '../../src/outputs/index.ts'
import { renderProblems } from '../../src/project/index.ts'
import { kept } from './kept.ts'

const folder = new URL('../../out-samples/', import.meta.url)
const text = (name: string): string => readFileSync(new URL(name, folder), 'utf8')
const named = (ending: string): string[] => readdirSync(folder).filter((name) => name.endsWith(ending))

export const SAMPLES = fileURLToPath(folder)

/** The names of the samples, without their ending. */
export const sampleStems: readonly string[] = named('.yaml').map((name) => name.slice(0, -'.yaml'.length))

export const sampleText = (stem: string): string => text(`${stem}.yaml`)

/** The SVG files beside the samples, by name. */
export const sampleFiles: ReadonlyMap<string, string> = new Map(named('.svg').map((name) => [name, text(name)]))

/** A sample worked out, with the SVG files beside it; fails the test with its errors when it has some. */
export function builtSample(stem: string): Built {
  return openSample(stem).built
}

/** The same, with where its findings are said. */
export function openSample(stem: string): { readonly built: Built; readonly definition: DefinitionText } {
  return openOnce(stem)
}

const openOnce = kept(sampleStems.length, (stem): { readonly built: Built; readonly definition: DefinitionText } => {
  const file = `${stem}.yaml`
  const opened = openDefinition(sampleText(stem), file, sampleFiles)
  if (!opened.ok) throw new Error(renderProblems(opened.problems))
  return { built: opened.built, definition: { file, locate: opened.locate } }
})
