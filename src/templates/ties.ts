import { NOISE_MM } from '../geometry/index.ts'
import type { Field } from './field.ts'
import { AXES, type Axis, extent, other, shared } from './rects.ts'
import type { FacePoint, Rect } from './types.ts'

/** The four corners of a face: for each axis the low or the high end. */
export const CORNERS: readonly (readonly ['min' | 'max', 'min' | 'max'])[] = [
  ['min', 'max'],
  ['max', 'max'],
  ['min', 'min'],
  ['max', 'min'],
]

/** Whether a window shows the fold line of an edge, and enough of the edge itself. */
function showsEdge({ face, fold, sight }: Field, window: Rect, axis: Axis, end: 'min' | 'max'): boolean {
  const beyond =
    end === 'min' ? window.min[axis] <= fold.min[axis] + NOISE_MM : window.max[axis] >= fold.max[axis] - NOISE_MM
  if (!beyond) return false
  const seen = (along: Axis): number =>
    Math.min(window.max[along], face.max[along]) - Math.max(window.min[along], face.min[along])
  return seen(0) >= sight[0] - NOISE_MM && seen(1) >= sight[1] - NOISE_MM
}

/** A window that can be laid on by itself: two edges that meet, with enough of each in sight. */
export function showsCorner(field: Field, window: Rect): boolean {
  return AXES.every((axis) => showsEdge(field, window, axis, 'min') || showsEdge(field, window, axis, 'max'))
}

/** What two windows share of the panel, when that is wide and long enough to join them; and the axis that it follows. */
export function seamOf(field: Field, a: Rect, b: Rect): { seam: Rect; along: Axis } | undefined {
  const common = shared(a, b)
  const seam = shared(common, field.face)
  const [wide, high] = [extent(seam, 0), extent(seam, 1)]
  const along: Axis = wide >= high ? 0 : 1
  const axes: readonly Axis[] = [along, other(along)]
  const fits = axes.find(
    (axis) =>
      extent(seam, axis) >= field.seam[axis] - NOISE_MM && extent(seam, other(axis)) >= leastWidth(field, other(axis)),
  )
  return fits === undefined ? undefined : { seam: common, along: fits }
}

/** How wide a seam must be: the overlap, or all of a panel that is narrower. */
const leastWidth = (field: Field, axis: Axis): number => Math.min(field.overlap, field.face.max[axis]) - NOISE_MM

/** Whether `seamOf` finds a seam; asked many times over. */
function areJoined({ face, seam, overlap }: Field, a: Rect, b: Rect): boolean {
  const wide = Math.min(a.max[0], b.max[0], face.max[0]) - Math.max(a.min[0], b.min[0], 0) + NOISE_MM
  const high = Math.min(a.max[1], b.max[1], face.max[1]) - Math.max(a.min[1], b.min[1], 0) + NOISE_MM
  return (
    (wide >= seam[0] && high >= Math.min(overlap, face.max[1])) ||
    (high >= seam[1] && wide >= Math.min(overlap, face.max[0]))
  )
}

/** The groups of windows that are joined by seams, one to another. */
export function groupsOf(field: Field, windows: readonly Rect[]): number[][] {
  const left = new Set(windows.keys())
  const groups: number[][] = []
  for (const start of left) {
    left.delete(start)
    const group = [start]
    for (const index of group) {
      const window = windows[index]
      for (const other of left) {
        const to = windows[other]
        if (window === undefined || to === undefined || !areJoined(field, window, to)) continue
        left.delete(other)
        group.push(other)
      }
    }
    groups.push(group)
  }
  return groups
}

/** For each window, whether it or the group that it belongs to shows two edges that are square to each other. */
export function tiedOf(field: Field, windows: readonly Rect[]): boolean[] {
  const tied = windows.map(() => false)
  for (const group of groupsOf(field, windows)) {
    const shows = (axis: Axis): boolean => group.some((index) => showsAlong(field, windows[index], axis))
    const held = shows(0) && shows(1)
    if (held) for (const index of group) tied[index] = true
  }
  return tied
}

const showsAlong = (field: Field, window: Rect | undefined, axis: Axis): boolean =>
  window !== undefined && (showsEdge(field, window, axis, 'min') || showsEdge(field, window, axis, 'max'))

/** How many edges a window shows. */
export const edgesShown = (field: Field, window: Rect): number =>
  AXES.reduce<number>(
    (sum, axis) => sum + Number(showsEdge(field, window, axis, 'min')) + Number(showsEdge(field, window, axis, 'max')),
    0,
  )

export const allTied = (field: Field, windows: readonly Rect[]): boolean => tiedOf(field, windows).every((tied) => tied)

/** Which pairs of pages are taped together: those with a seam, but for two that each lie by a corner of their own. */
export function joinsOf(
  field: Field,
  windows: readonly Rect[],
): { first: number; second: number; seam: Rect; along: Axis }[] {
  const alone = windows.map((window) => showsCorner(field, window))
  return windows.flatMap((window, first) =>
    windows.slice(first + 1).flatMap((later, k) => {
      const second = first + 1 + k
      if (alone[first] && alone[second]) return []
      const seam = seamOf(field, window, later)
      return seam === undefined ? [] : [{ first, second, ...seam }]
    }),
  )
}

/** Places of a window's lower left corner. */
export interface Range {
  readonly min: FacePoint
  readonly max: FacePoint
}

/** Where a window of a size shows a corner of the face. */
export function cornerRange(field: Field, size: FacePoint, corner: readonly ['min' | 'max', 'min' | 'max']): Range {
  const { whole, fold } = field
  const low = (axis: Axis): number => (corner[axis] === 'min' ? whole.min[axis] : fold.max[axis] - size[axis])
  const high = (axis: Axis): number => (corner[axis] === 'min' ? fold.min[axis] : whole.max[axis] - size[axis])
  return { min: [low(0), low(1)], max: [high(0), high(1)] }
}

/** Where a window of a size has a seam with another window: one that follows x, or one that follows y. */
export function seamRanges({ face, seam, overlap }: Field, size: FacePoint, to: Rect): Range[] {
  const [left, right] = [Math.max(to.min[0], 0), Math.min(to.max[0], face.max[0])]
  const [low, high] = [Math.max(to.min[1], 0), Math.min(to.max[1], face.max[1])]
  const ranges: Range[] = []
  for (const along of AXES) {
    const wide = along === 0 ? seam[0] : Math.min(overlap, face.max[0])
    const tall = along === 1 ? seam[1] : Math.min(overlap, face.max[1])
    if (Math.min(right - left, size[0]) < wide || Math.min(high - low, size[1]) < tall) continue
    ranges.push({ min: [left + wide - size[0], low + tall - size[1]], max: [right - wide, high - tall] })
  }
  return ranges
}
