import Writer from 'dxf-writer'
import Handle from 'dxf-writer/src/Handle.js'
import type { Drawing, Layer } from '../../drawing/index.ts'
import { checkDrawing } from '../check-drawing.ts'
import { COLOURS, layersFor } from './layers.ts'
import { firstOf, type Pair, pairsOf, recordsOf, textOf } from './pairs.ts'
import { repaired } from './repair.ts'
import { boxOf, type Shape, shapesOf } from './shapes.ts'

export interface DxfOptions {
  /** The unit of every number in the file, and of the header's word for it. */
  readonly units: 'mm' | 'in'
  /** AC1021 or AC1015. */
  readonly version: '2007' | '2000'
  /** A closed polyline with bulges for each contour, or its lines and arcs with equal ends for importers that know none. */
  readonly contours: 'bulges' | 'lines and arcs'
  /** Without notes there is no note layer, and so no text. */
  readonly notes: boolean
  /** The file's name, for the message when something is wrong with it. */
  readonly name: string
}

const VERSIONS = { '2007': 'AC1021', '2000': 'AC1015' } as const
/** Values of $INSUNITS and $MEASUREMENT (ezdxf manual, "DXF Units"). */
const UNITS = {
  mm: { word: 'Millimeters', measurement: 1 },
  in: { word: 'Inches', measurement: 0 },
} as const
const ALIGNMENTS = { start: 'left', middle: 'center', end: 'right' } as const

/**
 * A drawing as DXF text: ASCII, CR LF, y up, the panel's lower left corner at (0, 0). A CIRCLE for every circle, one
 * closed LWPOLYLINE for every contour (or LINE and ARC), LINE and TEXT only on mark and note layers; one layer colour
 * an operation. Coordinates and radii are rounded to 1e-6 of the unit, once for each vertex. Written through dxf-writer
 * and then brought into one canonical form; the same drawing gives the same text whatever was written before.
 * Throws when the drawing breaks the promises of its types (checkDrawing), or when the file does not hold what was drawn.
 */
export function dxfOf(drawing: Drawing, options: DxfOptions): string {
  try {
    return written(drawing, options)
  } catch (error) {
    throw new Error(`${options.name}: ${error instanceof Error ? error.message : error}`, { cause: error })
  }
}

function written(drawing: Drawing, options: DxfOptions): string {
  checkDrawing(drawing)
  if (drawing.layers.some(({ operation }) => operation === 'finding'))
    throw new Error('findings stand on pictures alone')
  const layers = layersFor(drawing, options.notes)
  const shapes = layers.flatMap((layer) => shapesOf(layer, options))
  const box = boxOf(shapes) ?? { min: [0, 0], max: [0, 0] }
  const pairs = repaired(pairsOf(raw(layers, shapes, box, options)), { version: options.version, view: box })
  compareCounts(pairs, shapes)
  return textOf(pairs)
}

type Box = { readonly min: readonly [number, number]; readonly max: readonly [number, number] }

/** dxf-writer counts handles over the life of the process, so nothing may come between the reset and the text. */
function raw(layers: readonly Layer[], shapes: readonly Shape[], box: Box, options: DxfOptions): string {
  Handle.seed = 0
  const writer = new Writer()
  const header = (name: string, ...values: (readonly [code: number, value: number | string])[]) =>
    // The types of dxf-writer allow numbers only; it writes strings as they are.
    writer.header(name, values as unknown as [number, number][])
  header('ACADVER', [1, VERSIONS[options.version]])
  header('DWGCODEPAGE', [3, 'ANSI_1252'])
  writer.setUnits(UNITS[options.units].word)
  header('MEASUREMENT', [70, UNITS[options.units].measurement])
  header('EXTMIN', [10, box.min[0]], [20, box.min[1]], [30, 0])
  header('EXTMAX', [10, box.max[0]], [20, box.max[1]], [30, 0])
  for (const layer of layers) writer.addLayer(layer.name, COLOURS[layer.operation], 'CONTINUOUS')
  for (const shape of shapes) draw(writer.setActiveLayer(shape.layer), shape)
  return writer.toDxfString()
}

function draw(writer: Writer, shape: Shape): void {
  switch (shape.type) {
    case 'CIRCLE':
      writer.drawCircle(shape.at[0], shape.at[1], shape.radius)
      return
    case 'LWPOLYLINE':
      // The third figure is the bulge; dxf-writer leaves it out where it is undefined.
      writer.drawPolyline(
        shape.vertices.map(([x, y, bulge]) => (bulge === 0 ? [x, y] : [x, y, bulge])) as [number, number][],
        true,
      )
      return
    case 'LINE':
      writer.drawLine(shape.from[0], shape.from[1], shape.to[0], shape.to[1])
      return
    case 'ARC':
      writer.drawArc(shape.at[0], shape.at[1], shape.radius, shape.fromDeg, shape.toDeg)
      return
    case 'TEXT':
      writer.drawText(shape.at[0], shape.at[1], shape.height, shape.turnDeg, shape.text, ALIGNMENTS[shape.anchor])
      return
    default:
      shape satisfies never
  }
}

/** The file must hold as many entities of each kind on each layer as were drawn. */
function compareCounts(pairs: readonly Pair[], shapes: readonly Shape[]): void {
  const records = recordsOf(pairs)
  const start = records.findIndex((record) => record[0]?.value === 'SECTION' && firstOf(record, 2) === 'ENTITIES')
  const end = records.findIndex((record, i) => i > start && record[0]?.value === 'ENDSEC')
  const found = tally(records.slice(start + 1, end).map((record) => `${record[0]?.value} on ${firstOf(record, 8)}`))
  const drawn = tally(shapes.map((shape) => `${shape.type} on ${shape.layer}`))
  for (const key of new Set([...found.keys(), ...drawn.keys()])) {
    if (found.get(key) !== drawn.get(key)) {
      throw new Error(`${drawn.get(key) ?? 0} ${key} drawn, ${found.get(key) ?? 0} in the file`)
    }
  }
}

function tally(keys: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}
