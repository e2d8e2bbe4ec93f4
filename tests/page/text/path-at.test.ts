import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml'
import { namesIn, pathAt } from '../../../src/page/text/path-at.ts'
import type { DefinitionPath } from '../../../src/project/index.ts'
import { triedDefinition } from '../../support/random.ts'
import { anyYaml } from '../../support/random-yaml.ts'
import { sampleStems, sampleText } from '../../support/samples.ts'

/** What stands at the mark | of a text, without the mark. */
function at(marked: string) {
  const offset = marked.indexOf('|')
  return pathAt(marked.slice(0, offset) + marked.slice(offset + 1), offset)
}

interface Word {
  readonly on: 'key' | 'value'
  readonly path: DefinitionPath
  readonly word: string
  readonly range: readonly [number, number]
}

/** Every key and plain value of a text, as the YAML library finds them. */
function wordsOf(text: string): Word[] {
  const found: Word[] = []
  const look = (node: Node | null | undefined, path: DefinitionPath): void => {
    if (isMap(node)) {
      for (const { key, value } of node.items) {
        if (!isScalar(key) || !key.range) continue
        const name = typeof key.value === 'string' ? key.value : (key.source ?? '')
        found.push({ on: 'key', path, word: name, range: [key.range[0], key.range[1]] })
        look(value as Node | null, [...path, name])
      }
    } else if (isSeq(node)) {
      for (const [i, item] of node.items.entries()) look(item as Node | null, [...path, i])
    } else if (isScalar(node) && node.range && node.range[1] > node.range[0] && !node.type?.startsWith('BLOCK')) {
      const word = typeof node.value === 'string' ? node.value : (node.source ?? '')
      found.push({ on: 'value', path, word, range: [node.range[0], node.range[1]] })
    }
  }
  look(parseDocument(text, { uniqueKeys: false }).contents, [])
  return found
}

function expectFound(text: string, { on, path, word, range: [from, to] }: Word): void {
  for (const offset of [from, to]) {
    const here = pathAt(text, offset)
    // The first word behind a dash may become either.
    const got = here && { ...here, on: here.on === 'either' ? 'value' : here.on }
    expect(got, `${word} at ${offset} of\n${text}`).toMatchObject({ on, path, word, from, to })
  }
}

describe('the path at every key and every value is that of the YAML library', () => {
  test.each(sampleStems)('in %s', (stem) => {
    const text = sampleText(stem)
    const words = wordsOf(text)
    expect(words.length).toBeGreaterThan(40)
    for (const word of words) expectFound(text, word)
  })

  test('in any YAML, and in definitions that are JSON', () => {
    fc.assert(
      fc.property(anyYaml, (text) => {
        for (const word of wordsOf(text)) expectFound(text, word)
      }),
      { numRuns: 1000 },
    )
    fc.assert(
      fc.property(triedDefinition, (text) => {
        for (const word of wordsOf(text).slice(0, 60)) expectFound(text, word)
      }),
      { numRuns: 20 },
    )
  })

  test('and is the same where the text ends there, as it does while one types', () => {
    for (const stem of sampleStems) {
      const text = sampleText(stem)
      for (const { path, range, on } of wordsOf(text)) {
        const here = pathAt(text.slice(0, range[1]), range[1])
        expect(here?.path, text.slice(0, range[1]).slice(-60)).toEqual(path)
        expect([on, 'either']).toContain(here?.on === 'key' ? 'key' : here?.on === 'value' ? 'value' : 'either')
      }
    }
  })
})

describe('in lines that are half typed', () => {
  const BASE = 'modules:\n  box:\n    width: 600 # wide\n'

  test.each([
    ['|', { path: [], on: 'key', word: '' }],
    ['mod|', { path: [], on: 'key', word: 'mod' }],
    ['storyrod: 1\nuni|\nstock:\n  a: {}\n', { path: [], on: 'key', siblings: ['storyrod', 'stock'] }],
    [`${BASE}    |`, { path: ['modules', 'box'], on: 'key', siblings: ['width'] }],
    [
      `${BASE}    dep|\n    stock: a\n  other: {}\n`,
      { path: ['modules', 'box'], on: 'key', siblings: ['width', 'stock'] },
    ],
    [`${BASE}  |`, { path: ['modules'], on: 'key', siblings: ['box'] }],
    [`${BASE}    inside:\n      |\n    base: none\n`, { path: ['modules', 'box', 'inside'], on: 'key', siblings: [] }],
    [
      `${BASE}    inside:\n      |\n      front: x\n`,
      { path: ['modules', 'box', 'inside'], on: 'key', siblings: ['front'] },
    ],
    [`${BASE}    inside:|`, { path: ['modules', 'box', 'inside'], on: 'value', word: '' }],
    [`${BASE}    inside: |`, { path: ['modules', 'box', 'inside'], on: 'value', word: '' }],
    [`${BASE}    stock: bir|   # of birch\n`, { path: ['modules', 'box', 'stock'], on: 'value', word: 'bir' }],
    [`${BASE}    stock: "bir|`, { path: ['modules', 'box', 'stock'], on: 'value', word: 'bir' }],
    [`${BASE}    stock:\n      bir|`, { path: ['modules', 'box', 'stock'], on: 'key', word: 'bir' }],
    ['floor plan:\n  - |', { path: ['floor plan', 0], on: 'either' }],
    ['floor plan:\n  - row: [a]\n    jo|', { path: ['floor plan', 0], on: 'key', siblings: ['row'] }],
    ['floor plan:\n- row: [a]\n- ro|', { path: ['floor plan', 1], on: 'either', word: 'ro' }],
    ['floor plan:\n  - row: [a, |', { path: ['floor plan', 0, 'row', 1], on: 'value', word: '' }],
    ['floor plan:\n  - row: [a, b|]\n', { path: ['floor plan', 0, 'row', 1], on: 'value', word: 'b' }],
    ['a: { b: 1, |', { path: ['a'], on: 'key', siblings: ['b'], flow: true }],
    ['a: { b: 1, c| }\n', { path: ['a'], on: 'key', word: 'c', siblings: ['b'] }],
    ['a: { b: 1, c|, d: 2 }\n', { path: ['a'], on: 'key', word: 'c', siblings: ['b', 'd'] }],
    ['a: {|}\n', { path: ['a'], on: 'key', word: '' }],
    ['a: { b:|', { path: ['a', 'b'], on: 'value' }],
    ['a: { b: | }\n', { path: ['a', 'b'], on: 'value', word: '' }],
    ['a: { b: [{ c: 1 }, { d: x|', { path: ['a', 'b', 1, 'd'], on: 'value', word: 'x' }],
    ['a: {\n  b: 1, # { [\n  |\n  c: 3\n}\n', { path: ['a'], on: 'key', siblings: ['b', 'c'] }],
    ['a: { b: 1\nc: |\n', { path: ['c'], on: 'value' }],
    ['a: "never closed\n', undefined],
    ['# no|te\n', undefined],
    ['a: 1 # no|te\n', undefined],
    ['a: { b: 1 } # no|te\n', undefined],
    ['  |  a: 1\n', undefined],
    ['a: |\n  text\n', { path: ['a'], on: 'value' }],
    ["'a b': 1\n'c d|': 2\n", { path: [], on: 'key', word: 'c d', siblings: ['a b'] }],
    ['a: 1\r\nb:\r\n  c|\r\n', { path: ['b'], on: 'key', word: 'c' }],
    ['\ufeffa|: 1\n', { path: [], on: 'key', word: 'a', colon: true }],
  ])('%j', (marked, expected) => {
    if (expected === undefined) expect(at(marked)).toBeUndefined()
    else expect(at(marked)).toMatchObject(expected)
  })

  test('nothing within a text of several lines', () => {
    expect(pathAt('a: >\n  b: c\n\n  d\ne: 1\n', 8)).toBeUndefined()
    expect(pathAt('a: >\n  b: c\n\n  d\ne: 1\n', 18)).toMatchObject({ path: [], word: 'e' })
  })

  test('never throws, wherever a text is cut', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'ab :-#{}[],"\'\n\r|&*\\') }), fc.nat(), (text, where) => {
        const offset = where % (text.length + 1)
        const here = pathAt(text, offset)
        if (here !== undefined) expect(here.from <= offset && offset <= here.to).toBe(true)
      }),
      { numRuns: 3000 },
    )
  })
})

test('the names that a definition gives', () => {
  expect(namesIn(sampleText('pottery-studio'))).toEqual({
    stock: ['birch 18', 'birch 21', 'birch 12', 'birch 6', 'beech top'],
    module: [
      'glaze store',
      'bisque shelves',
      'bucket bay',
      'tool locker',
      'wedging bench',
      'grinding bench',
      'forming stand',
      'mould store',
      'ware trolley',
    ],
    hardware: ['studio handle', 'clay knob', 'pin 5'],
  })
  expect(namesIn('{ "stock": { "a b": { "thickness": 1 }, "c": {} }, "modules": {} }').stock).toEqual(['a b', 'c'])
})
