import { type Finding, type FindingRow, rowsOf, shortMessage } from '../checks/index.ts'
import type { Panel } from '../panel/index.ts'
import { type Area, areaOfEntity, grown, LINE_HEIGHT, union } from './areas.ts'
import { type Face, faceView, mouthRadius } from './face.ts'
import { type Obstacle, placeLabels } from './labels.ts'
import { joinedInto } from './line-breaks.ts'
import { TEXT_ASCENT, TEXT_DESCENT, textWidth } from './text-width.ts'
import type { Circle, Drawing, Entity, Point, Text } from './types.ts'

/** The layer of the marks; only pictures carry it, never a file for a machine. */
const LAYER = 'FINDING'
/** Radius of a ring beyond the hole in it, its least radius, and between the two rings of a stop, in text heights. */
const RING_BEYOND = 0.5
const RING_LEAST = 1
const RING_STEP = 0.3

/**
 * A panel's drawing with the findings on it: a ring about each place (two about that of a stop), with one number for
 * all that one fix mends, and below the sheet the sentence of each number with its fix. Notes, and what the definition silences, are left out. The
 * same drawing where there is nothing to mark. `size` is the text height, mm.
 */
export function withFindings(drawing: Drawing, panel: Panel, face: Face, findings: readonly Finding[]): Drawing {
  const own = findings.filter(
    (one) => one.severity !== 'note' && one.silenced === undefined && concerns(one, panel, face),
  )
  if (own.length === 0) return drawing
  const size = (drawing.strokeScale ?? 1) * 4
  const rows = rowsOf(own)
  const rings = rows.flatMap(({ first, others }, k) =>
    [first, ...others].flatMap((finding, n) => ringsOf(finding, { row: k + 1, nth: n + 1 }, { panel, face, size })),
  )
  const tags = tagsOf(rings, drawing, size)
  const lines = linesOf(rows, panel, { drawing, size })
  const entities = [...rings.map(({ circle }) => circle), ...tags, ...lines]
  const seen = union([drawing.view, grown(union(entities.map(areaOfEntity)), size)])
  return { ...drawing, view: seen, layers: [...drawing.layers, { name: LAYER, operation: 'finding', entities }] }
}

/** A finding with a place stands on the face that it is on, those in edges on face A; one without, on every face. */
function concerns(finding: Finding, panel: Panel, face: Face): boolean {
  const places = finding.places.filter((place) => place.panel === panel.id)
  if (places.length === 0) return finding.panels.includes(panel.id) && finding.places.length === 0
  return places.some(({ surface }) => surface === face || (face === 'A' && surface !== 'B'))
}

interface Ring {
  readonly tag: string
  readonly circle: Circle
}

function ringsOf(
  finding: Finding,
  { row, nth }: { readonly row: number; readonly nth: number },
  { panel, face, size }: { readonly panel: Panel; readonly face: Face; readonly size: number },
): Ring[] {
  const view = faceView(panel, face)
  const places = finding.places.filter(
    ({ panel: id, surface }) => id === panel.id && (surface === face || (face === 'A' && surface !== 'B')),
  )
  return places.flatMap(({ surface, at }, k) => {
    const hole = panel.bores.find((bore) => bore.surface === surface && bore.at.every((v, axis) => v === at[axis]))
    const inFace = surface === 'A' || surface === 'B'
    const radius = Math.max(RING_LEAST * size, (hole && inFace ? mouthRadius(hole) : 0) + RING_BEYOND * size)
    const tag = String(row)
    const ring = (step: number): Ring => ({
      tag,
      circle: {
        kind: 'circle',
        at: view.toView(at),
        radius: radius + step * RING_STEP * size,
        pen: 'thin',
        id: `finding-${tag}-${nth}-${k + 1}${step === 0 ? '' : '-outer'}`,
        title: `${tag}: ${finding.message}`,
      },
    })
    return finding.severity === 'stop' ? [ring(0), ring(1)] : [ring(0)]
  })
}

/** The number beside each ring, clear of words and of other rings where there is room. */
function tagsOf(rings: readonly Ring[], drawing: Drawing, size: number): Text[] {
  const words = drawing.layers.flatMap(({ entities }) => entities.filter((one) => one.kind === 'text'))
  const taken: Obstacle[] = [
    ...words.map((text): Obstacle => ({ kind: 'area', area: areaOfEntity(text) })),
    ...rings.map(({ circle }): Obstacle => ({ kind: 'disc', at: circle.at, radius: circle.radius, open: true })),
  ]
  const outermost = rings.filter(({ circle }, k) => rings[k + 1]?.circle.at !== circle.at)
  const seen = new Set<string>()
  const wanted = outermost.filter(({ tag, circle }) => {
    const key = `${tag} ${circle.at}`
    return !seen.has(key) && seen.add(key)
  })
  const requests = wanted.map(({ tag, circle }, k) => ({
    key: `${k}`,
    forms: [{ width: textWidth(tag, size, true), height: LINE_HEIGHT * size }],
    targets: [{ at: circle.at, radius: circle.radius }] as const,
    sides: ['right', 'left', 'above', 'below'] as const,
    gap: 0.2 * size,
    reach: 6 * size,
  }))
  const places = placeLabels(requests, taken, grown(drawing.view, 4 * size))
  return places.map(({ key, area }) => ({
    kind: 'text',
    at: [area.min[0], area.min[1] + TEXT_DESCENT * size] as Point,
    height: size,
    anchor: 'start',
    text: wanted[Number(key)]?.tag ?? '',
    bold: true,
  }))
}

/** Lines are never broken to less than this, in text heights, however narrow the panel. */
const LEAST_WIDTH = 50

function linesOf(
  rows: readonly FindingRow[],
  panel: Panel,
  { drawing, size }: { readonly drawing: Drawing; readonly size: number },
): Entity[] {
  const { min, max }: Area = drawing.view
  const left = 0
  const width = Math.max(max[0] - left, LEAST_WIDTH * size)
  const group = { module: panel.moduleName, panel: panel.name }
  const texts = rows.flatMap(({ first, others }, k) => {
    const more = others.length === 0 ? [] : [`The same at ${others.length} more.`]
    const fix = first.fix === undefined ? [] : [`To mend it: ${first.fix}.`]
    const head = `${k + 1}  ${first.severity} ${first.rule}: ${shortMessage(first, group)}.`
    const words = [head, ...more, ...fix].join(' ')
    return joinedInto(words.split(' '), ' ', (line) => textWidth(line, size) <= width)
  })
  const step = (TEXT_ASCENT + TEXT_DESCENT + 0.2) * size
  return texts.map(
    (text, k): Text => ({
      kind: 'text',
      at: [left, min[1] - 0.5 * size - TEXT_ASCENT * size - k * step],
      height: size,
      anchor: 'start',
      text,
    }),
  )
}
