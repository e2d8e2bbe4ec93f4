import type { Finding } from '../checks/index.ts'
import { facesDrawn, panelDrawing, withFindings } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'
import { dxfOf, svgOf } from '../writers/index.ts'
import type { Built } from './build.ts'
import { type DefinitionText, FINDINGS_JSON, FINDINGS_TEXT, findingsJson, findingsText } from './findings-files.ts'
import { type PrintCount, pageFiles, sharedPagePaths } from './page-files.ts'
import { panelsJson } from './panels-json.ts'
import { facePath, filesOf } from './paths.ts'

/** One file that a project yields; the path is relative, with forward slashes. */
export interface OutputFile {
  readonly path: string
  readonly bytes: Uint8Array
}

/** TrueType fonts that are embedded in the PDF files. */
export interface Fonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

export interface OutputOptions {
  /** A warning printed on every drawing: it was drawn although a finding forbids it. */
  readonly stamp?: string
  /** Told when all is drawn how many sheets of paper there are to print. */
  readonly onCount?: (count: PrintCount) => void
}

/** Where panels.json lies in the output folder. */
export const PANELS_FILE = 'panels.json'

/** Paths of all files that the project yields, in the order in which they are written. */
export function outputPaths(built: Built): string[] {
  const ofPanel = (panel: Panel): string[] => {
    const drawings = facesDrawn(panel).flatMap((face) => [facePath('svg', panel, face), facePath('dxf', panel, face)])
    return [...drawings, ...filesOf(panel).pdf]
  }
  const panels = built.panels.flatMap(ofPanel)
  return [...panels, ...sharedPagePaths(built), PANELS_FILE, FINDINGS_JSON, FINDINGS_TEXT]
}

/** SVG and DXF of every drawn face, in the order of the panels. */
export function* faceFiles(built: Built, options: OutputOptions = {}): Generator<OutputFile> {
  for (const panel of built.panels) yield* panelFaceFiles(built, panel, options)
}

/** The same of one panel. */
export function* panelFaceFiles(built: Built, panel: Panel, options: OutputOptions): Generator<OutputFile> {
  const found = findingsOn(built, panel)
  for (const face of facesDrawn(panel)) {
    const { dxf } = built.project.outputs
    const drawing = panelDrawing(panel, face, { patterns: dxf.layers, units: built.project.units, ...stampOf(options) })
    yield { path: facePath('svg', panel, face), bytes: encode(svgOf(withFindings(drawing, panel, face, found))) }
    // The warning of a stamp is a note; it must not be lost with the notes.
    const notes = dxf.notes || options.stamp !== undefined
    const text = dxfOf(drawing, { ...dxf, notes, name: `${panel.id} face ${face}` })
    yield { path: facePath('dxf', panel, face), bytes: encode(text) }
  }
}

/**
 * Every file of the project: for each panel its SVG, DXF and full-size pages, then the pages of all, panels.json and the
 * findings. Each page is drawn once: what is kept of it is its part of the file of all pages.
 */
export async function* outputFiles(
  built: Built,
  fonts: Fonts,
  definition: DefinitionText,
  options: OutputOptions = {},
): AsyncGenerator<OutputFile> {
  const json = panelsText(built, options)
  const { outputs, units } = built.project
  const pages = pageFiles(built, fonts, JSON.stringify([json, outputs, units]), options.stamp)
  for (const panel of built.panels) {
    yield* panelFaceFiles(built, panel, options)
    const file = await pages.of(panel)
    if (file !== undefined) yield file
  }
  yield* pages.shared()
  options.onCount?.(pages.count())
  yield* lists(built, definition, json, options)
}

/** panels.json, and the findings twice. */
export function* lists(
  built: Built,
  definition: DefinitionText,
  panels: string,
  { stamp }: OutputOptions,
): Generator<OutputFile> {
  yield { path: PANELS_FILE, bytes: encode(panels) }
  yield { path: FINDINGS_JSON, bytes: encode(findingsJson(built, definition, stamp)) }
  yield { path: FINDINGS_TEXT, bytes: encode(findingsText(built, definition, stamp)) }
}

/** The text of panels.json. */
export function panelsText(built: Built, { stamp }: OutputOptions): string {
  return panelsJson(built.project.title, built.panels, filesOf, outputPaths(built), stamp)
}

/** The findings that concern a panel; all are gone through once for a project. */
function findingsOn(built: Built, panel: Panel): readonly Finding[] {
  let byPanel = concerned.get(built)
  if (byPanel === undefined) {
    byPanel = new Map<string, Finding[]>()
    for (const finding of built.findings) {
      for (const id of new Set(finding.panels)) {
        const list = byPanel.get(id)
        if (list === undefined) byPanel.set(id, [finding])
        else list.push(finding)
      }
    }
    concerned.set(built, byPanel)
  }
  return byPanel.get(panel.id) ?? []
}

const concerned = new WeakMap<Built, Map<string, Finding[]>>()

const stampOf = (options: OutputOptions): OutputOptions => (options.stamp === undefined ? {} : { stamp: options.stamp })

const encoder = new TextEncoder()
const encode = (text: string): Uint8Array => encoder.encode(text)
