import { readFileSync } from 'node:fs'
import type { ICircleEntity } from 'dxf-parser'
import fc from 'fast-check'
import { type INode, parseSync } from 'svgson'
import { describe, expect, test } from 'vitest'
import { type Built, build, faceFiles, outputFiles, PANELS_FILE } from '../../src/outputs/index.ts'
import { lintDxf } from '../../src/writers/index.ts'
import { projectOf } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'
import { anyDefinition } from '../support/random.ts'
import { entitiesOf, readDxf } from '../writers/read-dxf.ts'

/** What this test needs of panels.json; written out here, so that a change of the format is seen. */
interface PanelsJson {
  readonly format: string
  readonly version: number
  readonly units: string
  readonly files: readonly string[]
  readonly panels: readonly {
    readonly id: string
    readonly length: number
    readonly width: number
    readonly thickness: number
    readonly files: Readonly<Record<'svg' | 'dxf' | 'pdf', readonly string[]>>
    readonly drillings: readonly Hole[]
  }[]
}

interface Hole {
  readonly surface: string
  readonly x: number
  readonly y: number
  readonly diameter: number
  readonly depth: number
  readonly through: boolean
  readonly lean?: number
  readonly sink?: {
    readonly shape: string
    readonly diameter: number
    readonly depth?: number
    readonly angleDeg?: number
  }
}

type Files = ReadonlyMap<string, string>

const decoder = new TextDecoder()

async function drawn(of: Built): Promise<{ json: PanelsJson; files: Files }> {
  const files = new Map<string, string>()
  for (const { path, bytes } of faceFiles(of)) files.set(path, decoder.decode(bytes))
  const withJson = outputFiles({ ...of, panels: [] }, FONTS)
  for await (const { path } of withJson)
    if (path !== PANELS_FILE) throw new Error('a project without panels has one file')
  return { json: await jsonOf(of), files }
}

/** panels.json as it is written with everything else. */
async function jsonOf(of: Built): Promise<PanelsJson> {
  for await (const { path, bytes } of outputFiles(of, FONTS))
    if (path === PANELS_FILE) return JSON.parse(decoder.decode(bytes)) as PanelsJson
  throw new Error('no panels.json')
}

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 0.001

/** Circles that a drawing of one face must have: centre as seen on that face, radius. */
function expected(panel: PanelsJson['panels'][number], face: 'A' | 'B'): { x: number; y: number; r: number }[] {
  const seen = (hole: Hole): number => (face === 'A' ? hole.x : panel.length - hole.x)
  return panel.drillings
    .filter((hole) => hole.surface === `face ${face}` && hole.lean === undefined)
    .flatMap((hole) =>
      [hole.diameter, ...(hole.sink ? [hole.sink.diameter] : [])].map((d) => ({ x: seen(hole), y: hole.y, r: d / 2 })),
    )
}

/** Pairs off two lists of circles; what is left over on either side. */
function unmatched(
  a: readonly { x: number; y: number; r: number }[],
  b: readonly { x: number; y: number; r: number }[],
): string[] {
  const rest = [...b]
  const lost = a.filter((one) => {
    const k = rest.findIndex((other) => close(one.x, other.x) && close(one.y, other.y) && close(one.r, other.r))
    if (k >= 0) rest.splice(k, 1)
    return k < 0
  })
  return [
    ...lost.map((one) => `not drawn: ${JSON.stringify(one)}`),
    ...rest.map((one) => `not in panels.json: ${JSON.stringify(one)}`),
  ]
}

const faceOf = (path: string): 'A' | 'B' => (path.includes('-b.') ? 'B' : 'A')

function dxfCircles(text: string): { x: number; y: number; r: number }[] {
  const dxf = readDxf(text)
  return entitiesOf<ICircleEntity>(dxf, 'CIRCLE')
    .filter((circle) => /^(BORE|COUNTERSINK)-/.test(circle.layer))
    .map((circle) => ({ x: circle.center.x, y: circle.center.y, r: circle.radius }))
}

const below = (node: INode): INode[] => [node, ...node.children.flatMap(below)]

function svgCircles(text: string, width: number): { x: number; y: number; r: number }[] {
  const layers = below(parseSync(text)).filter((node) =>
    ['bore', 'countersink'].includes(node.attributes['data-operation'] ?? ''),
  )
  return layers
    .flatMap(below)
    .filter((node) => node.name === 'circle')
    .map(({ attributes }) => ({ x: Number(attributes.cx), y: width - Number(attributes.cy), r: Number(attributes.r) }))
}

function disagreements({ json, files }: { json: PanelsJson; files: Files }): string[] {
  return json.panels.flatMap((panel) => {
    const about = (path: string, lines: string[]): string[] => lines.map((line) => `${path}: ${line}`)
    return [
      ...panel.files.dxf.flatMap((path) =>
        about(path, unmatched(expected(panel, faceOf(path)), dxfCircles(files.get(path) ?? ''))),
      ),
      ...panel.files.svg.flatMap((path) =>
        about(path, unmatched(expected(panel, faceOf(path)), svgCircles(files.get(path) ?? '', panel.width))),
      ),
      ...panel.files.dxf.flatMap((path) => about(path, lintDxf(files.get(path) ?? 'missing'))),
    ]
  })
}

describe('what is drawn agrees with panels.json to 0.001 mm', () => {
  test('over the metric sample: DXF by dxf-parser, SVG by svgson', async () => {
    const text = readFileSync(new URL('../../out-samples/pottery-studio.yaml', import.meta.url), 'utf8')
    const all = await drawn(build(projectOf(text)))
    expect(all.json).toMatchObject({ format: 'storyrod panels', version: 1, units: 'mm' })
    expect(
      all.json.panels.reduce((sum, panel) => sum + expected(panel, 'A').length + expected(panel, 'B').length, 0),
    ).toBeGreaterThan(300)
    expect(disagreements(all)).toEqual([])
  })

  test('the inch sample: DXF in inches, panels.json in mm', async () => {
    const text = readFileSync(new URL('../../out-samples/clay-cart.yaml', import.meta.url), 'utf8')
    const { json, files } = await drawn(build(projectOf(text)))
    for (const panel of json.panels) {
      for (const path of panel.files.dxf) {
        const inMm = dxfCircles(files.get(path) ?? '').map(({ x, y, r }) => ({ x: x * 25.4, y: y * 25.4, r: r * 25.4 }))
        expect(unmatched(expected(panel, faceOf(path)), inMm), path).toEqual([])
      }
    }
  })

  test('over random modules', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        const of = build(projectOf(text))
        const files = new Map([...faceFiles(of)].map(({ path, bytes }) => [path, decoder.decode(bytes)]))
        for (const panel of of.panels) {
          for (const face of ['A', 'B'] as const) {
            const name = `${panel.module}/${panel.key}-${face.toLowerCase()}`
            const svg = files.get(`svg/${name}.svg`)
            const holes = panel.bores
              .filter((bore) => bore.surface === face && bore.leanDeg === undefined)
              .flatMap((bore) =>
                [bore.diameter, ...(bore.sink ? [bore.sink.diameter] : [])].map((d) => ({
                  x: face === 'A' ? bore.at[0] : panel.length - bore.at[0],
                  y: bore.at[1],
                  r: d / 2,
                })),
              )
            if (svg === undefined) expect(holes, name).toEqual([])
            else {
              expect(unmatched(holes, svgCircles(svg, panel.width)), `${name}.svg`).toEqual([])
              expect(unmatched(holes, dxfCircles(files.get(`dxf/${name}.dxf`) ?? '')), `${name}.dxf`).toEqual([])
              expect(lintDxf(files.get(`dxf/${name}.dxf`) ?? ''), name).toEqual([])
            }
          }
        }
      }),
      { numRuns: 25 },
    )
  })
})
