import type { ICircleEntity, ILineEntity, ILwpolylineEntity } from 'dxf-parser'
import { type INode, parseSync } from 'svgson'
import { entitiesOf, readDxf } from '../writers/read-dxf.ts'
import type { Found, FoundCircle, FoundPath, Point } from './agreement.ts'

const HOLE = /^(BORE|COUNTERSINK)-/
const GROOVE = /^(GROOVE|REBATE)-/
const CUTOUT = /^(CUTOUT$|POCKET-)/

/** What dxf-parser finds; `mm` is how many millimetres the file's unit has. */
export function foundInDxf(text: string, mm: number): Found {
  const dxf = readDxf(text)
  const point = ({ x, y }: { x: number; y: number }): Point => [x * mm, y * mm]
  const on = <T extends { layer: string }>(all: T[], layer: RegExp): T[] => all.filter((one) => layer.test(one.layer))
  const circles = entitiesOf<ICircleEntity>(dxf, 'CIRCLE')
  const paths = entitiesOf<ILwpolylineEntity>(dxf, 'LWPOLYLINE')
  const circle = ({ center, radius }: ICircleEntity): FoundCircle => ({ at: point(center), radius: radius * mm })
  const path = ({ layer, vertices }: ILwpolylineEntity): FoundPath => ({
    layer,
    points: vertices.map(point),
    arcs: vertices.flatMap((vertex, k) => {
      const bulge = vertex.bulge ?? 0
      const next = vertices[(k + 1) % vertices.length]
      return bulge === 0 || next === undefined ? [] : [swell(point(vertex), point(next), bulge)]
    }),
  })
  return {
    holes: on(circles, HOLE).map(circle),
    grooves: on(paths, GROOVE).map(path),
    cutouts: on(paths, CUTOUT).map(path),
    outline: on(paths, /^OUTLINE$/).flatMap(({ vertices }) => vertices.map(point)),
    marks: {
      circles: on(circles, /^MARK$/).map(circle),
      paths: on(paths, /^MARK$/).map(path),
      lines: entitiesOf<ILineEntity>(dxf, 'LINE', 'MARK').map(({ vertices: [from, to] }) => {
        if (from === undefined || to === undefined) throw new Error('a line without its ends')
        return [point(from), point(to)]
      }),
    },
  }
}

/** The rise of an arc over its chord c is b·c/2, to the right of the way from one end to the other where b > 0. */
function swell(from: Point, to: Point, bulge: number): FoundPath['arcs'][number] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const at: Point = [(from[0] + to[0] + bulge * dy) / 2, (from[1] + to[1] - bulge * dx) / 2]
  return { at, radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)) }
}

const below = (node: INode): INode[] => [node, ...node.children.flatMap(below)]

/** What svgson finds on a panel of a width; y = 0 is the panel's upper edge in the file. */
export function foundInSvg(text: string, width: number): Found {
  const groups = below(parseSync(text)).filter((node) => node.attributes['data-layer'] !== undefined)
  const of = (operations: readonly string[], name: string): { node: INode; layer: string }[] =>
    groups
      .filter(({ attributes }) => operations.includes(attributes['data-operation'] ?? ''))
      .flatMap((group) => below(group).map((node) => ({ node, layer: group.attributes['data-layer'] ?? '' })))
      .filter(({ node }) => node.name === name)
  const point = (x: string | undefined, y: string | undefined): Point => [Number(x), width - Number(y)]
  const circle = ({ node: { attributes } }: { node: INode }): FoundCircle => ({
    at: point(attributes.cx, attributes.cy),
    radius: Number(attributes.r),
    ...(attributes.id !== undefined && { id: attributes.id }),
  })
  const path = ({ node: { attributes }, layer }: { node: INode; layer: string }): FoundPath => ({
    ...piecesOf(attributes.d ?? '', point),
    layer,
    ...(attributes.id !== undefined && { id: attributes.id }),
  })
  return {
    holes: of(['bore', 'countersink'], 'circle').map(circle),
    grooves: of(['groove'], 'path').map(path),
    cutouts: of(['cutout', 'pocket'], 'path').map((one) => ({
      ...path(one),
      ...allPiecesOf(one.node.attributes.d ?? '', point),
    })),
    outline: of(['outline'], 'path').flatMap((one) => path(one).points),
    marks: {
      circles: of(['mark'], 'circle').map(circle),
      paths: of(['mark'], 'path').map(path),
      lines: of(['mark'], 'line').map(({ node: { attributes } }) => [
        point(attributes.x1, attributes.y1),
        point(attributes.x2, attributes.y2),
      ]),
    },
  }
}

/** A half circle is written as two quarters; where they meet it swells furthest. */
function piecesOf(
  d: string,
  point: (x: string | undefined, y: string | undefined) => Point,
): Pick<FoundPath, 'points' | 'arcs'> {
  const points: Point[] = []
  const arcs: { at: Point; radius: number }[] = []
  const pieces = [...d.matchAll(/([MLA])([^MLAZ]*)/g)].map(([, letter, figures = '']) => {
    const words = figures.trim().split(/\s+/)
    return { letter, radius: Number(words[0]), at: point(words.at(-2), words.at(-1)) }
  })
  pieces.forEach(({ letter, radius, at }, k) => {
    if (letter === 'A' && pieces[k + 1]?.letter === 'A' && pieces[k - 1]?.letter !== 'A') arcs.push({ at, radius })
    else points.push(at)
  })
  const [first, last] = [points[0], points.at(-1)]
  // A path that ends in an arc mostly comes back to the point where it began; else a line closes it.
  const back = first !== undefined && last !== undefined && Math.hypot(first[0] - last[0], first[1] - last[1]) < 0.001
  if (pieces.at(-1)?.letter === 'A' && back) points.pop()
  return { points, arcs }
}

/** The ends of all pieces, and where each arc swells furthest; an arc of more than a quarter turn is written in pieces. */
function allPiecesOf(
  d: string,
  point: (x: string | undefined, y: string | undefined) => Point,
): Pick<FoundPath, 'points' | 'arcs'> {
  const pieces = [...d.matchAll(/([MLA])([^MLAZ]*)/g)].map(([, letter, figures = '']) => {
    const words = figures.trim().split(/\s+/)
    // y is turned up here, so that what SVG sweeps clockwise turns to the right.
    return { letter, radius: Number(words[0]), left: words[4] === '0', at: point(words.at(-2), words.at(-1)) }
  })
  const arcs = pieces.flatMap(({ letter, radius, left, at }, k) => {
    const from = pieces[k - 1]?.at
    if (letter !== 'A' || from === undefined) return []
    return [{ at: swellOf(from, at, centreOf(from, at, radius, left), radius, left), radius }]
  })
  return { points: pieces.map(({ at }) => at), arcs }
}

function centreOf(from: Point, to: Point, radius: number, left: boolean): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const chord = Math.hypot(dx, dy)
  const off = (Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4)) / chord) * (left ? 1 : -1)
  return [(from[0] + to[0]) / 2 - dy * off, (from[1] + to[1]) / 2 + dx * off]
}

/** The point half way along an arc about a centre. */
function swellOf(from: Point, to: Point, centre: Point, radius: number, left: boolean): Point {
  const angle = ([x, y]: Point): number => Math.atan2(y - centre[1], x - centre[0])
  const full = 2 * Math.PI
  const turn = left ? angle(to) - angle(from) : angle(from) - angle(to)
  const half = ((((turn % full) + full) % full) / 2) * (left ? 1 : -1)
  return [centre[0] + radius * Math.cos(angle(from) + half), centre[1] + radius * Math.sin(angle(from) + half)]
}
