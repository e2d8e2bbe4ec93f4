import { isDeepStrictEqual } from 'node:util'
import { describe, expect, test } from 'vitest'
import { Kept } from '../../src/memory/index.ts'
import { readChunks } from '../../src/project/chunks.ts'
import { readSource, type Source } from '../../src/project/source.ts'
import { workshopText } from '../support/workshop.ts'

/** Beginnings of values that reach, or seem to reach, beyond their line or their entry. */
const HEADS = [
  '|',
  '|-',
  '|+',
  '>',
  '>+',
  '|2',
  '"a',
  "'a",
  'plain',
  '[a,',
  '{ a: 1,',
  '!!str 12',
  '&x 1',
  '- 1',
  '? a',
]
const BEHIND = ['\n', ' # e\n', '']
const BODIES = [
  '',
  '\n',
  '    x\n',
  '    x\n\n\n  # c\n',
  '  x\n# c\n',
  '  x\n \n\n',
  '    x\n      y\n   \n',
  '  b"\n',
  "  b'\n",
  '  b]\n',
  '  c: 2 }\n',
  '# c\n\n',
  '   \n',
  '\r\n    x\r\n\r\n',
  '  # c\n    x\n',
  '    x # c\n',
  '    - 1\n  # c\n    - 2\n',
]

const deeper = (text: string): string => text.replace(/^(?=.)/gm, '  ')

/** The value between two keys, at the end of the modules, between two modules, and at the end of the text. */
const placed = (value: string, body: string): string[] => [
  `storyrod: 1\ntitle: ${value}${body}modules:\n  a:\n    w: 1\n  b:\n    w: 2\nunits: mm\n`,
  `storyrod: 1\nmodules:\n  a:\n    w: 1\n  b:\n    w: ${value}${deeper(body)}units: mm\n`,
  `storyrod: 1\nmodules:\n  a:\n    w: ${value}${deeper(body)}  b:\n    w: 2\nunits: mm\n`,
  `storyrod: 1\nmodules:\n  a:\n    w: 1\n  b:\n    w: 2\ntitle: ${value}${body}`,
]

const TEXTS = HEADS.flatMap((head) => BEHIND.flatMap((behind) => BODIES.flatMap((body) => placed(head + behind, body))))

const PATHS = [
  [],
  ['title'],
  ['title', 'x'],
  ['modules'],
  ['modules', 'a'],
  ['modules', 'a', 'w'],
  ['modules', 'a', 'w', 0],
  ['modules', 'b'],
  ['modules', 'b', 'w'],
  ['modules', 'b', 'w', 'x'],
  ['units'],
]

/** The data, and all that can be asked about a place; what the value of a group in block style spans, nobody asks. */
const sayings = (source: Source): unknown => [
  source.data,
  ...PATHS.map((path) => [
    source.place(path)?.written,
    source.place(path)?.comment,
    source.place(path) === undefined,
    source.span(path),
    source.span(path, 'key'),
    source.locate(path),
  ]),
]

const inChunks = (text: string): Source | undefined => readChunks(text, 'chunks.yaml', new Kept())

describe('a definition in chunks', () => {
  test('is read as it is read whole, or not at all', () => {
    let used = 0
    for (const text of TEXTS) {
      const chunks = inChunks(text)
      if (chunks === undefined) continue
      used += 1
      const whole = readSource(text, 'chunks.yaml')
      expect(whole.ok && whole.mistakes, text).toEqual([])
      if (whole.ok && !isDeepStrictEqual(sayings(chunks), sayings(whole.source))) {
        expect({ text, ...[sayings(chunks)] }).toEqual({ text, ...[sayings(whole.source)] })
      }
    }
    // About a third of these texts is right and plain.
    expect(used).toBeGreaterThan(TEXTS.length / 4)
    expect(used).toBeLessThan(TEXTS.length / 2)
  })

  test.each([
    ['a usual one', workshopText(3)],
    ['CRLF', workshopText(3).replaceAll('\n', '\r\n')],
    ['comments everywhere', workshopText(3).replaceAll('\n', ' # note\n# another\n      # a third\n')],
    ['a byte order mark', `\ufeff${workshopText(3)}`],
    ['names that look like numbers', workshopText(3).replaceAll('cabinet 2', '02')],
  ])('%s is read so', (_, text) => {
    expect(inChunks(text)).not.toBe(undefined)
  })

  test.each([
    ['a key that stands twice', `${workshopText(3)}units: mm\nunits: in\n`],
    ['modules that stand twice', `${workshopText(3)}modules:\n  one: {}\n`],
    ['a module that stands twice', workshopText(3).replace('  cabinet 2:', '  cabinet 1:')],
    ['an anchor', workshopText(3).replace('width: 500', 'width: &wide 500')],
    ['an alias', workshopText(3).replace('width: 500', 'width: *wide')],
    ['nothing behind a key', workshopText(3).replace('width: 500', 'width:')],
    ['a tab in an indent', workshopText(3).replace('    width: 500', '\t    width: 500')],
    ['a group in braces', '{ storyrod: 1, modules: { one: {} } }'],
    ['two documents', `${workshopText(3)}---\n${workshopText(3)}`],
    ['another version of YAML', `%YAML 1.1\n---\n${workshopText(3)}`],
    ['a quote that is not closed', workshopText(3).replace('storyrod: 1', 'storyrod: 1\ntitle: "a')],
    ['no modules', 'storyrod: 1\n'],
    ['nothing', ''],
  ])('%s is not', (_, text) => {
    expect(inChunks(text)).toBe(undefined)
  })
})
