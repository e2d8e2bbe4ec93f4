import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readDefinition, renderProblems, starterDefinition } from '../../src/project/index.ts'

const folder = new URL('./broken/', import.meta.url)
const corpus = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .sort()
  .map((file) => readFileSync(new URL(file, folder), 'utf8'))
const seeds = [starterDefinition(), ...corpus]

/** Either read, or refused with problems that stand in the text, in order, none twice. */
function holds(text: string): void {
  const read = readDefinition(text, 'x.yaml')
  if (read.ok) {
    expect(read.project.modules.length).toBeGreaterThan(0)
    return
  }
  const lines = text
    .replace(/^\ufeff/, '')
    .replace(/\r(?!\n)/g, '\n')
    .split('\n')
  expect(read.problems.length).toBeGreaterThan(0)
  const seen = new Set<string>()
  let last = { line: 1, column: 1 }
  for (const { line, column, lineText, message, expected, span } of read.problems) {
    expect(lines[line - 1]?.replace(/\r$/, '')).toBe(lineText)
    expect(column).toBeGreaterThanOrEqual(1)
    expect(column).toBeLessThanOrEqual(lineText.length + 2)
    expect(span).toBeGreaterThanOrEqual(1)
    expect(message.length).toBeGreaterThan(0)
    expect(expected.length).toBeGreaterThan(0)
    expect(line > last.line || (line === last.line && column >= last.column)).toBe(true)
    last = { line, column }
    const key = `${line}:${column} ${message}`
    expect(seen.has(key)).toBe(false)
    seen.add(key)
  }
  expect(renderProblems(read.problems)).not.toMatch(/undefined|NaN|\[object/)
}

const YAML_BITS = [
  ...' \n:-#[]{}"\'&*!|>%@`,?~<\t\r\ufeff',
  'null',
  'true',
  '.nan',
  '1e999',
  '*a',
  '&a',
  '<<',
  '__proto__',
  'constructor',
  'stacked:',
  'size: 1e9',
  '🪵',
  '\ud800',
  '\u0000',
]

describe('no text makes the reader throw', () => {
  test('any characters', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), holds), { numRuns: 500 })
  })

  test('YAML in pieces', () => {
    const piece = fc.oneof(
      fc.constantFrom(...YAML_BITS),
      fc.constantFrom('storyrod: 1\n', 'modules:\n  a:\n', 'stock:'),
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => holds(pieces.join(''))),
      { numRuns: 500 },
    )
  })

  test('definitions with a piece taken out, put in or moved', () => {
    const change = fc.record({
      seed: fc.nat({ max: seeds.length - 1 }),
      from: fc.nat(3000),
      length: fc.nat(30),
      piece: fc.constantFrom('', ...YAML_BITS),
    })
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const start = seeds[changes[0]?.seed ?? 0] ?? ''
        const text = changes.reduce((before, { from, length, piece }) => {
          const at = from % (before.length + 1)
          return before.slice(0, at) + piece + before.slice(at + length)
        }, start)
        holds(text)
      }),
      { numRuns: 1000 },
    )
  })

  test('a definition with any value in place of another', () => {
    const values = [
      '0',
      '-1',
      '.inf',
      '1e300',
      'null',
      '[]',
      '{}',
      '[1]',
      '{a: 1}',
      '"x"',
      '*x',
      'true',
      '""',
      '3 1/2 in',
    ]
    const lines = starterDefinition().split('\n')
    const withValue = [...lines.keys()].filter((at) => /: ./.test(lines[at] ?? ''))
    fc.assert(
      fc.property(fc.constantFrom(...withValue), fc.constantFrom(...values), (at, value) => {
        const changed = lines.map((line, i) => (i === at ? line.replace(/: .*$/, `: ${value}`) : line))
        holds(changed.join('\n'))
      }),
      { numRuns: 500 },
    )
  })
})
