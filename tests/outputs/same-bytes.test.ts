import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { type Built, outputFiles, outputPaths } from '../../src/outputs/index.ts'
import { built, NO_TEXT, ROUND_STOCK } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'

const one = (): Built =>
  built(`${ROUND_STOCK}
modules:
  box: { width: 500, depth: 400, carcase height: 600, stock: board, carcase: { back: { sits: grooved, stock: thin } }, inside: { loose shelves: 1, front: { kind: door } } }
`)

const other = (): Built =>
  built(`${ROUND_STOCK}
modules:
  other: { width: 700, depth: 300, carcase height: 500, stock: board, carcase: { joint: pocket screw, back: none } }
`)

async function digests(of: Built, stamp?: string): Promise<string[]> {
  const list: string[] = []
  for await (const { path, bytes } of outputFiles(of, FONTS, NO_TEXT, stamp === undefined ? {} : { stamp })) {
    list.push(`${path} ${createHash('sha256').update(bytes).digest('hex')}`)
  }
  return list
}

test('the same definition gives the same bytes, whatever else is drawn in between or meanwhile', async () => {
  const first = await digests(one())
  const [again] = await Promise.all([digests(one()), digests(other())])
  expect(again).toEqual(first)
  expect(first.map((line) => line.split(' ')[0])).toEqual(outputPaths(one()))
})

test('without notes the DXF has no text, but a stamp stands all the same', async () => {
  const quiet = built(`${ROUND_STOCK}
modules:
  box: { width: 500, depth: 400, carcase height: 600, stock: board, carcase: { back: none } }
outputs: { dxf: { notes: false } }
`)
  const dxf = async (options: { stamp?: string }): Promise<string[]> => {
    const texts: string[] = []
    for await (const { path, bytes } of outputFiles(quiet, FONTS, NO_TEXT, options)) {
      if (path.endsWith('.dxf')) texts.push(new TextDecoder().decode(bytes))
    }
    return texts
  }
  expect((await dxf({})).filter((text) => text.includes('\r\nTEXT\r\n'))).toEqual([])
  const stamped = await dxf({ stamp: 'DO NOT CUT' })
  expect(stamped.length).toBeGreaterThan(3)
  expect(stamped.filter((text) => !text.includes('DO NOT CUT'))).toEqual([])
})

test('full-size pages are made where there is something to mark', () => {
  const paths = outputPaths(
    built(`${ROUND_STOCK}
modules:
  box: { width: 500, depth: 400, carcase height: 600, stock: board, carcase: { back: none, joint: dowel }, inside: { loose shelves: 1 } }
`),
  )
  expect(paths).toContain('templates/box/left-side.pdf')
  expect(paths).toContain('templates/box/bottom.pdf')
  expect(paths).toContain('svg/box/shelf-1-a.svg')
  expect(paths).not.toContain('templates/box/shelf-1.pdf')
})

test('nothing to mark anywhere: no full-size pages at all', () => {
  const bare = built(`${ROUND_STOCK}
modules:
  box: { width: 500, depth: 400, carcase height: 600, stock: board, carcase: { back: none, joint: pocket screw }, worktop: none }
`)
  const paths = outputPaths({
    ...bare,
    panels: bare.panels.map((panel) => ({ ...panel, bores: [], grooves: [], cutouts: [] })),
  })
  expect(paths).toContain('svg/box/bottom-a.svg')
  expect(paths.filter((path) => path.startsWith('templates/'))).toEqual([])
})

test('a stamp is on every drawing and in panels.json', async () => {
  const plain = await digests(one())
  const stamped = await digests(one(), 'Drawn although 1 finding says stop')
  expect(plain).toHaveLength(stamped.length)
  expect(plain.filter((line, k) => line === stamped[k])).toEqual([])
})
