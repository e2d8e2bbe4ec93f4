import { type PageOptions, type Paper, type Room, roomsOf, type Size } from './paper.ts'
import { AXES, boxOf, contains, extent, hull } from './rects.ts'
import type { FacePoint, Rect, Round } from './types.ts'

/** Beyond each edge of a face, mm. */
export interface Surround {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

/** A face as far as choosing its pages goes. Face frame, mm. */
export interface Face extends Size {
  /** Shown beyond each edge at most: the paper that is folded over it. */
  readonly surround: Surround
  /** Each must lie whole on a page: bores with the room that they need; also on a flap beyond the edge. */
  readonly things: readonly Round[]
}

/** The window of a page, and how its sheet is held. */
export interface Window extends Rect {
  readonly turned: boolean
}

/** What the search for the fewest pages is about, in rectangles. */
export interface Field {
  readonly face: Rect
  /** The face and what is shown round it: windows lie in it. */
  readonly whole: Rect
  /** A window that reaches to here shows the fold line of the edge. */
  readonly fold: Rect
  /** Largest windows; none takes up less than another both ways. */
  readonly rooms: readonly Room[]
  readonly things: readonly Rect[]
  readonly overlap: number
  /** Least length of a seam along each axis. */
  readonly seam: FacePoint
  /** Of each edge so much must be seen beside a corner. */
  readonly sight: FacePoint
}

/** Beyond the fold line a window shows so much of the flap at least, mm, where the flap has as much. */
const FOLD = 8
/** Two marks this far apart turn a sheet true: a seam is that long, mm, or as long as the panel is wide. */
const SEAM = 80
/** A corner is laid on with this much of both edges in sight, mm. */
const SIGHT = 40

/** Throws RangeError as `roomsOf` does. */
export function fieldOf(face: Face, paper: Paper, options: PageOptions): Field {
  const { width, height, surround } = face
  const onFace: Rect = { min: [0, 0], max: [width, height] }
  const round: Rect = { min: [-surround.x0, -surround.y0], max: [width + surround.x1, height + surround.y1] }
  const sheets = roomsOf(paper, options)
  const things = face.things.flatMap((thing) => shownIn(thing, sheets)).map(boxOf)
  const whole = things.reduce(hull, round)
  const rooms = sheets.map(({ size, turned }): Room => {
    const most = (axis: 0 | 1): number => Math.min(size[axis], extent(whole, axis))
    return { size: [most(0), most(1)], turned }
  })
  const least = (axis: 0 | 1): number => Math.min(...sheets.map(({ size }) => size[axis])) / 2
  const long = (axis: 0 | 1, most: number): number => Math.min(most, onFace.max[axis], least(axis))
  return {
    face: onFace,
    whole,
    fold: {
      min: [-Math.min(surround.x0, FOLD), -Math.min(surround.y0, FOLD)],
      max: [width + Math.min(surround.x1, FOLD), height + Math.min(surround.y1, FOLD)],
    },
    rooms: undominated(rooms),
    things: outermost(things),
    overlap: options.overlap,
    seam: [long(0, SEAM), long(1, SEAM)],
    sight: [long(0, SIGHT), long(1, SIGHT)],
  }
}

/** How far apart points of a rim that no sheet can hold lie at most, mm. */
const RIM_STEP = 10

/** The thing; one that is larger than any sheet is shown in pieces: points all along its rim. */
function shownIn(thing: Round, rooms: readonly Room[]): Round[] {
  if (rooms.some(({ size }) => 2 * thing.radius <= Math.min(...size))) return [thing]
  const count = Math.ceil((2 * Math.PI * thing.radius) / RIM_STEP)
  return Array.from({ length: count }, (_, k) => {
    const turn = (2 * Math.PI * k) / count
    const at: FacePoint = [thing.at[0] + thing.radius * Math.cos(turn), thing.at[1] + thing.radius * Math.sin(turn)]
    return { at, radius: 0 }
  })
}

function undominated([upright, lying]: readonly Room[]): Room[] {
  if (upright === undefined || lying === undefined) throw new Error('a sheet is held in two ways')
  const within = (a: Room, b: Room): boolean => AXES.every((axis) => a.size[axis] <= b.size[axis])
  if (within(lying, upright)) return [upright]
  return within(upright, lying) ? [lying] : [upright, lying]
}

/** Without those that lie inside another: they are whole wherever that one is. */
function outermost(things: readonly Rect[]): Rect[] {
  return things.filter(
    (thing, k) =>
      !things.some((around, n) => n !== k && contains(around, thing) && (n < k || !contains(thing, around))),
  )
}

/** The window of a room whose lower left corner lies at a point, or as near to that as the field allows. */
export function windowAt({ whole }: Field, { size, turned }: Room, [x, y]: FacePoint): Window {
  const left = Math.max(whole.min[0], Math.min(x, whole.max[0] - size[0]))
  const low = Math.max(whole.min[1], Math.min(y, whole.max[1] - size[1]))
  return { min: [left, low], max: [left + size[0], low + size[1]], turned }
}

/** The window, moved so that its lower left corner lies at a point. */
export const movedTo = ({ min, max, turned }: Window, [x, y]: FacePoint): Window => ({
  min: [x, y],
  max: [x + max[0] - min[0], y + max[1] - min[1]],
  turned,
})
