import type { ICircleEntity } from 'dxf-parser'
import { expect, test } from 'vitest'
import { outputFiles } from '../../src/outputs/index.ts'
import { lintDxf } from '../../src/writers/index.ts'
import { built, NO_TEXT, panelOf, ROUND_STOCK } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'
import { entitiesOf, readDxf } from '../writers/read-dxf.ts'

// The door is 497 long: 500 less 1.5 of reveal at either end. Its hinges have a cup of 35 and, 22.5 to both sides and 9.5
// further in, a dowel of 8. The lower cup reaches from 2.5 to 37.5, the upper from 462.5 to 497.5: over the edge by 0.5.
// The dowels stand at -2.5, 42.5, 457.5 and 502.5: the first and the last are beside the door.
const STRAY = `${ROUND_STOCK}
modules:
  box:
    width: 500
    depth: 400
    carcase height: 500
    stock: board
    carcase: { back: none }
    inside: { front: { kind: door, hinges: [20, 480] } }
`

const decoder = new TextDecoder()

async function drawnAnyway(): Promise<Map<string, string>> {
  const files = new Map<string, string>()
  for await (const { path, bytes } of outputFiles(built(STRAY), FONTS, NO_TEXT, { stamp: 'do not cut' }))
    files.set(path, path.endsWith('.pdf') ? '' : decoder.decode(bytes))
  return files
}

test('cups over the edge of a door are marks in its files, and its files are sound', async () => {
  const of = built(STRAY)
  expect(of.findings.some((finding) => finding.severity === 'stop')).toBe(true)
  expect(panelOf(of, 'box/door').length).toBe(497)
  const files = await drawnAnyway()
  const door = files.get('dxf/box/door-a.dxf') ?? ''
  const holes = entitiesOf<ICircleEntity>(readDxf(door), 'CIRCLE').map(
    ({ layer, center, radius }) => `${layer}: ${center.x} ${center.y}, ${radius}`,
  )
  expect(holes.sort()).toEqual([
    'BORE-D35-DEEP12P5: 20 22.5, 17.5',
    'BORE-D8-DEEP11: 42.5 32, 4',
    'BORE-D8-DEEP11: 457.5 32, 4',
    'MARK: -2.5 32, 4',
    'MARK: 480 22.5, 17.5',
    'MARK: 502.5 32, 4',
  ])
  const sheets = [...files].filter(([path]) => path.endsWith('.dxf'))
  expect(sheets.length).toBeGreaterThanOrEqual(5)
  for (const [path, text] of sheets) expect(lintDxf(text), path).toEqual([])
})

test('in the SVG they keep their names and what they are', async () => {
  const svg = (await drawnAnyway()).get('svg/box/door-a.svg') ?? ''
  const mark = /<g [^>]*data-operation="mark"[\s\S]*?<\/g>\s*(?=<g [^>]*data-operation|<\/svg>)/.exec(svg)?.[0] ?? ''
  for (const id of ['bore-1', 'bore-5', 'bore-6']) expect(mark).toContain(`id="${id}"`)
  for (const id of ['bore-2', 'bore-3', 'bore-4']) expect(mark).not.toContain(`id="${id}"`)
  expect(mark).toMatch(/<title>hinge cup 35 /)
})
