import { type INode, stringify } from 'svgson'
import type { Circle, ClosedPath, Drawing, Entity, Layer, Line, Operation, Pen, Point, Text } from '../drawing/index.ts'
import { NOISE_MM, roundMm } from '../geometry/index.ts'
import { arcOf, pointOn } from './arc.ts'
import { checkDrawing, segmentsOf } from './check-drawing.ts'
import { DASH_MM, PEN_MM } from './pdf-draw.ts'
import { type Attributes, el, lines, num, words } from './svg-tree.ts'

interface Stroke {
  readonly colour: string
  /** mm */
  readonly width: number
  /** Lengths of strokes and gaps, mm. */
  readonly dash?: string
}

/**
 * One look for each operation: a colour of the Okabe-Ito palette (Okabe and Ito, "Color Universal Design", 2002) and,
 * for those who do not see the colour, a width or a dash of its own.
 */
const STROKES: Readonly<Record<Operation, Stroke>> = {
  outline: { colour: '#000000', width: 0.7 },
  cutout: { colour: '#d55e00', width: 0.5 },
  pocket: { colour: '#e69f00', width: 0.35, dash: '2.5 1' },
  bore: { colour: '#0072b2', width: 0.35 },
  countersink: { colour: '#56b4e9', width: 0.25, dash: '0.8 0.5' },
  groove: { colour: '#009e73', width: 0.35, dash: '5 1.2' },
  mark: { colour: '#cc79a7', width: 0.35, dash: '3 0.8 0.8 0.8' },
  note: { colour: '#000000', width: 0.1 },
  // Red, as a foreman marks what is wrong; the rings and their numbers are the second cue.
  finding: { colour: '#d00000', width: 0.35 },
}

type Pens = Readonly<Record<Pen, { readonly width: number; readonly dash: string }>>

const PENS: Pens = {
  hair: { width: 0.1, dash: 'none' },
  thin: { width: 0.25, dash: 'none' },
  bold: { width: 0.7, dash: 'none' },
  dashed: { width: 0.25, dash: '2 1.5' },
}

/** Arcs are split so that none turns further than a quarter turn, and float noise over it. */
const QUARTER_TURN = (Math.PI / 2) * (1 + NOISE_MM)

/**
 * A drawing as SVG text at true size: width and height in mm, and a viewBox in the same mm, so every number in the
 * file is a millimetre. y runs down; y = 0 is at `flipHeight` (the panel's upper left corner is (0, 0)), and all is
 * flipped in its numbers, never by a mirroring transform. One group a layer (`id="layer-…"`, `data-layer`,
 * `data-operation`), circles with `data-diameter`, and on each circle and contour with a title a `<title>`, which is
 * what a pointer resting on it reads; groups have none. Lengths are rounded to 0.001 mm.
 * Throws when the drawing breaks the promises of its types (checkDrawing).
 */
export function svgOf(drawing: Drawing): string {
  checkDrawing(drawing)
  const { min, max } = drawing.view
  const flip = flipOf(drawing)
  const width = num(roundMm(max[0]) - roundMm(min[0]))
  const height = num(roundMm(max[1]) - roundMm(min[1]))
  const root = el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `${num(min[0])} ${num(flip(max)[1])} ${width} ${height}`,
      style: 'background:#ffffff',
      fill: 'none',
      'stroke-linejoin': 'round',
      'font-family': 'DejaVu Sans, Verdana, sans-serif',
    },
    lines([
      el('title', {}, [words(drawing.title)]),
      ...drawing.layers.map((layer) =>
        group(layer, { flip, scale: drawing.strokeScale ?? 1, pens: PENS, plain: false }),
      ),
    ]),
  )
  return `<?xml version="1.0" encoding="UTF-8"?>\n${stringify(root, { transformAttr: attribute })}\n`
}

const ESCAPED = /[&'"<>]/

/** Nearly all values are numbers and words that need no escape: one look in place of five. */
function attribute(name: string, value: string, escaped: (value: string) => string): string {
  return `${name}="${ESCAPED.test(value) ? escaped(value) : value}"`
}

const BLACK = '#000000'
const paperPen = (pen: Pen): { width: number; dash: string } => ({
  width: PEN_MM[pen],
  dash: pen === 'dashed' ? `${DASH_MM.on} ${DASH_MM.off}` : 'none',
})
const PAPER_PENS: Pens = {
  hair: paperPen('hair'),
  thin: paperPen('thin'),
  bold: paperPen('bold'),
  dashed: paperPen('dashed'),
}

/**
 * A full-size page as an SVG element to be printed from a browser: true size, in the pens of the PDF, stretched where the drawing
 * says so. All is black, and has neither names nor titles, so that many pages go into one document. Throws as `svgOf` does.
 */
export function pageSvgOf(drawing: Drawing): string {
  checkDrawing(drawing)
  const { min, max } = drawing.view
  const flip = flipOf(drawing)
  const [x, y] = drawing.stretch ?? [1, 1]
  const look: Look = { flip, scale: 1, pens: PAPER_PENS, plain: true }
  const root = el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${num((max[0] - min[0]) * x)}mm`,
      height: `${num((max[1] - min[1]) * y)}mm`,
      viewBox: [min[0], flip(max)[1], max[0] - min[0], max[1] - min[1]].map(exact).join(' '),
      preserveAspectRatio: 'none',
      fill: 'none',
      stroke: BLACK,
      'stroke-width': PEN_MM.thin,
      'font-family': 'DejaVu Sans',
    },
    drawing.layers.flatMap(({ entities }) => entities.map((entity) => shape(entity, BLACK, look))),
  )
  return stringify(root, { transformAttr: attribute })
}

/** A size that a scale is worked out from, so it is not rounded to thousandths. */
const exact = (value: number): string => String(Math.round(value * 1e6) / 1e6)

type Flip = (p: Point) => Point

/** The one flip. It works on rounded numbers, so that y down and y up add up to the height exactly. */
function flipOf(drawing: Drawing): Flip {
  const top = roundMm(drawing.flipHeight ?? drawing.view.max[1])
  return ([x, y]) => [x, top - roundMm(y)]
}

/** How a drawing is put on the page: the flip, its pens, how many times wider than usual these are; `plain`: without names and titles. */
interface Look {
  readonly flip: Flip
  readonly scale: number
  readonly pens: Pens
  readonly plain: boolean
}

function group(layer: Layer, look: Look): INode {
  const { colour, width, dash } = STROKES[layer.operation]
  const attributes: Attributes = {
    id: `layer-${layer.name.toLowerCase()}`,
    'data-layer': layer.name,
    'data-operation': layer.operation,
    stroke: colour,
    'stroke-width': width * look.scale,
    'stroke-dasharray': dash === undefined ? undefined : scaledDash(dash, look.scale),
  }
  return el('g', attributes, lines(layer.entities.map((entity) => shape(entity, colour, look))))
}

function shape(entity: Entity, colour: string, look: Look): INode {
  switch (entity.kind) {
    case 'circle':
      return circle(entity, look)
    case 'path':
      return path(entity, colour, look)
    case 'line':
      return line(entity, look)
    case 'text':
      return text(entity, colour, look.flip)
    default:
      return entity satisfies never
  }
}

/** Strokes and gaps of a dash, wider like the line itself. */
function scaledDash(dash: string, scale: number): string {
  return dash === 'none'
    ? dash
    : dash
        .split(' ')
        .map((length) => num(Number(length) * scale))
        .join(' ')
}

/** Inside a shape with a title the pointer finds it, not only on its line. */
function titled(entity: Circle | ClosedPath, { plain }: Look): { attributes: Attributes; children: INode[] } {
  if (plain) return { attributes: {}, children: [] }
  const { id, title } = entity
  if (title === undefined) return { attributes: { id }, children: [] }
  return { attributes: { id, 'pointer-events': 'all' }, children: [el('title', {}, [words(title)])] }
}

function penOf(pen: Pen | undefined, { pens, scale }: Look): Attributes {
  if (pen === undefined) return {}
  return { 'stroke-width': pens[pen].width * scale, 'stroke-dasharray': scaledDash(pens[pen].dash, scale) }
}

function circle(entity: Circle, look: Look): INode {
  const [cx, cy] = look.flip(entity.at)
  const { attributes, children } = titled(entity, look)
  const size = { cx, cy, r: entity.radius, 'data-diameter': look.plain ? undefined : entity.radius * 2 }
  return el('circle', { ...attributes, ...size, ...penOf(entity.pen, look) }, children)
}

function path(entity: ClosedPath, colour: string, look: Look): INode {
  const { attributes, children } = titled(entity, look)
  // A PDF fills without a line round it.
  const filled = { fill: colour, stroke: look.plain ? 'none' : undefined }
  const d = pathData(entity, look.flip)
  return el('path', { ...attributes, d, ...(entity.filled === true && filled), ...penOf(entity.pen, look) }, children)
}

/**
 * SVG gives an arc by its ends and radius, and readers find the centre from them. In one piece, a half turn of radius
 * 10 mm would move its centre by 0.1 mm when the radius is rounded by 0.0005 mm. With no piece above a quarter turn,
 * rounding of ends and radius together moves no point of an arc by more than 0.0013 mm.
 */
function pathData(entity: ClosedPath, flip: Flip): string {
  const point = (p: Point) => flip(p).map(num).join(' ')
  const segments = segmentsOf(entity)
  const parts = segments.flatMap(({ from, to, bulge }, i) => {
    const last = i === segments.length - 1
    if (bulge === 0) return last ? [] : [`L${point(to)}`]
    const arc = arcOf(from, to, bulge)
    const pieces = Math.ceil(Math.abs(arc.sweep) / QUARTER_TURN)
    const turns = bulge > 0 ? 0 : 1
    return Array.from({ length: pieces }, (_, k) => {
      const end = k === pieces - 1 ? to : pointOn(arc, (k + 1) / pieces)
      return `A${num(arc.radius)} ${num(arc.radius)} 0 0 ${turns} ${point(end)}`
    })
  })
  return `M${segments[0] === undefined ? '' : point(segments[0].from)}${parts.join('')}Z`
}

function line(entity: Line, look: Look): INode {
  const [x1, y1] = look.flip(entity.from)
  const [x2, y2] = look.flip(entity.to)
  return el('line', { x1, y1, x2, y2, ...penOf(entity.pen, look) })
}

/** Turned counter-clockwise is a negative angle where y runs down. */
function text(entity: Text, colour: string, flip: Flip): INode {
  const [x, y] = flip(entity.at)
  const attributes: Attributes = {
    x,
    y,
    fill: colour,
    stroke: 'none',
    'font-size': entity.height,
    'font-weight': entity.bold === true ? 'bold' : undefined,
    'text-anchor': entity.anchor === 'start' ? undefined : entity.anchor,
    transform: entity.turnDeg === 90 ? `rotate(-90 ${num(x)} ${num(y)})` : undefined,
  }
  return el('text', attributes, [words(entity.text)])
}
