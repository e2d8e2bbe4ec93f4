import type { EdgeSide } from '../assembly/index.ts'
import type { Units } from '../length/index.ts'
import type { Panel } from '../panel/index.ts'
import { type Area, areaOfEntity, around, grown, LINE_HEIGHT, textArea } from './areas.ts'
import { besideEdge, type DrawnSide, type FaceView } from './face.ts'
import { type Obstacle, placeLabels, type Side } from './labels.ts'
import type { Drawn, Work } from './layers.ts'
import { TEXT_ASCENT, TEXT_DESCENT, textWidth } from './text-width.ts'
import type { ClosedPath, Entity, Point, Text } from './types.ts'
import { edgeWords } from './words.ts'
import { cornersOf, TICK } from './work.ts'

const NOTE: Work = { kind: 'note' }
const SIDES: readonly EdgeSide[] = ['x0', 'x1', 'y0', 'y1']

/** Distances from the panel's edge outward, in text heights: the bar along the leading edge, and the names beyond it. */
const BAR_OUT = TICK + 0.2
const BAR_THICK = 0.3
const NAME_OUT = BAR_OUT + BAR_THICK + 0.25
/** A name's font size where its edge is the front, and half the width of the arrow heads beside it, which need room. */
const FRONT_SIZE = 1.25
const HEAD_HALF = 0.4

/** The edge that one finds first: the front; on panels that have none (doors, backs), the top. */
export function leadingEdge(edges: Panel['edges']): EdgeSide | undefined {
  const named = (name: string): EdgeSide | undefined => SIDES.find((side) => edges[side] === name)
  return named('front') ?? named('top')
}

/**
 * What is drawn around the panel: names of its edges, the leading one emphasised, and the corner to measure from; clear
 * of holes that reach over an edge (which a check reports, but which may be drawn all the same).
 */
export function drawFrame(
  view: FaceView,
  units: Units,
  size: number,
  work: readonly Obstacle[],
): { drawn: Drawn[]; obstacles: Obstacle[] } {
  const leading = leadingEdge(view.panel.edges)
  const names = SIDES.flatMap((edge) =>
    edgeName(view, edge, edgeWords(view.panel, edge, units), size, edge === leading, overhang(view, edge, work)),
  )
  const datum = datumCorner(view, size)
  const before = [...names, ...datum].map(obstacleOf)
  const words = datumWords(view, size, [...before, ...work.filter((obstacle) => obstacle.kind === 'disc')])
  const entities = [...names, ...datum, ...words]
  return { drawn: entities.map((entity) => ({ work: NOTE, entity })), obstacles: [...before, ...words.map(obstacleOf)] }
}

/** What a note keeps labels off. Leaders may cross its lines, but not its words, nor the bar along the leading edge. */
export function obstacleOf(entity: Entity): Obstacle {
  switch (entity.kind) {
    case 'line':
      return { kind: 'line', from: entity.from, to: entity.to, open: true }
    case 'circle':
      return { kind: 'disc', at: entity.at, radius: entity.radius }
    case 'path':
      return { kind: 'area', area: areaOfEntity(entity) }
    case 'text':
      return { kind: 'area', area: textArea(entity) }
    default:
      return entity satisfies never
  }
}

/** How far holes reach over an edge, mm. */
function overhang(view: FaceView, edge: EdgeSide, work: readonly Obstacle[]): number {
  const side = view.sideOf(edge)
  const axis = side === 'left' || side === 'right' ? 0 : 1
  const low = side === 'left' || side === 'low'
  return Math.max(
    0,
    ...work.map((obstacle) => {
      if (obstacle.kind !== 'disc') return 0
      const { at, radius } = obstacle
      return low ? radius - at[axis] : at[axis] + radius - view.area.max[axis]
    }),
  )
}

function edgeName(
  view: FaceView,
  edge: EdgeSide,
  name: string,
  size: number,
  leads: boolean,
  beyond: number,
): Entity[] {
  const side = view.sideOf(edge)
  const long = side === 'low' || side === 'high' ? view.panel.length : view.panel.width
  const height = leads ? size * FRONT_SIZE : size
  const words = leads ? name.toUpperCase() : name
  const half = textWidth(words, height, leads) / 2
  const text = nameText(view, side, nameMiddle(view, side, long, half), {
    name: words,
    height,
    bold: leads,
    near: NAME_OUT * size + beyond,
  })
  if (!leads) return [text]
  const rule = bar(view, side, long, size, beyond)
  const out = half + size
  if (2 * (out + HEAD_HALF * size) > long) return [rule, text]
  const heads = [long / 2 - out, long / 2 + out].map((along) => arrowHead(view, side, along, size, beyond))
  return [rule, text, ...heads]
}

/** Where the middle of a name lies along its side, mm; one that is longer than the side keeps off the datum corner's arrow. */
function nameMiddle(view: FaceView, side: DrawnSide, long: number, half: number): number {
  if (2 * half <= long) return long / 2
  const { out } = cornerOf(view)
  const [meets, other] =
    side === 'left' || side === 'right'
      ? [out[0] > 0 ? 'right' : 'left', out[1]]
      : [out[1] > 0 ? 'high' : 'low', out[0]]
  if (side !== meets) return long / 2
  return other < 0 ? half : long - half
}

/** A heavy bar along a side; a filled shape, so that it stays heavy whatever pens a writer has. */
function bar(view: FaceView, side: DrawnSide, long: number, size: number, beyond: number): ClosedPath {
  const near = besideEdge(view.area, side, 0, BAR_OUT * size + beyond)
  const far = besideEdge(view.area, side, long, (BAR_OUT + BAR_THICK) * size + beyond)
  return {
    kind: 'path',
    filled: true,
    pen: 'hair',
    vertices: cornersOf(around([near, far])).map((at) => ({ at, bulge: 0 })),
  }
}

/** Words along a side, just outside; on upright sides they read upward. */
function nameText(
  view: FaceView,
  side: DrawnSide,
  along: number,
  words: { readonly name: string; readonly height: number; readonly bold: boolean; readonly near: number },
): Text {
  const { near } = words
  // Words below a panel, and upright ones to its right, turn their tops toward it; the others their tails.
  const out =
    side === 'low' || side === 'right' ? near + TEXT_ASCENT * words.height : near + TEXT_DESCENT * words.height
  const upright = side === 'left' || side === 'right'
  return {
    kind: 'text',
    at: besideEdge(view.area, side, along, out),
    height: words.height,
    anchor: 'middle',
    text: words.name,
    ...(upright ? { turnDeg: 90 as const } : {}),
    ...(words.bold ? { bold: true } : {}),
  }
}

/** A filled triangle beside a name that points out of the panel, the way the edge looks. */
function arrowHead(view: FaceView, side: DrawnSide, along: number, size: number, beyond: number): ClosedPath {
  const near = (NAME_OUT + 0.3) * size + beyond
  const far = (NAME_OUT + 1.2) * size + beyond
  return triangle([
    besideEdge(view.area, side, along, far),
    besideEdge(view.area, side, along - HEAD_HALF * size, near),
    besideEdge(view.area, side, along + HEAD_HALF * size, near),
  ])
}

function triangle(corners: readonly [Point, Point, Point]): ClosedPath {
  const [a, b, c] = corners
  const turn = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  const order = turn > 0 ? [a, b, c] : [a, c, b]
  return { kind: 'path', filled: true, pen: 'hair', vertices: order.map((at) => ({ at, bulge: 0 })) }
}

/** The corner where the two datum edges meet, and the way out of the panel there. */
function cornerOf(view: FaceView): { at: Point; out: Point } {
  const right = view.sideOf(view.panel.datum.x) === 'right'
  const high = view.sideOf(view.panel.datum.y) === 'high'
  const { min, max } = view.area
  return { at: [right ? max[0] : min[0], high ? max[1] : min[1]], out: [right ? 1 : -1, high ? 1 : -1] }
}

/** An arrow from outside onto the corner that a person measures from. */
function datumCorner(view: FaceView, size: number): Entity[] {
  const { at, out } = cornerOf(view)
  const off = (k: number, aside = 0): Point => [
    at[0] + out[0] * (k + aside) * size,
    at[1] + out[1] * (k - aside) * size,
  ]
  return [
    triangle([off(0.12), off(1.05, 0.28), off(1.05, -0.28)]),
    { kind: 'line', pen: 'bold', from: off(1.05), to: off(DATUM_TAIL) },
  ]
}

const DATUM_TAIL = 1.9

function datumWords(view: FaceView, size: number, before: readonly Obstacle[]): Text[] {
  const { at, out } = cornerOf(view)
  const tail: Point = [at[0] + out[0] * DATUM_TAIL * size, at[1] + out[1] * DATUM_TAIL * size]
  const text = 'measure from here'
  const [toward, away] = out[0] < 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const sides: readonly Side[] = out[1] < 0 ? [`below ${toward}`, away] : [`above ${toward}`, away]
  const corners = cornersOf(view.area)
  const outline = corners.map((from, k): Obstacle => ({ kind: 'line', from, to: corners[(k + 1) % 4] ?? from }))
  const [label] = placeLabels(
    [
      {
        key: 'datum',
        forms: [{ width: textWidth(text, size), height: LINE_HEIGHT * size }],
        targets: [{ at: tail, radius: 0 }],
        sides,
        gap: 0.15 * size,
        reach: 0,
      },
    ],
    [...before.filter((obstacle) => obstacle.kind !== 'line'), ...outline],
    grown(view.area, 40 * size),
  )
  if (!label) return []
  const { min } = label.area
  return [{ kind: 'text', at: [min[0], min[1] + TEXT_DESCENT * size], height: size, anchor: 'start', text }]
}

/** Lengths of its arrows that the grain may take, heads included, in text heights; the best first. */
const GRAIN_SHAFTS = [3.2, 1.6] as const

/** A double arrow along the grain, on the panel, where there is room near its middle; nothing where there is none. */
export function drawGrain(view: FaceView, size: number, taken: readonly Obstacle[]): Drawn[] {
  if (view.panel.stock.grain === 'none') return []
  const word = textWidth('grain', size)
  const [first, ...others] = spread(view.area)
  if (!first) return []
  const [label] = placeLabels(
    [
      {
        key: 'grain',
        forms: GRAIN_SHAFTS.map((long) => ({ width: word + 2 * (long + 0.5) * size, height: LINE_HEIGHT * size })),
        targets: [{ at: first, radius: 0 }, ...others.map((at) => ({ at, radius: 0 }))],
        sides: ['above'],
        gap: 1.2 * size,
        reach: 0,
      },
    ],
    taken,
    view.area,
  )
  if (!label) return []
  const { min, max } = label.area
  const shaft = (GRAIN_SHAFTS[label.form] ?? 0) * size
  const base = min[1] + TEXT_DESCENT * size
  const y = base + 0.32 * size
  const head = (tip: number, way: 1 | -1): ClosedPath =>
    triangle([
      [tip, y],
      [tip - way * size, y + 0.28 * size],
      [tip - way * size, y - 0.28 * size],
    ])
  const entities: Entity[] = [
    { kind: 'text', at: [(min[0] + max[0]) / 2, base], height: size, anchor: 'middle', text: 'grain' },
    { kind: 'line', pen: 'thin', from: [min[0] + size, y], to: [min[0] + shaft, y] },
    { kind: 'line', pen: 'thin', from: [max[0] - shaft, y], to: [max[0] - size, y] },
    head(min[0], -1),
    head(max[0], 1),
  ]
  return entities.map((entity) => ({ work: NOTE, entity }))
}

/** Points spread over an area, those nearest its middle first. */
function spread(area: Area): Point[] {
  const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82]
  const at = (axis: 0 | 1, share: number): number => area.min[axis] + (area.max[axis] - area.min[axis]) * share
  return shares.flatMap((sy) => shares.map((sx): Point => [at(0, sx), at(1, sy)]))
}
