import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type LaidOut, layOutDefinition } from '../../../src/outputs/index.ts'
import type { Panel } from '../../../src/panel/index.ts'
import { renderProblems } from '../../../src/project/index.ts'
import { SAMPLES, sampleText } from '../../support/samples.ts'

const known = new Map<string, LaidOut>()

/** A definition laid out, without the checks; fails the test with its errors when it has some. */
export function laidOut(text: string, files: ReadonlyMap<string, string> = new Map()): LaidOut {
  const opened = layOutDefinition(text, 'test.yaml', files)
  if (!opened.ok) throw new Error(renderProblems(opened.problems))
  return opened.laid
}

/** A sample laid out, with the SVG files beside it; once for all tests. */
export function laidSample(stem: string): LaidOut {
  const names = readdirSync(SAMPLES).filter((name) => name.endsWith('.svg'))
  const files = new Map(names.map((name) => [name, readFileSync(join(SAMPLES, name), 'utf8')]))
  const laid = known.get(stem) ?? laidOut(sampleText(stem), files)
  known.set(stem, laid)
  return laid
}

/** A panel by its id; fails the test where there is none. */
export function panelIn({ panels }: LaidOut, id: string): Panel {
  const panel = panels.find((one) => one.id === id)
  if (panel === undefined) throw new Error(`no panel ${id}`)
  return panel
}
