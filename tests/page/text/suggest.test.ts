import { Text } from '@codemirror/state'
import { describe, expect, test } from 'vitest'
import { explanationAt } from '../../../src/page/text/explain.ts'
import { findingMarks, problemMarks, rangeAt } from '../../../src/page/text/marks.ts'
import { namesIn, pathAt } from '../../../src/page/text/path-at.ts'
import { suggestionsAt } from '../../../src/page/text/suggest.ts'
import { isFilledBelow, marginOf, takingOf } from '../../../src/page/text/taking.ts'
import { acceptedAt, type DefinitionPath, placeOf, readDefinition, spliced } from '../../../src/project/index.ts'
import { sampleText } from '../../support/samples.ts'

/** What is offered at the mark | of a text. */
function offered(marked: string) {
  const offset = marked.indexOf('|')
  const text = marked.replace('|', '')
  const here = pathAt(text, offset)
  return here === undefined ? [] : suggestionsAt(here, () => namesIn(text), marginOf(text, here.from))
}

/** The text after the suggestion with a label was taken at the mark, with the cursor marked. */
function taken(marked: string, wanted: string, as?: string): string {
  const offset = marked.indexOf('|')
  const text = marked.replace('|', '')
  const here = pathAt(text, offset)
  const one = offered(marked).find(({ label, kind }) => label === wanted && (as === undefined || kind === as))
  if (here === undefined || one === undefined) throw new Error(`${wanted} is not offered`)
  const { changes, cursor } = takingOf(text, here, one)
  const after = spliced(text, changes)
  return `${after.slice(0, cursor)}|${after.slice(cursor)}`
}
const labels = (marked: string): string[] => offered(marked).map(({ label }) => label)

/** Places that hold keys or items of groups, and may hold something plain as well. */
const EITHER: ReadonlyMap<string, DefinitionPath> = placesOfEither([], new Map())

function placesOfEither(path: DefinitionPath, found: Map<string, DefinitionPath>): Map<string, DefinitionPath> {
  const accepted = acceptedAt(path)
  const item = accepted?.list ? acceptedAt([...path, 0]) : undefined
  const keys = accepted?.keys ?? []
  // Bays hold bays: each key of a key is looked at once.
  const name = path.slice(-2).join(' › ')
  if (path.length > 12 || accepted === undefined || (path.length > 3 && found.has(name))) return found
  if (accepted.plain && (keys.length > 0 || (item?.keys.length ?? 0) > 0)) found.set(name, path)
  for (const { key } of keys) if (path.length < 9) placesOfEither([...path, key], found)
  if (accepted.freeKeys) placesOfEither([...path, 'a'], found)
  if (item !== undefined && path.length < 9) placesOfEither([...path, 0], found)
  return found
}

test('many places take a word or keys', () => {
  expect(EITHER.size).toBeGreaterThan(15)
})

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

  test('where a word or a group may stand, the words, then the keys of the group on a line of their own', () => {
    const base = offered(`${HEAD}    base: |`)
    expect(base.map(({ label }) => label).slice(0, 3)).toEqual(['none', 'casters', 'fixed casters'])
    expect(base.map(({ label }) => label)).toEqual(expect.arrayContaining(['feet', 'plinth']))
    // Four columns are those of `base`, and what stands in it has two more; a group in it two more again.
    const text = (marked: string, wanted: string) => offered(marked).find(({ label }) => label === wanted)
    expect(text(`${HEAD}    base: |`, 'casters')).toMatchObject({ text: '\n      casters: ', kind: 'key' })
    expect(text(`${HEAD}    base: |`, 'plinth')?.text).toBe('\n      plinth:\n        ')
    expect(text(`${HEAD}    inside:\n      stacked:\n        - front: |`, 'kind')?.text).toBe('\n            kind: ')
    expect(text(`${HEAD}    base: ca|`, 'casters')?.text).toBe('\n      casters: ')
    expect(text(`${HEAD}    base:\n      plinth: |`, 'height')).toMatchObject({ text: '\n        height: ' })
  })

  test('in brackets the group gets brackets, with room for what follows its key', () => {
    const base = offered(`${HEAD}    box: { base: |, depth: 400 }`.replace('    box', '  other'))
    expect(base.find(({ label }) => label === 'casters')).toMatchObject({ text: '{ casters: ', behind: ' }' })
    const worktop = offered('common: { worktop: { | } }')
    expect(worktop.find(({ label }) => label === 'stock')).toMatchObject({ text: 'stock: ' })
    expect(worktop.find(({ label }) => label === 'stock')?.behind).toBeUndefined()
  })

  test('where a list may stand, its first item: of groups on a line with a dash, of words in brackets', () => {
    const one = (marked: string, wanted: string) => offered(marked).find(({ label }) => label === wanted)
    const drawers = `${HEAD}    inside:\n      drawers:\n        stack: |`
    expect(one(drawers, 'height')?.text).toBe('\n          - height: ')
    expect(one(`${HEAD}    inside: { drawers: { stack: | } }`, 'height')).toMatchObject({
      text: '[{ height: ',
      behind: ' }]',
    })
    const edges = `${HEAD}    lipping:\n      - edges: |`
    expect(labels(edges)).toEqual(['all', '[front]', '[back]', '[left]', '[right]', '[top]', '[bottom]'])
    expect(one(edges, '[front]')).toMatchObject({ text: '[front', behind: ']' })
    expect(labels(`${HEAD}floor plan:\n  - row: |`)).toEqual(['[box]'])
    // Heights of hinges: any lengths, of which none is likelier than another.
    expect(labels(`${HEAD}    inside: { front: { kind: door, hinges: { count: |`)).toEqual([])
  })

  test.each([...EITHER])('%s is offered as the schema has it', (_, path) => {
    const here = { path, on: 'value', word: '', from: 0, to: 0, flow: false, colon: false, siblings: [] } as const
    const accepted = acceptedAt(path)
    const offeredKeys = suggestionsAt(here, () => namesIn(''), 4).filter(({ kind }) => kind === 'key')
    expect(offeredKeys.map(({ label }) => label).toSorted()).toEqual(
      [
        ...new Set([...(accepted?.keys ?? []), ...(acceptedAt([...path, 0])?.keys ?? [])].map(({ key }) => key)),
      ].toSorted(),
    )
    for (const { text } of offeredKeys) expect(text).toMatch(/^\n {6}(?:- )?\S/)
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

describe('what is taken', () => {
  const MODULE = 'modules:\n  box:\n'

  test('breaks the line below its key, and leaves no spaces behind that', () => {
    expect(taken(`${MODULE}    base: |\n    depth: 400\n`, 'casters')).toBe(
      `${MODULE}    base:\n      casters: |\n    depth: 400\n`,
    )
    expect(taken(`${MODULE}    base: pl|\n`, 'plinth')).toBe(`${MODULE}    base:\n      plinth:\n        |\n`)
    expect(taken(`${MODULE}    base:|`, 'casters')).toBe(`${MODULE}    base:\n      casters: |`)
    expect(taken(`${MODULE}    inside:\n      stacked:\n        - front: |`, 'kind')).toBe(
      `${MODULE}    inside:\n      stacked:\n        - front:\n            kind: |`,
    )
  })

  test('leaves the comment of the line where it is', () => {
    expect(taken(`${MODULE}    base: |  # on wheels\n`, 'casters')).toBe(
      `${MODULE}    base:   # on wheels\n      casters: |\n`,
    )
    expect(taken(`${MODULE}    base: ca| # on wheels\n`, 'casters')).toBe(
      `${MODULE}    base:  # on wheels\n      casters: |\n`,
    )
  })

  test('stands in brackets of its own within brackets, the cursor in them', () => {
    expect(taken(`${MODULE}    other: { base: |, depth: 400 }`.replace('    other', '  other'), 'casters')).toBe(
      `${MODULE}  other: { base: { casters: | }, depth: 400 }`,
    )
    expect(taken('common: { base:| }', 'none')).toBe('common: { base: none| }')
    expect(taken('common: { lipping: [{ edges: | }] }', '[front]')).toBe('common: { lipping: [{ edges: [front|] }] }')
  })

  test('can be read, wherever a word or keys may stand', () => {
    for (const path of EITHER.values()) {
      // In block style, and in brackets; lists of lists have no line of their own.
      const lines = path.map((step, k) => ' '.repeat(2 * k) + (step === 0 ? '-' : `${step}:`))
      const flow = path.reduceRight<string>((inner, step) => (step === 0 ? `[${inner}]` : `{ ${step}: ${inner} }`), '|')
      for (const marked of [`${lines.join('\n')} |`, flow]) {
        for (const { label, kind, text } of offered(marked)) {
          if (kind !== 'key') continue
          const after = taken(marked, label, 'key')
          const at = pathAt(after.replace('|', ''), after.indexOf('|'))
          const inList = text.includes('- ') || text.includes('[')
          const below = after.slice(0, after.indexOf('|')).match(/\n +(- )?$/)
          const whole = [...path, ...(inList && /^\n *- |^\[/.test(text) ? [0] : []), label]
          expect(at?.path, after).toEqual(below?.[1] === undefined ? whole : [...whole, 0])
        }
      }
    }
  })

  test('is not offered where the group stands below already', () => {
    const filled = (marked: string): boolean => {
      const here = pathAt(marked.replace('|', ''), marked.indexOf('|'))
      return here !== undefined && isFilledBelow(marked.replace('|', ''), here)
    }
    expect(filled('base: |\n\n  # c\n  casters: x\n')).toBe(true)
    expect(filled('bits: |\n- kind: x\n')).toBe(true)
    expect(filled('base: |\ndepth: 3\n')).toBe(false)
    expect(filled('base: |')).toBe(false)
    expect(filled('base: n|\n  a: 1')).toBe(false)
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
