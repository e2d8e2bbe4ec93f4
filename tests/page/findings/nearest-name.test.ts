import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Text } from '@codemirror/state'
import { describe, expect, test } from 'vitest'
import { changeWords } from '../../../src/page/findings/change-words.ts'
import { withNearest } from '../../../src/page/findings/nearest-name.ts'
import { type Problem, readDefinition } from '../../../src/project/index.ts'

const BROKEN = fileURLToPath(new URL('../../project/broken/', import.meta.url))

const docOf = (text: string): Text => Text.of(text.split('\n'))

function problemsOf(text: string): readonly Problem[] {
  const read = readDefinition(text, 'test.yaml')
  return read.ok ? [] : read.problems
}

/** Every mistake in the broken definitions for which a name is near. */
const offers = readdirSync(BROKEN)
  .filter((name) => name.endsWith('.yaml'))
  .flatMap((name) => {
    const text = readFileSync(BROKEN + name, 'utf8').replaceAll(/\r\n?/g, '\n')
    return problemsOf(text)
      .filter(({ nearest }) => nearest !== undefined)
      .map((problem) => ({ name, text, problem }))
  })

describe('the nearest name in place of the one that is written', () => {
  test('there are enough mistakes to try', () => {
    expect(offers.length).toBeGreaterThan(40)
  })

  test.each(offers)('$name, line $problem.line: $problem.nearest', ({ text, problem }) => {
    const mended = withNearest(docOf(text), problem)
    if (mended === undefined) throw new Error('no name was put in its place')
    expect(problemsOf(mended).map(({ line, message }) => `${line}: ${message}`)).not.toContain(
      `${problem.line}: ${problem.message}`,
    )
    // No other line is touched.
    const lines = mended.split('\n')
    expect(lines.filter((_, k) => k !== problem.line - 1)).toEqual(
      text.split('\n').filter((_, k) => k !== problem.line - 1),
    )
  })

  const PROBLEM = { file: 'a', line: 1, message: 'm', expected: 'e' }

  test('quotes and what follows stay; a name that YAML would read otherwise is quoted', () => {
    const quoted = { ...PROBLEM, column: 8, nearest: "the potter's", lineText: "stock: 'the poter' # here", span: 11 }
    expect(withNearest(docOf("stock: 'the poter' # here"), quoted)).toBe("stock: 'the potter''s' # here")
    const odd = { ...PROBLEM, column: 8, nearest: 'ply: 18 # new', lineText: 'stock: ply', span: 3 }
    expect(withNearest(docOf('stock: ply'), odd)).toBe('stock: "ply: 18 # new"')
  })

  test('where the line reads differently by now, nothing is replaced', () => {
    const problem = { ...PROBLEM, column: 1, nearest: 'width', lineText: 'widht: 6', span: 5 }
    expect(withNearest(docOf('widht: 60'), problem)).toBeUndefined()
    expect(withNearest(docOf('widht: 6'), { ...problem, line: 2 })).toBeUndefined()
    expect(withNearest(docOf('widht: 6'), problem)).toBe('width: 6')
  })
})

test('what a change did, in words', () => {
  expect(changeWords([{ path: ['modules', 'kiln cart', 'inside', 'loose shelves'], value: 5 }])).toBe(
    'modules › kiln cart › inside › loose shelves is now 5',
  )
  expect(
    changeWords([
      { path: ['modules', 'a', 'base'], value: undefined },
      { path: ['common', 'back'], value: { sits: 'inset', recess: '20 mm' } },
      { path: ['stock', 'ply', 'thickness'], value: [17.9, 18] },
    ]),
  ).toBe(
    'modules › a › base is taken out; common › back is now sits: inset, recess: 20 mm; stock › ply › thickness is now 17.9, 18',
  )
})
