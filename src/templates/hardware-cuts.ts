import {
  boundsOf,
  type Curve,
  curvesOf,
  lengthOf,
  mirroredPath,
  NOISE_MM,
  pointAlong,
  same,
} from '../geometry/index.ts'
import type { Cutout, Groove, Panel } from '../panel/index.ts'
import { seenPoint } from './hardware-holes.ts'
import type { Pattern, PatternCut } from './hardware-types.ts'
import type { FacePoint, Rect } from './types.ts'

/** So much of each straight run beside a corner is shown where a cutout or groove does not fit on a sheet, mm. */
export const RUN_MM = 50

/** Whether a sheet has room for a piece that shows so much. */
export type FitsOn = (bounds: Rect) => boolean

/** Patterns of the grooves and cutouts of a face: each whole where it fits on a sheet, else its ends or corners. */
export function cutPatterns(panel: Panel, face: 'A' | 'B', fits: FitsOn): Pattern[] {
  const grooves = panel.grooves.filter((groove) => groove.face === face)
  const cutouts = panel.cutouts.filter((cutout) => cutout.face === face)
  return [
    ...grooves.flatMap((groove) => groovePatterns(panel, face, groove, fits)),
    ...cutouts.flatMap((cutout) => cutoutPatterns(panel, face, cutout, fits)),
  ]
}

function groovePatterns(panel: Panel, face: 'A' | 'B', groove: Groove, fits: FitsOn): Pattern[] {
  const [a, b] = [seenPoint(panel, face, groove.min), seenPoint(panel, face, groove.max)]
  const min: FacePoint = [Math.min(a[0], b[0]), a[1]]
  const max: FacePoint = [Math.max(a[0], b[0]), b[1]]
  const along = max[0] - min[0] >= max[1] - min[1] ? 0 : 1
  const rim = grooveRim(groove.roundEnds, min, max, along, along === 0 ? panel.length : panel.width)
  const width = along === 0 ? max[1] - min[1] : max[0] - min[0]
  const shared = { id: groove.id, kind: 'groove', depth: groove.depth, width } as const
  const patternOf = (curves: readonly Curve[], whole: boolean, reference: FacePoint): Pattern => ({
    name: groove.purpose,
    holes: [],
    cuts: [{ ...shared, whole, curves }],
    reference,
  })
  const middle: FacePoint = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
  if (fits({ min, max })) return [patternOf(rim, true, middle)]
  return [min, max].flatMap((end, k): Pattern[] => {
    const within = (at: FacePoint): number => Math.abs(at[along] - end[along])
    // Round ends count from where they are widest; more of the long sides than that is cut off.
    const reach = RUN_MM + (groove.roundEnds ? width / 2 : 0)
    const curves = rim.flatMap((curve): Curve[] => shortened(curve, along, end[along], k === 0 ? 1 : -1, reach))
    const reference: FacePoint = along === 0 ? [end[0], middle[1]] : [middle[0], end[1]]
    return curves.some(({ from }) => within(from) <= reach + NOISE_MM) ? [patternOf(curves, false, reference)] : []
  })
}

/** What of a side of a groove lies no further than `reach` from its end at `end`, the groove running on to `way`. */
function shortened(curve: Curve, along: 0 | 1, end: number, way: 1 | -1, reach: number): Curve[] {
  const off = (at: FacePoint): number => (at[along] - end) * way
  if (curve.bulge !== 0) return off(curve.from) <= reach && off(curve.to) <= reach ? [curve] : []
  const cut = (at: FacePoint): FacePoint => {
    if (off(at) <= reach) return at
    return along === 0 ? [end + way * reach, at[1]] : [at[0], end + way * reach]
  }
  if (off(curve.from) > reach && off(curve.to) > reach) return []
  return [{ from: cut(curve.from), to: cut(curve.to), bulge: 0 }]
}

/** Counter-clockwise; an end that stops inside the panel takes the round of the cutter where the groove has such ends. */
function grooveRim(roundEnds: boolean, min: FacePoint, max: FacePoint, along: 0 | 1, size: number): Curve[] {
  const across = along === 0 ? 1 : 0
  const radius = (max[across] - min[across]) / 2
  const stops = (at: number): boolean => roundEnds && at > 0 && at < size && !same(at, 0) && !same(at, size)
  const [first, last] = [stops(min[along]), stops(max[along])]
  const start = min[along] + (first ? radius : 0)
  const end = max[along] - (last ? radius : 0)
  const point = (a: number, c: number): FacePoint => (along === 0 ? [a, c] : [c, a])
  const [low, high] = [min[across], max[across]]
  // Seen along the groove its far side lies to the left when it runs along x, to the right when along y.
  const bulge = along === 0 ? 1 : -1
  const rim: Curve[] = [
    { from: point(start, low), to: point(end, low), bulge: 0 },
    { from: point(end, low), to: point(end, high), bulge: last ? bulge : 0 },
    { from: point(end, high), to: point(start, high), bulge: 0 },
    { from: point(start, high), to: point(start, low), bulge: first ? bulge : 0 },
  ]
  return rim.filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) > NOISE_MM)
}

function cutoutPatterns(panel: Panel, face: 'A' | 'B', cutout: Cutout, fits: FitsOn): Pattern[] {
  const path = face === 'A' ? cutout.path : mirroredPath(cutout.path, panel.length)
  const shared = { id: cutout.id, kind: 'cutout', depth: cutout.through ? undefined : cutout.depth } as const
  const patternOf = (curves: readonly Curve[], whole: boolean, reference: FacePoint): Pattern => ({
    name: cutout.purpose,
    holes: [],
    cuts: [{ ...shared, whole, curves }],
    reference,
  })
  const bounds = boundsOf(path)
  if (fits(bounds)) return [patternOf(curvesOf(path), true, middleOf(bounds))]
  return chainsOf(curvesOf(path), fits).map((chain) => patternOf(chain, false, cornerOf(chain)))
}

/** A closed contour in stretches that each fit on a sheet: long straight runs are left open in their middle. */
function chainsOf(curves: readonly Curve[], fits: FitsOn): Curve[][] {
  const pieces = curves.flatMap((curve) => parted(curve, fits))
  // It begins behind a gap, if there is one.
  const gap = pieces.indexOf('gap')
  const walked = gap < 0 ? pieces : [...pieces.slice(gap + 1), ...pieces.slice(0, gap + 1)]
  const chains: Curve[][] = []
  let chain: Curve[] = []
  const end = (): void => {
    if (chain.length > 0) chains.push(chain)
    chain = []
  }
  for (const piece of walked) {
    if (piece === 'gap') end()
    else {
      if (chain.length > 0 && !fits(boundsOfCurves([...chain, piece]))) end()
      chain.push(piece)
    }
  }
  end()
  return chains
}

/** A long straight run as its two ends; an arc that is too large for a sheet in equal parts. */
function parted(curve: Curve, fits: FitsOn): (Curve | 'gap')[] {
  const long = lengthOf(curve)
  if (curve.bulge === 0) {
    if (long <= 2.5 * RUN_MM) return [curve]
    const [near, far] = [pointAlong(curve, RUN_MM / long), pointAlong(curve, 1 - RUN_MM / long)]
    return [{ from: curve.from, to: near, bulge: 0 }, 'gap', { from: far, to: curve.to, bulge: 0 }]
  }
  if (fits(boundsOfCurves([curve]))) return [curve]
  const count = Math.ceil(long / RUN_MM)
  const bulge = Math.tan(Math.atan(curve.bulge) / count)
  const at = (k: number): FacePoint => (k === 0 ? curve.from : k === count ? curve.to : pointAlong(curve, k / count))
  return Array.from({ length: count }, (_, k) => ({ from: at(k), to: at(k + 1), bulge }))
}

/** Where the straight runs at both ends of a corner would meet, so that a person measures to its sides; else its middle. */
function cornerOf(chain: readonly Curve[]): FacePoint {
  const [first, last] = [chain[0], chain.at(-1)]
  const level = [first, last].find((curve) => curve?.bulge === 0 && same(curve.from[1], curve.to[1]))
  const upright = [first, last].find((curve) => curve?.bulge === 0 && same(curve.from[0], curve.to[0]))
  if (level !== undefined && upright !== undefined) return [upright.from[0], level.from[1]]
  return middleOf(boundsOfCurves(chain))
}

/** The rectangle around curves, their arcs included. */
export function boundsOfCurves(curves: readonly Curve[]): Rect {
  // An open chain, closed by a line between its ends, which reaches no further than they do.
  const [first] = curves
  if (first === undefined) throw new Error('no curve to put a rectangle around')
  const each = curves.map(({ from, to, bulge }) =>
    boundsOf([
      { at: from, bulge },
      { at: to, bulge: 0 },
    ]),
  )
  return {
    min: [Math.min(...each.map(({ min }) => min[0])), Math.min(...each.map(({ min }) => min[1]))],
    max: [Math.max(...each.map(({ max }) => max[0])), Math.max(...each.map(({ max }) => max[1]))],
  }
}

/** All that a rim and its like take up. */
export const boundsOfCut = ({ curves }: PatternCut): Rect => boundsOfCurves(curves)

const middleOf = ({ min, max }: Rect): FacePoint => [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2]
