import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { type Built, outputFiles, outputPaths } from '../../src/outputs/index.ts'
import { built, ROUND_STOCK } from '../support/define.ts'
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
  for await (const { path, bytes } of outputFiles(of, FONTS, stamp === undefined ? {} : { stamp })) {
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

test('a stamp is on every drawing and in panels.json', async () => {
  const plain = await digests(one())
  const stamped = await digests(one(), 'Drawn although 1 finding says stop')
  expect(plain).toHaveLength(stamped.length)
  expect(plain.filter((line, k) => line === stamped[k])).toEqual([])
})
