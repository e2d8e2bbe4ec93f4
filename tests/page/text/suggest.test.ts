import { Text } from '@codemirror/state'
import { describe, expect, test } from 'vitest'
import { explanationAt } from '../../../src/page/text/explain.ts'
import { findingMarks, problemMarks, rangeAt } from '../../../src/page/text/marks.ts'
import { namesIn, pathAt } from '../../../src/page/text/path-at.ts'
import { suggestionsAt } from '../../../src/page/text/suggest.ts'
import { placeOf, readDefinition } from '../../../src/project/index.ts'
import { sampleText } from '../../support/samples.ts'

/** What is offered at the mark | of a text. */
function offered(marked: string) {
  const offset = marked.indexOf('|')
  const text = marked.replace('|', '')
  const here = pathAt(text, offset)
  return here === undefined
    ? []
    : suggestionsAt(here, () => namesIn(text), offset - (text.lastIndexOf('\n', offset - 1) + 1))
}
const labels = (marked: string): string[] => offered(marked).map(({ label }) => label)

const HEAD = 'stock:\n  board: {}\n  "a: b": {}\nhardware:\n  own grip: {}\nmodules:\n  box:\n'

describe('what fits at a place', () => {
  test('keys that the group does not have yet, required ones first, with a colon or the room below', () => {
    const keys = offered('title: a\n|')
    expect(keys.slice(0, 3).map(({ label }) => label)).toEqual(['storyrod', 'stock', 'modules'])
    expect(keys.map(({ label }) => label)).not.toContain('title')
    expect(keys.find(({ label }) => label === 'kerf')).toMatchObject({
      text: 'kerf: ',
      about: expect.stringMatching(/saw cut/),
    })
    expect(keys.find(({ label }) => label === 'stock')?.text).toBe('stock:\n  ')
    expect(keys.find(({ label }) => label === 'bits')?.text).toBe('bits:\n  - ')
    // In brackets all stays on the line; a colon that is there already is not put in twice.
    expect(offered('common: { car| }').find(({ label }) => label === 'carcase')?.text).toBe('carcase: ')
    expect(offered('ker|: 3').find(({ label }) => label === 'kerf')?.text).toBe('kerf')
  })

  test('words of a choice, and names of stock, modules and hardware', () => {
    expect(labels('units: |')).toEqual(['mm', 'in'])
    expect(offered(`${HEAD}    stock: |`).map(({ label, kind, text }) => [label, kind, text])).toEqual([
      ['board', 'stock', 'board'],
      ['a: b', 'stock', '"a: b"'],
    ])
    expect(labels(`${HEAD}    depth: |`)).toEqual(['same as width', 'as large as fits'])
    expect(labels(`${HEAD}floor plan:\n  - row: [|]`)).toEqual(['box'])
    const pulls = labels(`${HEAD}    inside: { front: { kind: door, pull: { item: |`)
    expect(pulls).toEqual(expect.arrayContaining(['own grip', 'pull 128']))
    expect(pulls).not.toContain('caster 75')
    expect(labels(`${HEAD}    carcase: { joint: |`).slice(0, 2)).toEqual(['through screw', 'one-piece screw'])
  })

  test('both keys and names in the items of a list', () => {
    expect(labels(`${HEAD}    inside:\n      stacked:\n        - |`)).toContain('size')
    expect(labels(`${HEAD}    lipping:\n      - edges: [|`)).toEqual([
      'front',
      'back',
      'left',
      'right',
      'top',
      'bottom',
    ])
  })

  test('nothing where nothing is known, and not what stands there already', () => {
    expect(labels('modules:\n  |')).toEqual([])
    expect(labels('colours:\n  |')).toEqual([])
    expect(labels('# |')).toEqual([])
    expect(labels('units: mm|')).toEqual(['in'])
  })
})

test('what a key means is said on it and on its value, in lists too', () => {
  const text = 'stock:\n  a: { thickness: [17.8, 18] }\ncommon:\n  carcase: {}\n'
  const at = (word: string) => {
    const here = pathAt(text, text.indexOf(word))
    return here && explanationAt(here)
  }
  expect(at('thickness')?.about).toMatch(/^What the callipers read/)
  expect(at('17.8')).toEqual(at('thickness'))
  expect(at('carcase')?.accepts).toMatch(/^keys: top, rails/)
  expect(at('a:')).toBeUndefined()
})

describe('marks', () => {
  test('of problems stand where the reader says, with what would be right', () => {
    const text = 'storyrod: 1\nunits: mx\r\nstock: {}\nmodules: { a: {} }\n'.replaceAll('\r', '')
    const read = readDefinition(text, 'a.yaml')
    const problems = read.ok ? [] : read.problems
    const doc = Text.of(text.split('\n'))
    const [mark] = problemMarks(
      doc,
      problems.filter(({ line }) => line === 2),
    )
    expect(mark && doc.sliceString(mark.from, mark.to)).toBe('mx')
    expect(mark?.message).toBe('units: "mx" is not a unit of a project\nExpected: mm or in')
    expect(mark?.actions?.map(({ name }) => name)).toEqual(['Write mm'])
  })

  test('of findings take the whole word, and leave out what is silenced', () => {
    const doc = Text.of(['kerf: 3.2 mm', ''])
    const finding = {
      key: 'k',
      rule: 'r',
      severity: 'warn',
      message: 'm',
      short: 'm',
      fix: 'do so',
      panels: [],
      places: [],
      path: ['kerf'],
      line: 1,
      column: 7,
    } as const
    const [mark, ...others] = findingMarks(doc, [finding, { ...finding, silenced: 'so be it' }], () => undefined)
    expect(others).toEqual([])
    expect(mark).toMatchObject({ from: 6, to: 12, severity: 'warning', message: 'm\nDo so', source: 'r', actions: [] })
  })

  test('of another text than this stay within it', () => {
    const doc = Text.of(['ab', 'c'])
    expect(rangeAt(doc, 9, 9, 4)).toEqual({ from: 4, to: 4 })
    expect(rangeAt(doc, 0, 0, 1)).toEqual({ from: 0, to: 1 })
    expect(rangeAt(doc, 1, 2, 9)).toEqual({ from: 1, to: 2 })
  })
})

test('a path is found in the text, or what would hold it', () => {
  const text = sampleText('clay-cart')
  const wordsAt = (...path: (string | number)[]): string => {
    const place = placeOf(text, path)
    return place === undefined ? '' : text.slice(place.from, place.to)
  }
  expect(wordsAt('kerf')).toBe('')
  expect(wordsAt('stock', 'fir ply 3/4', 'density')).toBe('density: 530')
  expect(wordsAt('stock', 'fir ply 3/4', 'grain')).toBe(wordsAt('stock', 'fir ply 3/4'))
  expect(wordsAt('modules', 'clay cart', 'inside', 'stacked', 0)).toBe('- size: 8 1/4')
  expect(placeOf('a: [', ['a'])?.from).toBe(0)
})
