import { expect, test } from 'vitest'
import { readPicked } from '../../../src/page/files/reading.ts'

const picked = (name: string, content: string | number[] | Uint8Array) => ({
  file: new File([typeof content === 'string' ? content : Uint8Array.from(content)], name),
})

test('a definition with the files beside it; one that is named with a folder goes by that name', async () => {
  const text = 'modules: { a: { openings: [ { file: marks/one.svg }, { file: two.svg } ] } }'
  const files = [
    picked('one.svg', '<svg/>'),
    picked('shop.yaml', text),
    picked('two.svg', '<g/>'),
    picked('three.svg', ''),
  ]
  expect(await readPicked(files, [])).toEqual({
    kind: 'definition',
    opened: {
      text,
      file: 'shop.yaml',
      files: new Map([
        ['marks/one.svg', '<svg/>'],
        ['two.svg', '<g/>'],
        ['three.svg', ''],
      ]),
    },
  })
})

test('drawings alone go beside the definition that is open', async () => {
  expect(await readPicked([picked('one.svg', '<svg/>')], ['marks/one.svg'])).toEqual({
    kind: 'files',
    files: new Map([['marks/one.svg', '<svg/>']]),
  })
})

test('a definition may have any name where it comes alone, and its byte order mark is kept for the file', async () => {
  const read = await readPicked([picked('cabinets.txt', [0xef, 0xbb, 0xbf, 0x61])], [])
  expect(read).toMatchObject({ kind: 'definition', opened: { text: '\ufeffa', file: 'cabinets.txt' } })
})

test.each([
  [
    'two at once',
    [picked('a.yaml', ''), picked('b.yml', ''), picked('c.svg', '')],
    '2 definitions at once: a.yaml, b.yml. Open one of them.',
  ],
  [
    'one byte more than 4 MiB, 4 × 1024 × 1024',
    [picked('a.yaml', new Uint8Array(4_194_305))],
    'The definition a.yaml is larger than 4 MiB (4194304 bytes), the most that is read.\n  Is it a definition? Split a very large workshop into several files.',
  ],
  // F6 is ö in ISO 8859-1, and never in UTF-8 (RFC 3629, section 1).
  [
    'Latin-1',
    [picked('a.yaml', [0x54, 0xf6])],
    'The definition a.yaml is not UTF-8 text: line 1 has the byte f6 where it makes no character.\n  Save it as UTF-8 in your editor.',
  ],
  [
    'a drawing that is not UTF-8',
    [picked('a.yaml', ''), picked('b.svg', [0xff, 0xfe])],
    'The file b.svg is not UTF-8 text: it looks like UTF-16.\n  Save it as UTF-8 in your editor.',
  ],
  [
    'a drawing that is too large',
    [picked('b.svg', new Uint8Array(4_194_305))],
    'The file b.svg is larger than 4 MiB (4194304 bytes), the most that is read.',
  ],
])('%s is refused in words', async (_, files, words) => {
  expect(await readPicked(files, [])).toEqual({ kind: 'refused', words })
})
