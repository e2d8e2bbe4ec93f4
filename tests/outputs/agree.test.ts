import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pointsAlong } from '../../src/geometry/index.ts'
import { type Built, build, faceFiles, outputFiles, PANELS_FILE } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { lintDxf } from '../../src/writers/index.ts'
import { projectOf } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'
import { anyDefinition } from '../support/random.ts'
import { flipDefinition } from '../support/random-flip.ts'
import { openedDefinition } from '../support/random-openings.ts'
import { builtSample } from '../support/samples.ts'
import {
  type CutoutRecord,
  type Drilling,
  disagreements,
  type GrooveRecord,
  lippingsOf,
  nothing,
  type PanelRecord,
  type PanelsJson,
  type Tally,
} from './agreement.ts'
import { foundInDxf, foundInSvg } from './readers.ts'

const decoder = new TextDecoder()

/** panels.json and the texts of all SVG and DXF files, as they are written together. */
async function drawn(of: Built): Promise<{ json: PanelsJson; files: ReadonlyMap<string, string> }> {
  const files = new Map<string, string>()
  for await (const { path, bytes } of outputFiles(of, FONTS)) {
    if (!path.endsWith('.pdf')) files.set(path, decoder.decode(bytes))
  }
  const json = JSON.parse(files.get(PANELS_FILE) ?? '') as PanelsJson
  return { json, files }
}

function faceOf(path: string): 'A' | 'B' {
  const letter = /-([ab])\.(?:svg|dxf)$/.exec(path)?.[1]
  if (letter === undefined) throw new Error(`${path} names no face`)
  return letter === 'a' ? 'A' : 'B'
}

/** All that disagrees or that the linter refuses, over one kind of file. */
function compared(
  { json, files }: { readonly json: Pick<PanelsJson, 'panels'>; readonly files: ReadonlyMap<string, string> },
  kind: 'svg' | 'dxf',
  mm: number,
): { faults: string[]; tally: Tally } {
  const tally = nothing()
  const faults = json.panels.flatMap((panel) => {
    const missing = ['A', 'B'].filter(
      (face) => hasWork(panel, face) && !panel.files[kind].some((path) => faceOf(path) === face),
    )
    const found = panel.files[kind].flatMap((path) => {
      const text = files.get(path)
      if (text === undefined) return [`${path} is listed and missing`]
      const read = kind === 'dxf' ? foundInDxf(text, mm) : foundInSvg(text, panel.width)
      const wrong = [
        ...disagreements(panel, faceOf(path), read, tally),
        ...(kind === 'dxf' ? linted(text, panel, faceOf(path), mm) : []),
      ]
      return wrong.map((words) => `${path}: ${words}`)
    })
    return [...missing.map((face) => `${panel.id}: no ${kind} of face ${face}`), ...found]
  })
  return { faults, tally }
}

/** The linter measures in the units of the file. */
function linted(text: string, panel: PanelRecord, face: 'A' | 'B', mm: number): string[] {
  const { left, right, low, high } = lippingsOf(panel, face)
  return lintDxf(text, { left: left / mm, right: right / mm, low: low / mm, high: high / mm })
}

const hasWork = (panel: PanelRecord, face: string): boolean =>
  panel.drillings.some((hole) => hole.surface === `face ${face}`) ||
  [...panel.grooves, ...(panel.cutouts ?? [])].some((one) => one.face === face)

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
        build(
          projectOf(`
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
        ),
      )
      expect(all.json.panels.filter((panel) => panel.lipping !== undefined)).toHaveLength(5)
      for (const kind of ['dxf', 'svg'] as const) {
        const { faults, tally } = compared(all, kind, units === 'in' ? 25.4 : 1)
        expect(faults).toEqual([])
        expect(tally.holes).toBeGreaterThan(40)
      }
    },
  )

  test('over random modules', () => {
    const tally = nothing()
    fc.assert(
      fc.property(fc.oneof(anyDefinition, flipDefinition), (text) => {
        const of = build(projectOf(text))
        const files = new Map([...faceFiles(of)].map(({ path, bytes }) => [path, decoder.decode(bytes)]))
        const json = { panels: of.panels.map((panel) => recordOf(panel, [...files.keys()])) }
        const mm = of.project.outputs.dxf.units === 'in' ? 25.4 : 1
        for (const kind of ['dxf', 'svg'] as const) {
          const one = compared({ json, files }, kind, mm)
          expect(one.faults).toEqual([])
          for (const key of Object.keys(tally) as (keyof Tally)[]) tally[key] += one.tally[key]
        }
      }),
      { numRuns: 25 },
    )
    expect(Math.min(tally.holes, tally.grooves, tally.edges)).toBeGreaterThan(0)
  })
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
  const bench = drawn(build(projectOf(text)))

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

  test('over random openings in random panels: whole in the panel or a finding, and drawn as panels.json says', () => {
    const tally = nothing()
    fc.assert(
      fc.property(openedDefinition, (words) => {
        const of = build(projectOf(words))
        const stopped = new Set(
          of.findings
            .filter(({ rule, severity }) => rule.startsWith('cutout') && severity === 'stop')
            .flatMap(({ panels }) => panels),
        )
        for (const panel of of.panels) {
          if (stopped.has(panel.id)) continue
          for (const one of panel.cutouts) {
            for (const [x, y] of pointsAlong(one.path, 1)) {
              expect(x > 0 && x < panel.length && y > 0 && y < panel.width).toBe(true)
            }
          }
        }
        const files = new Map([...faceFiles(of)].map(({ path, bytes }) => [path, decoder.decode(bytes)]))
        const sound = of.panels.filter((panel) => !stopped.has(panel.id))
        const json = { panels: sound.map((panel) => recordOf(panel, [...files.keys()])) }
        const mm = of.project.outputs.dxf.units === 'in' ? 25.4 : 1
        for (const kind of ['dxf', 'svg'] as const) {
          const one = compared({ json, files }, kind, mm)
          expect(one.faults).toEqual([])
          tally.cutouts += one.tally.cutouts
        }
      }),
      { numRuns: 20 },
    )
    expect(tally.cutouts).toBeGreaterThan(10)
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

function lippingByName({ edges, lipping }: Panel): Record<string, number> {
  const sides = ['x0', 'x1', 'y0', 'y1'] as const
  return Object.fromEntries(
    sides.flatMap((side) => (lipping?.[side] === undefined ? [] : [[edges[side], lipping[side]]])),
  )
}

/** A panel as panels.json would have it, but unrounded, and with no pages: those take too long to draw each time. */
function recordOf(panel: Panel, paths: readonly string[]): PanelRecord {
  const own = (kind: string): string[] =>
    ['a', 'b']
      .map((face) => `${kind}/${panel.module}/${panel.key}-${face}.${kind}`)
      .filter((path) => paths.includes(path))
  return {
    id: panel.id,
    length: panel.length,
    width: panel.width,
    thickness: panel.thickness,
    edges: panel.edges,
    ...(panel.lipping && { lipping: lippingByName(panel) }),
    files: { svg: own('svg'), dxf: own('dxf'), pdf: [] },
    drillings: panel.bores.map(({ id, surface, at, axis, diameter, depth, through, leanDeg, sink }) => ({
      id,
      surface: surface === 'A' || surface === 'B' ? `face ${surface}` : `edge ${panel.edges[surface]}`,
      x: at[0],
      y: at[1],
      axis,
      diameter,
      depth,
      through,
      ...(leanDeg !== undefined && { lean: leanDeg }),
      ...(sink && { sink }),
    })),
    grooves: panel.grooves.map(({ id, kind, face, min, max, depth, roundEnds }) => ({
      id,
      kind,
      face,
      min,
      max,
      depth,
      ends: roundEnds ? 'round' : 'square',
    })),
    cutouts: panel.cutouts.map(({ id, face, through, depth, path }) => ({
      id,
      face,
      through,
      depth,
      path: path.map(({ at, bulge }) => [at[0], at[1], bulge] as const),
    })),
  }
}
