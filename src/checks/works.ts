import {
  add,
  type Box,
  boundsOf,
  boundsOfSolid,
  type ConvexPrism,
  type Cylinder,
  curvesOf,
  cylinder,
  discAcross,
  distanceToContour,
  frustum,
  gapBetweenPrisms,
  gapBetweenSolids,
  gapToPrism,
  holdsPoint,
  IDENTITY,
  NOISE_MM,
  type Prism,
  type Solid,
  scale,
  type Vec2,
  type Vec3,
} from '../geometry/index.ts'
import type { Bore, Cutout, Groove, Panel } from '../panel/index.ts'

/** A drilling, groove or cutout of a panel. */
export type Work =
  | { readonly kind: 'bore'; readonly bore: Bore }
  | { readonly kind: 'groove'; readonly groove: Groove }
  | { readonly kind: 'cutout'; readonly cutout: Cutout }

/** Work with the wood that it takes away: convex solids, or one prism. Panel frame, mm. */
export interface SolidWork {
  readonly work: Work
  readonly solids: readonly Solid[]
  readonly prism?: Prism
  readonly box: Box
}

/** All work of a panel as solids: its bores, grooves and cutouts, each in its own order. */
export function worksOf(panel: Panel): SolidWork[] {
  return [
    ...panel.bores.map(boreWork),
    ...panel.grooves.map((groove) => grooveWork(panel, groove)),
    ...panel.cutouts.map((cutout) => cutoutWork(panel, cutout)),
  ]
}

/** A bore as what it takes away. */
export function boreWork(bore: Bore): SolidWork {
  const solids = solidsOf(bore)
  return { work: { kind: 'bore', bore }, solids, box: solids.map(boundsOfSolid).reduce(aroundBoth) }
}

function grooveWork(panel: Panel, groove: Groove): SolidWork {
  const prism = groovePrism(panel, groove)
  const solid: ConvexPrism = { kind: 'prism', pose: IDENTITY, pieces: curvesOf(prism.path), ...heights(prism) }
  return { work: { kind: 'groove', groove }, solids: [solid], prism, box: boxOfPrism(prism) }
}

/** A cutout as what it takes away. */
export function cutoutWork(panel: Panel, cutout: Cutout): SolidWork {
  const prism = prismOf(panel, cutout)
  return { work: { kind: 'cutout', cutout }, solids: [], prism, box: boxOfPrism(prism) }
}

const heights = ({ low, high }: Prism) => ({ low, high })

function boxOfPrism({ path, low, high }: Prism): Box {
  const { min, max } = boundsOf(path)
  return { min: [min[0], min[1], low], max: [max[0], max[1], high] }
}

const aroundBoth = (a: Box, b: Box): Box => {
  const each = (of: typeof Math.min, p: Vec3, q: Vec3): Vec3 => [of(p[0], q[0]), of(p[1], q[1]), of(p[2], q[2])]
  return { min: each(Math.min, a.min, b.min), max: each(Math.max, a.max, b.max) }
}

/** The solids that a bore takes away: its own, and the widening of its sink; the point of the bit is left out. */
export function solidsOf(bore: Bore): Solid[] {
  const { at, axis, depth, diameter, sink } = bore
  const own = bore.leanDeg === undefined ? cylinder(at, axis, depth, diameter / 2) : leaningBore(bore)
  if (sink === undefined) return [own]
  if (sink.shape === 'counterbore') return [own, cylinder(at, axis, sink.depth, sink.diameter / 2)]
  const down = (sink.diameter - diameter) / 2 / Math.tan((sink.angleDeg * Math.PI) / 360)
  return [own, frustum(at, axis, down, sink.diameter / 2, diameter / 2)]
}

/** A leaning bore, whose mouth in the face is an ellipse: as long as the lean makes it, and as wide as the bit. */
function leaningBore({ at, axis, depth, diameter }: Bore): Solid {
  const radius = diameter / 2
  const along = Math.hypot(axis[0], axis[1])
  const end = discAcross(add(at, scale(axis, depth)), axis, radius)
  if (along <= NOISE_MM) return cylinder(at, axis, depth, radius)
  const way: Vec3 = [axis[0] / along, axis[1] / along, 0]
  const mouth = {
    middle: at,
    u: scale(way, radius / Math.abs(axis[2])),
    v: scale([-way[1], way[0], 0], radius),
  }
  return { kind: 'taper', a: mouth, b: end }
}

/** What a cutout takes away: all that its path takes in, between two depths. */
export function prismOf(panel: Panel, { path, face, depth, through }: Cutout): Prism {
  if (through) return { path, low: -panel.thickness, high: 0 }
  return { path, ...belowFace(panel, face, depth) }
}

/** What a groove takes away, with the rounds that the cutter leaves at its stopped ends. */
export function groovePrism(panel: Panel, groove: Groove): Prism {
  return { path: groovePath(panel, groove), ...belowFace(panel, groove.face, groove.depth) }
}

const belowFace = ({ thickness }: Panel, face: 'A' | 'B', depth: number): { low: number; high: number } =>
  face === 'A' ? { low: -depth, high: 0 } : { low: -thickness, high: depth - thickness }

/** 0: it runs along x. */
export const alongOf = ({ min, max }: Groove): 0 | 1 => (max[0] - min[0] >= max[1] - min[1] ? 0 : 1)

/** Written down corner by corner: a drawing library would take longer than all the rest of a groove's checks. */
function groovePath(panel: Panel, groove: Groove): Prism['path'] {
  const { min, max, roundEnds } = groove
  const axis = alongOf(groove)
  const size = axis === 0 ? panel.length : panel.width
  const radius = (axis === 0 ? max[1] - min[1] : max[0] - min[0]) / 2
  const fits = max[axis] - min[axis] >= 2 * radius
  const [first, last] = [min[axis] > NOISE_MM, max[axis] < size - NOISE_MM].map((inside) => roundEnds && inside && fits)
  const from = min[axis] + (first ? radius : 0)
  const to = max[axis] - (last ? radius : 0)
  const [start, end] = [first ? 1 : 0, last ? 1 : 0]
  return axis === 0
    ? [
        { at: [from, min[1]], bulge: 0 },
        { at: [to, min[1]], bulge: end },
        { at: [to, max[1]], bulge: 0 },
        { at: [from, max[1]], bulge: start },
      ]
    : [
        { at: [min[0], from], bulge: start },
        { at: [max[0], from], bulge: 0 },
        { at: [max[0], to], bulge: end },
        { at: [min[0], to], bulge: 0 },
      ]
}

/**
 * Wood between two works of a panel, mm; 0 where they meet. Exact below `upTo`, for bores beside cutouts to 0.0001; where
 * the truth is `upTo` or more, the answer is no less than `upTo`.
 */
export function wallBetween(a: SolidWork, b: SolidWork, upTo: number): number {
  if (a.prism !== undefined && b.prism !== undefined) return gapBetweenPrisms(a.prism, b.prism)
  if (a.prism !== undefined) return wallToPrism(b, a, a.prism, upTo)
  if (b.prism !== undefined) return wallToPrism(a, b, b.prism, upTo)
  return least(a.solids.flatMap((one) => b.solids.map((other) => () => gapBetweenSolids(one, other))))
}

function wallToPrism({ solids }: SolidWork, beside: SolidWork, prism: Prism, upTo: number): number {
  const [convex] = beside.solids
  return least(
    solids.map((one) => () => {
      if (one.kind === 'cylinder' && isSquare(one)) return squareGap(one, prism)
      return convex === undefined ? gapToPrism(one, prism, upTo) : gapBetweenSolids(one, convex)
    }),
  )
}

/** The least of some gaps; none is worked out once one is 0. */
function least(gaps: readonly (() => number)[]): number {
  let found = Number.POSITIVE_INFINITY
  for (const gap of gaps) if (found > 0) found = Math.min(found, gap())
  return found
}

const isSquare = ({ axis }: Cylinder): boolean => Math.abs(axis[2]) > 1 - NOISE_MM * NOISE_MM

/** A bore square to the faces is a disc over a height, as the prism is a shape over one. */
function squareGap({ from, axis, length, radius }: Cylinder, { path, low, high }: Prism): number {
  const middle: Vec2 = [from[0], from[1]]
  const across = holdsPoint(path, middle) ? 0 : Math.max(0, distanceToContour(path, middle) - radius)
  const end = from[2] + axis[2] * length
  return Math.hypot(across, Math.max(0, Math.min(from[2], end) - high, low - Math.max(from[2], end)))
}
