import type { ICircleEntity, ILineEntity, ILwpolylineEntity } from 'dxf-parser'
import { type INode, parseSync } from 'svgson'
import { entitiesOf, readDxf } from '../writers/read-dxf.ts'
import type { Found, FoundCircle, FoundPath, Point } from './agreement.ts'

const HOLE = /^(BORE|COUNTERSINK)-/
const GROOVE = /^(GROOVE|REBATE)-/

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
