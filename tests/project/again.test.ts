import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseDocument, stringify } from 'yaml'
import { ReadMemory, readDefinition } from '../../src/project/index.ts'
import { anyDefinition } from '../support/random.ts'
import { chain, someEdits } from '../support/random-edits.ts'
import { sampleFiles, sampleStems, sampleText } from '../support/samples.ts'
import { workshopText } from '../support/workshop.ts'

/** More of them when the way of keeping is changed. */
const RUNS = Number(process.env.STORYROD_RUNS ?? 12)

/** Every path of a text's data, and a step beyond each. */
function pathsOf(text: string): (string | number)[][] {
  const walk = (value: unknown, path: (string | number)[]): (string | number)[][] => {
    const inner = Array.isArray(value)
      ? value.flatMap((item, k) => walk(item, [...path, k]))
      : typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, item]) => walk(item, [...path, key]))
        : []
    return [path, [...path, 'beyond'], ...inner]
  }
  return walk(parseDocument(text, { uniqueKeys: false }).toJS({ maxAliasCount: -1 }), [])
}

/** Everything that a reading says, at every place of its text. */
function sayings(text: string, memory?: ReadMemory): unknown {
  const read = readDefinition(text, 'again.yaml', sampleFiles, memory)
  if (!read.ok) return read.problems
  const places = pathsOf(text).map((path) => [read.locate(path), read.problemAt(path, 'is wrong', 'what is right')])
  return [read.project, places]
}

const isRight = (text: string): boolean => readDefinition(text, 'again.yaml', sampleFiles).ok

/** A definition as people write it, and as programs do. */
const written = fc
  .tuple(anyDefinition, fc.constantFrom('block', 'block', 'block', 'flow'))
  .map(([json, style]) => (style === 'flow' ? json : stringify(JSON.parse(json), { lineWidth: 0 })))

const texts = fc.oneof(written, fc.constantFrom(...sampleStems.map(sampleText), workshopText(6)))

describe('a definition that is read again and again', () => {
  test('reads as if it had never been read before, whatever was changed, broken and mended', () => {
    let right = 0
    let broken = 0
    fc.assert(
      fc.property(texts, someEdits(4, 8), (text, edits) => {
        const memory = new ReadMemory()
        for (const one of [text, ...chain(text, edits, isRight)]) {
          const again = sayings(one, memory)
          const afresh = sayings(one)
          if (!isDeepStrictEqual(again, afresh)) expect({ text: one, again }).toEqual({ text: one, again: afresh })
          if (isRight(one)) right += 1
          else broken += 1
        }
      }),
      { numRuns: RUNS },
    )
    // Both halves of the promise were looked at.
    expect(right).toBeGreaterThan(2 * RUNS)
    expect(broken).toBeGreaterThan(2 * RUNS)
  })

  test('what stands in the same words is the very same thing again', () => {
    const memory = new ReadMemory()
    const text = workshopText(5)
    const first = readDefinition(text, 'again.yaml', sampleFiles, memory)
    // The first `width: 600` is that of cabinet 2.
    const second = readDefinition(text.replace('width: 600', 'width: 601'), 'again.yaml', sampleFiles, memory)
    if (!first.ok || !second.ok) throw new Error('the workshop cannot be read')
    const same = first.project.modules.map((module, k) => module === second.project.modules[k])
    expect(same).toEqual([true, false, true, true, true])
    expect(second.project.modules[1]?.width).toBe(601)
  })

  test('a change of one stock leaves the modules of others as they were', () => {
    const memory = new ReadMemory()
    const text = workshopText(3)
      .replace('  thin:', '  other: { thickness: 19 }\n  thin:')
      .replace('  cabinet 2:\n', '  cabinet 2:\n    stock: other\n')
    const first = readDefinition(text, 'again.yaml', sampleFiles, memory)
    const second = readDefinition(text.replace('thickness: 19', 'thickness: 19.3'), 'again.yaml', sampleFiles, memory)
    if (!first.ok || !second.ok) throw new Error('the workshop cannot be read')
    const same = first.project.modules.map((module, k) => module === second.project.modules[k])
    expect(same).toEqual([true, false, true])
  })
})
