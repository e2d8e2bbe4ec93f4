import { describe, expect, test } from 'vitest'
import type { Built } from '../../src/outputs/index.ts'
import { outputFiles, outputPaths } from '../../src/outputs/index.ts'
import { built, NO_TEXT, ROUND_STOCK } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'

// A box whose sides are bored on both faces, a door, a shelf that is only cut, and a chest beside it.
const SHOP = `${ROUND_STOCK}
title: A shop
modules:
  box: { width: 500, depth: 400, carcase height: 600, stock: board, carcase: { back: none }, inside: { loose shelves: 1, front: { kind: door } } }
  chest: { width: 300, depth: 300, carcase height: 300, stock: board, carcase: { back: none, joint: dowel } }
floor plan: [{ row: [box, chest], join: bolted }]
outputs: { paper: A3 }
`

interface Drawn {
  readonly files: ReadonlyMap<string, Uint8Array>
  readonly counts: readonly { readonly sheets: number; readonly grid: number }[]
}

async function drawn(of: Built): Promise<Drawn> {
  const files = new Map<string, Uint8Array>()
  const counts: { sheets: number; grid: number }[] = []
  const onCount = (count: { sheets: number; grid: number }): number => counts.push(count)
  for await (const { path, bytes } of outputFiles(of, FONTS, NO_TEXT, { onCount })) files.set(path, bytes)
  return { files, counts }
}

const latin1 = new TextDecoder('latin1')
const pagesIn = (bytes: Uint8Array | undefined): string[] =>
  [...latin1.decode(bytes).matchAll(/stream\n(1 0 0 -1 0 [\s\S]*?)\nendstream/g)].map(([, content]) => content ?? '')

interface PagesFile {
  readonly front: number
  readonly sheets: number
  readonly grid: number
  readonly least: number
  readonly paper: unknown
  readonly panels: readonly {
    readonly id: string
    readonly file: string
    readonly page: number
    readonly sheets: number
    readonly faces: readonly { readonly face: string; readonly sheets: number; readonly grid: number }[]
  }[]
  readonly cutOnly: readonly string[]
}

describe('the files of full-size pages', async () => {
  const shop = built(SHOP)
  const { files, counts } = await drawn(shop)
  const json = JSON.parse(new TextDecoder().decode(files.get('templates/pages.json'))) as PagesFile
  const all = pagesIn(files.get('templates/all-pages.pdf'))

  test('are written in the order that is announced, and listed in panels.json', () => {
    expect([...files.keys()]).toEqual(outputPaths(shop))
    const panels = JSON.parse(new TextDecoder().decode(files.get('panels.json'))) as {
      files: string[]
      panels: { id: string; files: { pdf: string[] } }[]
    }
    expect(panels.files).toEqual(outputPaths(shop))
    const pdf = Object.fromEntries(panels.panels.map(({ id, files: own }) => [id, own.pdf]))
    expect(pdf['box/left-side']).toEqual(['templates/box/left-side.pdf'])
    expect(pdf['box/shelf-1']).toEqual([])
  })

  test('pages.json counts the pages that each file has, and where they stand in that of all', () => {
    let page = json.front + 1
    for (const panel of json.panels) {
      expect(pagesIn(files.get(panel.file)), panel.id).toHaveLength(panel.sheets)
      expect(panel.faces.reduce((sum, face) => sum + face.sheets, 0)).toBe(panel.sheets)
      expect(panel.page).toBe(page)
      page += panel.sheets
    }
    expect(all).toHaveLength(page - 1)
    expect(json.sheets).toBe(page - 1 - json.front)
    expect(json.grid).toBeGreaterThanOrEqual(json.sheets)
    expect(json.least).toBeLessThanOrEqual(json.sheets)
    expect(json.paper).toEqual({ name: 'A3', width: 297, height: 420 })
    expect(json.cutOnly).toEqual(['box/shelf-1'])
    expect(counts).toMatchObject([{ sheets: json.sheets, grid: json.grid }])
    const faces = json.panels.find(({ id }) => id === 'box/right-side')?.faces.map(({ face }) => face)
    expect(faces).toEqual(['A', 'B'])
  })

  test('a page of a panel is the same in both files, but for the names of its letters', () => {
    const strokes = (content: string): string[] =>
      content.split('\n').filter((line) => /^-?[\d.]+ -?[\d.]+ [ml]$/.test(line))
    for (const { file, page } of json.panels) {
      const own = pagesIn(files.get(file))
      // Front pages are written last, and so stand last in the file; the tree of pages puts them first.
      own.forEach((content, k) => {
        expect(strokes(all[page - json.front - 1 + k] ?? '')).toEqual(strokes(content))
      })
      expect(strokes(own[0] ?? '').length).toBeGreaterThan(20)
    }
  })
})

test('the paper and the readings stand in pages.json', async () => {
  const text = SHOP.replace('{ paper: A3 }', '{ paper: roll 24 in, check bars: [179.1, 180] }')
  const { files } = await drawn(built(text))
  expect(JSON.parse(new TextDecoder().decode(files.get('templates/pages.json')))).toMatchObject({
    paper: { name: 'roll 24 in', width: 609.6, roll: true },
    bars: { across: 179.1, down: 180 },
  })
})

test('panels that take more than the page budget are named in pages.json, and counted', async () => {
  const { files, counts } = await drawn(built(SHOP.replace('{ paper: A3 }', '{ paper: A4, page budget: 1 }')))
  const json = JSON.parse(new TextDecoder().decode(files.get('templates/pages.json'))) as {
    pageBudget: number
    panels: { id: string; sheets: number; overBudget?: boolean }[]
  }
  expect(json.pageBudget).toBe(1)
  const over = json.panels.filter(({ overBudget }) => overBudget === true)
  expect(over.map(({ id }) => id)).toEqual(json.panels.filter(({ sheets }) => sheets > 1).map(({ id }) => id))
  expect(over.length).toBeGreaterThan(0)
  expect(counts).toMatchObject([{ overBudget: over.length }])
})
