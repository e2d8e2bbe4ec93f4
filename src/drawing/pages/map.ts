import type { Piece } from '../../templates/index.ts'
import { type Area, grown, LINE_HEIGHT, overlaps, union } from '../areas.ts'
import { leadingEdge } from '../frame.ts'
import { TEXT_DESCENT, textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import type { Sheet } from './sheet.ts'
import { rectangle } from './strokes.ts'
import { textAt } from './text.ts'
import { edgeLine } from './view.ts'

/** The map, mm: the most that it takes up, sizes of labels, the bar of the leading edge, room round it for heavy lines. */
const MAP = { width: 30, height: 21, textMost: 2.6, textLeast: 1.8, bar: 0.9, rim: 0.6 } as const
/** Places that a label may take in its piece, along and up, as shares of what the piece has free. */
const SHARES = [0.5, 0.25, 0.75, 0, 1] as const

/** What the map shows, mm on the face: the panel and all pieces. */
function shownBy({ view }: Sheet, pieces: readonly Piece[]): Area {
  return union([{ min: [0, 0], max: [view.width, view.height] }, ...pieces.map(({ window }) => window)])
}

const scaleOf = ({ min, max }: Area): number =>
  Math.min((MAP.width - 2 * MAP.rim) / (max[0] - min[0]), (MAP.height - 2 * MAP.rim) / (max[1] - min[1]))

/** How much room the map of a face takes up, mm. */
export function mapSize(sheet: Sheet, pieces: readonly Piece[]): Point {
  const whole = shownBy(sheet, pieces)
  const scale = scaleOf(whole)
  return [scale * (whole.max[0] - whole.min[0]) + 2 * MAP.rim, scale * (whole.max[1] - whole.min[1]) + 2 * MAP.rim]
}

/** The panel to scale, its leading edge heavy, with the pieces where they lie on it; this one in a heavy frame. */
export function mapOf(sheet: Sheet, pieces: readonly Piece[], [left, bottom]: Point): Entity[] {
  const whole = shownBy(sheet, pieces)
  const scale = scaleOf(whole)
  const on = ([x, y]: Point): Point => [
    left + MAP.rim + scale * (x - whole.min[0]),
    bottom + MAP.rim + scale * (y - whole.min[1]),
  ]
  const areaOf = ({ min, max }: Area): Area => ({ min: on(min), max: on(max) })
  const here = pieces.filter(({ label }) => label === sheet.page.label)
  const others = pieces.filter(({ label }) => label !== sheet.page.label)
  return [
    rectangle(areaOf({ min: [0, 0], max: [sheet.view.width, sheet.view.height] }), 'thin'),
    ...leadingBar(sheet, on),
    ...others.map(({ window }) => rectangle(areaOf(window), 'hair')),
    ...here.map(({ window }) => rectangle(areaOf(window), 'bold')),
    ...labelsOn(
      firstOfEach([...here, ...others].map(({ label, window }) => ({ label, area: areaOf(window) }))),
      areaOf(whole),
    ),
  ]
}

/** A heavy line along the edge that the pages name first. */
function leadingBar({ view }: Sheet, on: (at: Point) => Point): Entity[] {
  const side = leadingEdge(view.edges)
  if (side === undefined) return []
  const [from, to] = edgeLine(view, side).map(on)
  return from === undefined || to === undefined
    ? []
    : [rectangle(grown({ min: from, max: to }, MAP.bar / 2), 'hair', true)]
}

/** Of the pieces of one name, those that are cut out of one sheet, the first: it carries the label of all. */
function firstOfEach(pieces: readonly Labelled[]): Labelled[] {
  return pieces.filter(({ label }, k) => pieces.findIndex((other) => other.label === label) === k)
}

interface Labelled {
  readonly label: string
  readonly area: Area
}

/** Labels in their pieces, clear of each other where that can be; the first, that of this sheet, is bold. */
function labelsOn(pieces: readonly Labelled[], whole: Area): Entity[] {
  const taken: Area[] = []
  return pieces.flatMap(({ label, area }, index): Entity[] => {
    const bold = index === 0
    for (const height of [MAP.textMost, MAP.textLeast]) {
      const size: Point = [textWidth(label, height, bold), height * LINE_HEIGHT]
      if (size[0] > whole.max[0] - whole.min[0] + BESIDE) continue
      const within = SHARES.flatMap((up) => SHARES.map((along) => inside(spotIn(area, size, along, up), whole)))
      const spots = [...within, ...above(area, size, whole)]
      const covered = pieces.filter((_, k) => k !== index).map((other) => other.area)
      const clear = spots.filter((spot) => !taken.some((one) => overlaps(one, spot)))
      const spot = clear.find((one) => !covered.some((other) => overlaps(other, one))) ?? clear[0]
      if (spot === undefined) continue
      taken.push(grown(spot, 0.4))
      return [
        textAt([(spot.min[0] + spot.max[0]) / 2, spot.min[1] + TEXT_DESCENT * height], height, label, {
          anchor: 'middle',
          bold,
        }),
      ]
    }
    return []
  })
}

/** Places for a label above a map that is low, over the middle of its piece. */
function above(area: Area, size: Point, whole: Area): Area[] {
  const rows = Math.floor((MAP.height - (whole.max[1] - whole.min[1])) / (size[1] + OVER))
  const middle = (area.min[0] + area.max[0] - size[0]) / 2
  return Array.from({ length: Math.max(rows, 0) }, (_, row): Area => {
    const low = whole.max[1] + OVER + row * (size[1] + OVER)
    const { min } = inside(
      { min: [middle, low], max: [middle + size[0], low + size[1]] },
      { ...whole, max: [whole.max[0], low + size[1]] },
    )
    return { min: [min[0], low], max: [min[0] + size[0], low + size[1]] }
  })
}

/** Between the map and a label above it, mm. */
const OVER = 0.6

/** Left of a narrow map there is so much room for a label that is wider, mm. */
const BESIDE = 2.5

/** A spot moved so far that it lies on the map; of one that is wider than the map, the end. */
function inside({ min, max }: Area, whole: Area): Area {
  const by = (axis: 0 | 1): number =>
    Math.max(whole.min[axis] - min[axis], 0) -
    Math.max(max[axis] + Math.max(whole.min[axis] - min[axis], 0) - whole.max[axis], 0)
  const [dx, dy] = [by(0), by(1)]
  return { min: [min[0] + dx, min[1] + dy], max: [max[0] + dx, max[1] + dy] }
}

/** Where a label lies in a piece; one that is larger than the piece lies over its middle. */
function spotIn({ min, max }: Area, size: Point, along: number, up: number): Area {
  const free = (axis: 0 | 1): number => max[axis] - min[axis] - size[axis] - 0.8
  const low = (axis: 0 | 1, share: number): number => min[axis] + 0.4 + free(axis) * (free(axis) < 0 ? 0.5 : share)
  const corner: Point = [low(0, along), low(1, up)]
  return { min: corner, max: [corner[0] + size[0], corner[1] + size[1]] }
}
