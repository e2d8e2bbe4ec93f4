import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { build, outputFiles, outputPaths } from '../../src/outputs/index.ts'
import { projectOf } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'

const SAMPLES = fileURLToPath(new URL('../../out-samples', import.meta.url))
const stems = readdirSync(SAMPLES)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -'.yaml'.length))

function filesUnder(folder: string, inner = ''): string[] {
  return readdirSync(join(folder, inner)).flatMap((name) => {
    const path = inner === '' ? name : `${inner}/${name}`
    return statSync(join(folder, path)).isDirectory() ? filesUnder(folder, path) : [path]
  })
}

test('there are samples in both systems of units', () => {
  const units = stems.map((stem) => projectOf(readFileSync(join(SAMPLES, `${stem}.yaml`), 'utf8')).units)
  expect(new Set(units)).toEqual(new Set(['mm', 'in']))
})

describe.each(stems)('the sample %s', (stem) => {
  const built = build(projectOf(readFileSync(join(SAMPLES, `${stem}.yaml`), 'utf8')))

  test('has no findings', () => {
    expect(built.findings).toEqual([])
  })

  test('lies in out-samples as the code draws it (after a change: npm run draw)', async () => {
    const wrong: string[] = []
    for await (const { path, bytes } of outputFiles(built, FONTS)) {
      const file = join(SAMPLES, stem, path)
      if (!existsSync(file)) wrong.push(`${path} is missing`)
      else if (!readFileSync(file).equals(bytes)) wrong.push(`${path} differs`)
    }
    expect(wrong).toEqual([])
    expect(filesUnder(join(SAMPLES, stem)).sort()).toEqual(outputPaths(built).sort())
  })
})
