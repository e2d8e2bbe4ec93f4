import { describe, expect, test } from 'vitest'
import { built } from '../support/define.ts'
import { builtSample } from '../support/samples.ts'
import type { CutoutRecord, Drilling, GrooveRecord, PanelRecord } from './agreement.ts'
import { compared, drawn } from './compare.ts'

const cache = new Map<string, ReturnType<typeof drawn>>()

/** A sample as it is drawn, once for all tests. */
function samples(name: string): ReturnType<typeof drawn> {
  const done = cache.get(name) ?? drawn(builtSample(name))
  cache.set(name, done)
  return done
}

describe('what is drawn agrees with panels.json to 0.001 mm: DXF by dxf-parser, SVG by svgson', () => {
  test('the metric sample: holes, grooves with round ends, dowels in edges', async () => {
    const all = await samples('pottery-studio')
    expect(all.json).toMatchObject({ format: 'storyrod panels', version: 1, units: 'mm' })
    expect(all.json.panels.flatMap((panel) => panel.grooves).some((groove) => groove.ends === 'round')).toBe(true)
    for (const kind of ['dxf', 'svg'] as const) {
      const { faults, tally } = compared(all, kind, 1)
      expect(faults).toEqual([])
      expect(tally.holes).toBeGreaterThan(300)
      expect(tally.grooves).toBeGreaterThanOrEqual(4)
      expect(tally.edges).toBeGreaterThan(50)
      expect(tally.strays).toBe(0)
    }
  })

  test('the inch sample, DXF in inches and panels.json in mm: holes, rebates, screws in edges, slanted pockets', async () => {
    const all = await samples('clay-cart')
    for (const kind of ['dxf', 'svg'] as const) {
      const { faults, tally } = compared(all, kind, 25.4)
      expect(faults).toEqual([])
      expect(tally.holes).toBeGreaterThan(100)
      expect(tally.grooves).toBeGreaterThanOrEqual(4)
      expect(tally.edges).toBeGreaterThan(20)
      expect(tally.leans).toBeGreaterThanOrEqual(8)
      expect(tally.strays).toBe(0)
    }
  })

  test.each(['mm', 'in'])(
    'lipped panels on a plinth, in %s: the outline is what is cut, the holes keep their places',
    async (units) => {
      const all = await drawn(
        built(`
storyrod: 1
units: ${units}
stock: { board: { thickness: 18 mm } }
modules:
  box:
    width: 800 mm
    depth: 500 mm
    carcase height: 700 mm
    stock: board
    base: { plinth: { height: 90 mm } }
    carcase: { top: rails, stretchers: [{ at: back }], back: { sits: grooved } }
    inside: { front: { kind: pair } }
    lipping: [{ thickness: 2 mm, edges: all, on: [doors] }, { thickness: 1/8 in, edges: [front, top], on: [sides, bottom] }]
`),
      )
      expect(all.json.panels.filter((panel) => panel.lipping !== undefined)).toHaveLength(5)
      for (const kind of ['dxf', 'svg'] as const) {
        const { faults, tally } = compared(all, kind, units === 'in' ? 25.4 : 1)
        expect(faults).toEqual([])
        expect(tally.holes).toBeGreaterThan(40)
      }
    },
  )
})

describe('cutouts', () => {
  const text = JSON.stringify({
    storyrod: 1,
    stock: { board: { thickness: 18 } },
    modules: {
      bench: {
        width: 800,
        depth: 560,
        'carcase height': 720,
        stock: 'board',
        inside: { 'loose shelves': 1, front: { kind: 'pair' } },
        openings: [
          { panel: 'back', shape: 'round', diameter: 100, from: { left: 200, bottom: 150 } },
          { panel: 'left side', shape: 'slot', length: 120, width: 35, turn: 90, from: { front: 300, top: 100 } },
          {
            panel: 'left side',
            shape: 'path',
            unit: 'mm',
            svg: 'M0 0 H90 V30 H40 Q 30 80 0 80 Z',
            depth: 6.35,
            face: 'outside',
            from: { front: 200, bottom: 330 },
          },
          {
            panel: 'shelf 1',
            shape: 'rectangle',
            width: 300,
            height: 200,
            'corner radius': 20,
            depth: 5,
            face: 'upper face',
            from: 'centred',
          },
          { panel: 'shelf 1', shape: 'round', diameter: 120, from: 'centred' },
        ],
      },
    },
  })
  const bench = drawn(built(text))

  test('of every shape, on both faces, with pages', async () => {
    const all = await bench
    for (const kind of ['dxf', 'svg'] as const) {
      const { faults, tally } = compared(all, kind, 1)
      expect(faults).toEqual([])
      expect(tally.cutouts).toBe(5)
    }
  })

  const cutout =
    (change: (one: CutoutRecord) => Partial<CutoutRecord>) =>
    (panel: PanelRecord): PanelRecord => ({
      ...panel,
      cutouts: (panel.cutouts ?? []).map((one) => ({ ...one, ...change(one) })),
    })
  const bent = (change: (bulge: number) => number) =>
    cutout(({ path }) => ({ path: path.map(([x, y, b]) => [x, y, change(b)]) }))

  test.each<[what: string, change: (panel: PanelRecord) => PanelRecord]>([
    ['0.01 aside', cutout(({ path }) => ({ path: path.map(([x, y, b]) => [x + 0.01, y, b]) }))],
    [
      'mirrored',
      (panel) => cutout(({ path }) => ({ path: path.map(([x, y, b]) => [panel.length - x, y, -b]) }))(panel),
    ],
    ['bent the other way', bent((bulge) => -bulge)],
    ['without its arcs', bent(() => 0)],
    ['deeper', cutout(({ through, depth }) => ({ through: !through, depth: depth + 1 }))],
  ])('are seen to disagree: %s', async (_what, change) => {
    const { files, json } = await bench
    for (const kind of ['dxf', 'svg'] as const) {
      const { faults } = compared({ files, json: { panels: json.panels.map(change) } }, kind, 1)
      expect(faults, kind).not.toEqual([])
    }
  })
})

describe('the comparison sees', () => {
  type Change = (panel: PanelRecord) => PanelRecord
  const drilling =
    (is: (one: Drilling) => boolean, change: (one: Drilling) => Partial<Drilling>): Change =>
    (panel) => {
      const k = panel.drillings.findIndex(is)
      return { ...panel, drillings: panel.drillings.map((one, i) => (i === k ? { ...one, ...change(one) } : one)) }
    }
  const groove =
    (change: (one: GrooveRecord) => Partial<GrooveRecord>): Change =>
    (panel) => ({ ...panel, grooves: panel.grooves.map((one) => ({ ...one, ...change(one) })) })
  const inFace = (one: Drilling): boolean => one.surface.startsWith('face ') && one.lean === undefined
  const inEdge = (one: Drilling): boolean => one.surface.startsWith('edge ')
  const slanted = (one: Drilling): boolean => one.lean !== undefined

  test.each<[what: string, file: string, change: Change]>([
    ['a hole 0.003 aside', 'pottery-studio', drilling(inFace, ({ x }) => ({ x: x + 0.003 }))],
    ['a hole 0.003 wider', 'pottery-studio', drilling(inFace, ({ diameter }) => ({ diameter: diameter + 0.003 }))],
    ['a hole too many', 'pottery-studio', (panel) => ({ ...panel, drillings: panel.drillings.slice(1) })],
    ['a groove 0.01 aside', 'pottery-studio', groove(({ min: [x, y] }) => ({ min: [x, y + 0.01] }))],
    ['a groove 0.01 shorter', 'pottery-studio', groove(({ max: [x, y] }) => ({ max: [x - 0.01, y] }))],
    ['a groove 0.01 deeper', 'pottery-studio', groove(({ depth }) => ({ depth: depth + 0.01 }))],
    ['square ends', 'pottery-studio', groove(() => ({ ends: 'square' }))],
    ['a rebate that is a groove', 'clay-cart', groove(() => ({ kind: 'groove' }))],
    ['an edge bore 0.01 aside', 'clay-cart', drilling(inEdge, ({ x, y }) => ({ x: x + 0.01, y: y + 0.01 }))],
    ['an edge bore 0.01 deeper', 'clay-cart', drilling(inEdge, ({ depth }) => ({ depth: depth + 0.01 }))],
    ['an edge bore 0.01 wider', 'clay-cart', drilling(inEdge, ({ diameter }) => ({ diameter: diameter + 0.01 }))],
    ['a pocket 0.02 aside', 'clay-cart', drilling(slanted, ({ x, y }) => ({ x: x + 0.02, y: y + 0.02 }))],
    ['a pocket the other way', 'clay-cart', drilling(slanted, ({ axis: [x, y, z] }) => ({ axis: [-x, -y, z] }))],
    ['a pocket that is a hole', 'clay-cart', drilling(slanted, () => ({ lean: undefined as unknown as number }))],
  ])('%s', async (_what, name, change) => {
    const { files, json } = await samples(name)
    const changed = { files, json: { panels: json.panels.map(change) } }
    const mm = name === 'clay-cart' ? 25.4 : 1
    for (const kind of ['dxf', 'svg'] as const) expect(compared(changed, kind, mm).faults, kind).not.toEqual([])
  })
})
