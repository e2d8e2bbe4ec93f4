import {
  apart,
  areaOf,
  boundsOf,
  type ClosedPath,
  type Curve,
  canonical,
  crossingOf,
  middleOf,
  movedPath,
} from '../../geometry/index.ts'
import { type Refusal, readSvg, type SvgUnit } from './document.ts'
import { after } from './matrix.ts'
import { curvesFrom } from './to-curves.ts'

/** Ends nearer than this are one point, mm: what programs leave by rounding. */
const CLOSED_MM = 0.01
/** Pieces shorter than this are no piece, mm. */
const LEAST_PIECE_MM = 0.002
/** Less than this is no area, mm². */
const LEAST_AREA_MM2 = 1
/** Lines and arcs of one contour, at most. */
const MOST_PIECES = 1000
/** Beyond this a unit was mistaken, mm. */
const LARGEST_MM = 10_000

/** A contour that can be cut, or why there is none. */
export type Contour = { readonly path: ClosedPath } | Refusal

/**
 * The one contour that an SVG drawing holds, in mm and `scale` times as large, its box's middle at (0, 0), y up,
 * counter-clockwise: y of SVG runs down and is turned over here. Curves become arcs within 0.01 mm. A reason where it
 * cannot be cut: it does not close, crosses itself, has no area, or there are several. Never throws.
 */
export function contourOf(
  text: string,
  options: { readonly unit: SvgUnit | undefined; readonly scale: number },
): Contour {
  const drawn = readSvg(text, options.unit)
  if ('reason' in drawn) return drawn
  const { contours, mmPerUnit } = drawn
  const [contour, ...more] = contours
  if (contour === undefined) return { reason: 'nothing is drawn', expected: 'one closed contour' }
  if (more.length > 0) {
    return { reason: `${contours.length} contours are drawn`, expected: 'one contour; give each an opening of its own' }
  }
  const size = mmPerUnit * options.scale
  const flip = { a: size, b: 0, c: 0, d: -size, e: 0, f: 0 }
  const curves = curvesFrom(contour.subpath, after(flip, contour.matrix))
  return closed(curves, contour.subpath.closed)
}

function closed(curves: readonly Curve[], byZ: boolean): { readonly path: ClosedPath } | Refusal {
  const [first] = curves
  const last = curves.at(-1)
  if (first === undefined || last === undefined)
    return { reason: 'the contour is a point', expected: 'a contour with an area' }
  if (curves.some(({ from, bulge }) => ![...from, bulge].every(Number.isFinite))) {
    return { reason: 'the contour has a point that is no number', expected: 'a contour of ordinary numbers' }
  }
  const open = apart(first.from, last.to)
  if (!byZ && open > CLOSED_MM) {
    return {
      reason: `the contour does not close: ${shown(open)} mm lie between its ends`,
      expected: 'a closed contour; end it with Z',
    }
  }
  const whole = open > CLOSED_MM ? [...curves, { from: last.to, to: first.from, bulge: 0 }] : curves
  const path = whole
    .filter(({ from, to }) => apart(from, to) > LEAST_PIECE_MM)
    .map(({ from, bulge }) => ({ at: from, bulge }))
  if (path.length > MOST_PIECES) {
    return {
      reason: `the contour has ${path.length} lines and arcs`,
      expected: `at most ${MOST_PIECES}; draw it with fewer points`,
    }
  }
  return judged(path)
}

function judged(path: ClosedPath): { readonly path: ClosedPath } | Refusal {
  const noArea = {
    reason: 'the contour has no area',
    expected: 'a contour that takes in at least 1 mm²; is the unit right?',
  }
  if (path.length < 2) return noArea
  const { min, max } = boundsOf(path)
  const [width, height] = [max[0] - min[0], max[1] - min[1]]
  if (Math.max(width, height) > LARGEST_MM) {
    return {
      reason: `the contour is ${shown(width)} × ${shown(height)} mm`,
      expected: 'at most 10 m; is the unit right?',
    }
  }
  const crossing = crossingOf(path)
  if (crossing !== undefined) {
    const [x, y] = [crossing[0] - min[0], max[1] - crossing[1]]
    return {
      reason: `the contour crosses or touches itself ${shown(x)} mm from its left and ${shown(y)} mm from its upper end`,
      expected: 'a contour that goes round once',
    }
  }
  if (Math.abs(areaOf(path)) < LEAST_AREA_MM2) return noArea
  const [x, y] = middleOf(path)
  return { path: canonical(movedPath(path, [-x, -y])) }
}

const shown = (mm: number): string => String(Math.round(mm * 100) / 100)
