import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readDefinition, renderProblems } from '../../src/project/index.ts'

const folder = new URL('./broken/', import.meta.url)
const files = readdirSync(folder)
const definitions = files.filter((file) => file.endsWith('.yaml')).sort()

/** The corpus: what a person reads for each broken definition, word for word. */
describe('broken definitions', () => {
  test('there are at least 240, each with its expected text', () => {
    expect(definitions.length).toBeGreaterThanOrEqual(240)
    expect(files.filter((file) => file.endsWith('.txt')).sort()).toEqual(
      definitions.map((file) => file.replace(/\.yaml$/, '.txt')),
    )
  })

  test.each(definitions)('%s', (file) => {
    const text = readFileSync(new URL(file, folder), 'utf8')
    const expected = readFileSync(new URL(file.replace(/\.yaml$/, '.txt'), folder), 'utf8')
    const read = readDefinition(text, file)
    expect(read.ok ? 'it was read without a problem' : renderProblems(read.problems)).toBe(expected)
  })
})
