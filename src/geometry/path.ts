import makerjs from 'makerjs'
import { NOISE_MM, same } from './tolerance.ts'

/** A point or a direction in a plane, mm; x right, y up. */
export type Vec2 = readonly [x: number, y: number]

/**
 * A corner of a closed path, with the bulge of the segment that leaves it: tan(arc angle / 4), positive to the left,
 * 0 for a straight line.
 */
export interface PathVertex {
  readonly at: Vec2
  readonly bulge: number
}

/** Which ends of a groove take the round of the cutter; the start is the end with the smaller coordinate. */
export interface RoundEnds {
  readonly start: boolean
  readonly end: boolean
}

/** A straight piece or an arc between two points, as `closedPathsOf` walks it. */
interface Piece {
  readonly from: Vec2
  readonly to: Vec2
  readonly bulge: number
}

/** The outline of a panel, lower left corner at (0, 0); mm. Throws where a size is not a positive length. */
export function outlineModel(length: number, width: number): makerjs.IModel {
  if (!(length > NOISE_MM && width > NOISE_MM)) throw new RangeError(`no outline: ${length} × ${width}`)
  return new makerjs.models.Rectangle(length, width)
}

/**
 * The outline of a groove that fills the box from `min` to `max` (mm) and runs along x or y. A round end is a half
 * circle as wide as the groove, inside the box; the other end is square. Throws where the box is empty or too short
 * for its round ends.
 */
export function grooveModel(
  min: Vec2,
  max: Vec2,
  options: { readonly along: 'x' | 'y'; readonly round: RoundEnds },
): makerjs.IModel {
  const { along, round } = options
  const long = along === 'x' ? max[0] - min[0] : max[1] - min[1]
  const wide = along === 'x' ? max[1] - min[1] : max[0] - min[0]
  const radius = wide / 2
  const taken = (round.start ? radius : 0) + (round.end ? radius : 0)
  if (!(long > NOISE_MM && wide > NOISE_MM) || long < taken - NOISE_MM) {
    throw new RangeError(`no groove along ${along} in a box of ${long} × ${wide} with ${JSON.stringify(round)}`)
  }
  const start = (along === 'x' ? min[0] : min[1]) + (round.start ? radius : 0)
  const end = (along === 'x' ? max[0] : max[1]) - (round.end ? radius : 0)
  return along === 'x'
    ? slotAlongX(start, end, [min[1], max[1]], round)
    : slotAlongY(start, end, [min[0], max[0]], round)
}

function slotAlongX(start: number, end: number, [low, high]: Vec2, round: RoundEnds): makerjs.IModel {
  const middle = (low + high) / 2
  const radius = (high - low) / 2
  const paths: makerjs.IPathMap = {}
  if (!same(start, end)) {
    paths.low = new makerjs.paths.Line([start, low], [end, low])
    paths.high = new makerjs.paths.Line([end, high], [start, high])
  }
  paths.end = round.end
    ? new makerjs.paths.Arc([end, middle], radius, 270, 90)
    : new makerjs.paths.Line([end, low], [end, high])
  paths.start = round.start
    ? new makerjs.paths.Arc([start, middle], radius, 90, 270)
    : new makerjs.paths.Line([start, high], [start, low])
  return { paths }
}

function slotAlongY(start: number, end: number, [left, right]: Vec2, round: RoundEnds): makerjs.IModel {
  const middle = (left + right) / 2
  const radius = (right - left) / 2
  const paths: makerjs.IPathMap = {}
  if (!same(start, end)) {
    paths.right = new makerjs.paths.Line([right, start], [right, end])
    paths.left = new makerjs.paths.Line([left, end], [left, start])
  }
  paths.end = round.end
    ? new makerjs.paths.Arc([middle, end], radius, 0, 180)
    : new makerjs.paths.Line([right, end], [left, end])
  paths.start = round.start
    ? new makerjs.paths.Arc([middle, start], radius, 180, 360)
    : new makerjs.paths.Line([left, start], [right, start])
  return { paths }
}

/**
 * The closed contours of a model: counter-clockwise, each beginning at its lowest, then leftmost corner, in the order
 * of those corners. Where two pieces meet there is one vertex, with its float noise taken off. Throws where the
 * pieces do not close within float noise.
 */
export function closedPathsOf(model: makerjs.IModel): PathVertex[][] {
  const paths: PathVertex[][] = []
  const found: makerjs.IChainCallback = (chains, loose) => {
    const stray = loose[0]
    if (stray) throw new Error(`a path stands alone: ${stray.routeKey}`)
    for (const chain of chains) paths.push(canonical(verticesOf(chain)))
  }
  makerjs.model.findChains(model, found, { pointMatchingDistance: NOISE_MM })
  return paths.sort((a, b) => compareStarts(a[0], b[0]) || areaOf(a) - areaOf(b))
}

/** Area that a closed path takes in, arcs included, mm²; positive when it runs counter-clockwise. */
export function areaOf(vertices: readonly PathVertex[]): number {
  let twice = 0
  vertices.forEach((vertex, k) => {
    const next = vertices[(k + 1) % vertices.length] ?? vertex
    twice += vertex.at[0] * next.at[1] - next.at[0] * vertex.at[1]
    if (vertex.bulge !== 0) {
      // The piece between chord and arc: r² (angle − sin angle) / 2, signed as the angle is.
      const chord = Math.hypot(next.at[0] - vertex.at[0], next.at[1] - vertex.at[1])
      const angle = 4 * Math.atan(vertex.bulge)
      const radius = chord / (2 * Math.sin(Math.abs(angle) / 2))
      twice += radius * radius * (angle - Math.sin(angle))
    }
  })
  return twice / 2
}

function verticesOf(chain: makerjs.IChain): PathVertex[] {
  const first = chain.links[0]
  if (chain.links.length === 1 && first && isCircle(first.walkedPath.pathContext)) {
    return halfCircles(first.walkedPath.pathContext, first.walkedPath.offset)
  }
  const pieces = chain.links.map(pieceOf)
  pieces.forEach((piece, k) => {
    const next = pieces[(k + 1) % pieces.length] ?? piece
    if (!chain.endless || !meets(piece.to, next.from)) {
      throw new Error(`a contour does not close: [${piece.to}] and [${next.from}] should be one point`)
    }
  })
  return pieces.map(({ from, bulge }) => ({ at: from, bulge }))
}

/** A circle has no corner to begin at: its lowest and its highest point, a half circle from each. */
function halfCircles(circle: makerjs.IPathCircle, offset: makerjs.IPoint): PathVertex[] {
  const x = (circle.origin[0] ?? 0) + (offset[0] ?? 0)
  const y = (circle.origin[1] ?? 0) + (offset[1] ?? 0)
  return [
    { at: [x, y - circle.radius], bulge: 1 },
    { at: [x, y + circle.radius], bulge: 1 },
  ]
}

function pieceOf(link: makerjs.IChainLink): Piece {
  const path = link.walkedPath.pathContext
  const start = point(link.endPoints[0])
  const end = point(link.endPoints[1])
  // makerjs arcs always run counter-clockwise from their start angle; only the walk may be reversed.
  const bulge = isArc(path) ? Math.tan(((makerjs.angle.ofArcSpan(path) / 4) * Math.PI) / 180) : 0
  if (bulge === 0 && !makerjs.isPathLine(path)) throw new Error(`neither a line nor an arc: ${path.type}`)
  return link.reversed ? { from: end, to: start, bulge: bulge === 0 ? 0 : -bulge } : { from: start, to: end, bulge }
}

const isCircle = (path: makerjs.IPath): path is makerjs.IPathCircle => makerjs.isPathCircle(path)
const isArc = (path: makerjs.IPath): path is makerjs.IPathArc => makerjs.isPathArc(path)

function point(at: makerjs.IPoint | undefined): Vec2 {
  const x = at?.[0]
  const y = at?.[1]
  if (x === undefined || y === undefined) throw new Error(`not a point: ${at}`)
  return [x, y]
}

function meets(a: Vec2, b: Vec2): boolean {
  return same(a[0], b[0]) && same(a[1], b[1])
}

/** Counter-clockwise, noise off, from the lowest then leftmost vertex. */
export function canonical(walked: readonly PathVertex[]): PathVertex[] {
  const turned = areaOf(walked) < 0 ? reversed(walked) : walked
  const vertices = turned.map(({ at, bulge }) => ({ at: [snap(at[0]), snap(at[1])] as const, bulge: snapBulge(bulge) }))
  let start = 0
  vertices.forEach((vertex, k) => {
    if (compareStarts(vertex, vertices[start]) < 0) start = k
  })
  return [...vertices.slice(start), ...vertices.slice(0, start)]
}

/** The same contour walked the other way: each bulge changes sign and belongs to the other end of its segment. */
export function reversed(vertices: readonly PathVertex[]): PathVertex[] {
  const count = vertices.length
  return vertices.map((_, k) => {
    const here = vertices[(count - k) % count]
    const before = vertices[(count - k - 1) % count]
    if (!here || !before) throw new Error(`no vertex ${k} of ${count}`)
    return { at: here.at, bulge: before.bulge === 0 ? 0 : -before.bulge }
  })
}

function compareStarts(a: PathVertex | undefined, b: PathVertex | undefined): number {
  if (!a || !b) throw new Error('a contour without vertices')
  return same(a.at[1], b.at[1]) ? (same(a.at[0], b.at[0]) ? 0 : a.at[0] - b.at[0]) : a.at[1] - b.at[1]
}

const STEPS_PER_MM = Math.round(1 / NOISE_MM)

/** Takes off noise such as 1e-15 from a sine, never more than half of `NOISE_MM`; no `-0`. */
function snap(value: number): number {
  const snapped = Math.round(value * STEPS_PER_MM) / STEPS_PER_MM
  return snapped === 0 ? 0 : snapped
}

/** A half circle is exactly 1, whatever the tangent made of it. */
function snapBulge(bulge: number): number {
  return same(Math.abs(bulge), 1) ? Math.sign(bulge) : bulge
}
