import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { outputFiles, outputPaths } from '../../src/outputs/index.ts'
import { FONTS } from '../support/fonts.ts'
import { builtSample, openSample, SAMPLES, sampleStems as stems } from '../support/samples.ts'

function filesUnder(folder: string, inner = ''): string[] {
  return readdirSync(join(folder, inner)).flatMap((name) => {
    const path = inner === '' ? name : `${inner}/${name}`
    return statSync(join(folder, path)).isDirectory() ? filesUnder(folder, path) : [path]
  })
}

test('there are samples in both systems of units', () => {
  const units = stems.map((stem) => builtSample(stem).project.units)
  expect(new Set(units)).toEqual(new Set(['mm', 'in']))
})

describe.each(stems)('the sample %s', (stem) => {
  const { built, definition } = openSample(stem)

  test('has no stop and no warning', () => {
    expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })

  test('lies in out-samples as the code draws it (after a change: npm run draw)', async () => {
    const wrong: string[] = []
    for await (const { path, bytes } of outputFiles(built, FONTS, definition)) {
      const file = join(SAMPLES, stem, path)
      if (!existsSync(file)) wrong.push(`${path} is missing`)
      else if (!readFileSync(file).equals(bytes)) wrong.push(`${path} differs`)
    }
    expect(wrong).toEqual([])
    expect(filesUnder(join(SAMPLES, stem)).sort()).toEqual(outputPaths(built).sort())
  })
})
