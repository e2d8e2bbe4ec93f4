import { type Built, faceFiles, outputFile, PANELS_FILE } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { lintDxf } from '../../src/writers/index.ts'
import { NO_TEXT } from '../support/define.ts'
import { FONTS } from '../support/fonts.ts'
import { disagreements, lippingsOf, nothing, type PanelRecord, type PanelsJson, type Tally } from './agreement.ts'
import { foundInDxf, foundInSvg } from './readers.ts'

const decoder = new TextDecoder()

/**
 * panels.json and the texts of all SVG and DXF files. That they are written so beside the pages is shown with the samples;
 * the pages are not looked at here, and take most of the time.
 */
export async function drawn(of: Built): Promise<{ json: PanelsJson; files: ReadonlyMap<string, string> }> {
  const files = new Map([...faceFiles(of)].map(({ path, bytes }) => [path, decoder.decode(bytes)]))
  const list = await outputFile(of, FONTS, NO_TEXT, PANELS_FILE)
  const json = JSON.parse(decoder.decode(list?.bytes)) as PanelsJson
  return { json, files }
}

function faceOf(path: string): 'A' | 'B' {
  const letter = /-([ab])\.(?:svg|dxf)$/.exec(path)?.[1]
  if (letter === undefined) throw new Error(`${path} names no face`)
  return letter === 'a' ? 'A' : 'B'
}

/** All that disagrees or that the linter refuses, over one kind of file. */
export function compared(
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

/** All that disagrees in the drawings of all faces, without the full-size pages: those take too long to draw each time. */
export function faceFaults(of: Built, panels: readonly Panel[], tally: Tally): string[] {
  const files = new Map([...faceFiles(of)].map(({ path, bytes }) => [path, decoder.decode(bytes)]))
  const json = { panels: panels.map((panel) => recordOf(panel, [...files.keys()])) }
  const mm = of.project.outputs.dxf.units === 'in' ? 25.4 : 1
  return (['dxf', 'svg'] as const).flatMap((kind) => {
    const one = compared({ json, files }, kind, mm)
    for (const key of Object.keys(tally) as (keyof Tally)[]) tally[key] += one.tally[key]
    return one.faults
  })
}

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
