import { closedPathsOf, grooveModel } from '../geometry/index.ts'
import type { Units } from '../length/index.ts'
import type { Bore, Groove } from '../panel/index.ts'
import { type Area, around } from './areas.ts'
import { cutoutObstacles, drawCutout } from './cutouts.ts'
import {
  besideEdge,
  endsInside,
  type FaceView,
  grooveArea,
  isDrawnOn,
  isHandWork,
  leavesPanel,
  mouthRadius,
} from './face.ts'
import type { Obstacle } from './labels.ts'
import type { Drawn, Work } from './layers.ts'
import { drawOutline } from './outline.ts'
import type { ClosedPath, Line, Point } from './types.ts'
import { boreTitle, edgeOf, grooveTitle, grooveWidth, sinkTitle } from './words.ts'

const MARK: Work = { kind: 'mark' }
const NOTE: Work = { kind: 'note' }

/** How far a hand mark sticks out over the panel's edge, in text heights. */
export const TICK = 0.55
/** Half of a cross, and the least and greatest length of a pocket's arrow, in text heights. */
const CROSS = 0.6
const ARROW_LEAST = 1.8
const ARROW_MOST = 2.8

/** Everything that is cut, bored or marked by hand on one face; `size` is the text height, mm. */
export function drawWork(view: FaceView, units: Units, size: number): Drawn[] {
  const { panel, face } = view
  const bores = panel.bores.filter((bore) => isDrawnOn(bore, face))
  return [
    ...drawOutline(view),
    ...bores
      .filter((bore) => !isHandWork(bore))
      .flatMap((bore) =>
        leavesPanel(panel, bore)
          ? drawStray(view, bore, units, size)
          : [...drawBore(view, bore, units), ...fineCross(view, bore, size)],
      ),
    ...panel.grooves.filter((groove) => groove.face === face).flatMap((groove) => drawGroove(view, groove, units)),
    ...panel.cutouts.filter((one) => one.face === face).flatMap((one) => drawCutout(view, one, units, size)),
    ...bores.filter(isHandWork).flatMap((bore) => drawMark(view, bore, units, size)),
  ]
}

function drawBore(view: FaceView, bore: Bore, units: Units): Drawn[] {
  const at = view.toView(bore.at)
  const depth = bore.through ? 'through' : bore.depth
  const hole: Drawn = {
    work: { kind: 'bore', diameter: bore.diameter, depth },
    entity: { kind: 'circle', at, radius: bore.diameter / 2, id: bore.id, title: boreTitle(view.panel, bore, units) },
  }
  const { sink } = bore
  if (!sink) return [hole]
  const work: Work =
    sink.shape === 'cone'
      ? { kind: 'countersink', diameter: sink.diameter, angleDeg: sink.angleDeg }
      : { kind: 'bore', diameter: sink.diameter, depth: sink.depth }
  const title = sinkTitle(view.panel, bore, sink, units)
  return [hole, { work, entity: { kind: 'circle', at, radius: sink.diameter / 2, id: `${bore.id}-sink`, title } }]
}

/** A mouth narrower than this is hard to see on its drawing, and gets a cross of these arms; in text heights. */
const FINE = 0.2
const FINE_ARM = 0.35

const isFine = (bore: Bore, size: number): boolean => mouthRadius(bore) < (FINE / 2) * size

/** Half of what is seen of a hole in a face, mm: its mouth, or its cross where that is small. */
export function seenRadius(bore: Bore, size: number): number {
  return isFine(bore, size) ? FINE_ARM * size : mouthRadius(bore)
}

/** Hair lines over a hole that is small on a large panel. */
function fineCross(view: FaceView, bore: Bore, size: number): Drawn[] {
  if (!isFine(bore, size)) return []
  return crossAt(view.toView(bore.at), FINE_ARM * size).map(
    (line): Drawn => ({ work: NOTE, entity: { ...line, pen: 'hair' } }),
  )
}

/** A bore that leaves the panel: its circles at their true size and a cross, all of it marks, so that no drill runs. */
function drawStray(view: FaceView, bore: Bore, units: Units, size: number): Drawn[] {
  const circles = drawBore(view, bore, units).map(({ entity }): Drawn => ({ work: MARK, entity }))
  return [...circles, ...crossAt(view.toView(bore.at), CROSS * size).map((entity) => ({ work: MARK, entity }))]
}

function drawGroove(view: FaceView, groove: Groove, units: Units): Drawn[] {
  const area = grooveArea(view, groove)
  const along = area.max[0] - area.min[0] >= area.max[1] - area.min[1] ? 'x' : 'y'
  const inside = endsInside(view, area, along === 'x' ? 0 : 1)
  const round = groove.roundEnds ? inside : { start: false, end: false }
  const work: Work = { kind: groove.kind, width: grooveWidth(groove), depth: groove.depth }
  const title = grooveTitle(view.panel, groove, units)
  return closedPathsOf(grooveModel(area.min, area.max, { along, round })).map((vertices) => ({
    work,
    entity: { kind: 'path', id: groove.id, title, vertices },
  }))
}

function drawMark(view: FaceView, bore: Bore, units: Units, size: number): Drawn[] {
  const title = boreTitle(view.panel, bore, units)
  return bore.leanDeg === undefined ? drawEdgeBore(view, bore, title, size) : drawPocket(view, bore, title, size)
}

/**
 * An edge bore: its centre line, which sticks out over the edge so that the two make a cross, and the hidden hole at its
 * true size, dashed.
 */
function drawEdgeBore(view: FaceView, bore: Bore, title: string, size: number): Drawn[] {
  const area = edgeBoreArea(view, bore)
  const { outer, inner } = edgeBoreLine(view, bore, size)
  const vertices = cornersOf(area).map((at) => ({ at, bulge: 0 }))
  return [
    { work: MARK, entity: { kind: 'path', id: bore.id, title, pen: 'dashed', vertices } },
    { work: MARK, entity: { kind: 'line', pen: 'thin', from: outer, to: inner } },
  ]
}

/** Outer and inner end of an edge bore's centre line. Its mouth lies inside the panel's edge where a rebate is cut there. */
export function edgeBoreLine(view: FaceView, bore: Bore, size: number): { outer: Point; inner: Point } {
  const side = view.sideOf(edgeOf(view.panel, bore)?.side ?? 'y0')
  const [x, y] = view.toView(bore.at)
  const [dx, dy] = view.turn(bore.axis)
  return {
    outer: besideEdge(view.area, side, side === 'low' || side === 'high' ? x : y, TICK * size),
    inner: [x + dx * bore.depth, y + dy * bore.depth],
  }
}

/** The hole of an edge bore as it lies in the panel. */
function edgeBoreArea(view: FaceView, bore: Bore): Area {
  const { inner } = edgeBoreLine(view, bore, 0)
  const [x, y] = view.toView(bore.at)
  const radius = bore.diameter / 2
  const flat = inner[1] === y
  return flat
    ? around([
        [x, y - radius],
        [inner[0], y + radius],
      ])
    : around([
        [x - radius, y],
        [x + radius, inner[1]],
      ])
}

function crossAt([x, y]: Point, cross: number): Line[] {
  return [
    { kind: 'line', pen: 'thin', from: [x - cross, y], to: [x + cross, y] },
    { kind: 'line', pen: 'thin', from: [x, y - cross], to: [x, y + cross] },
  ]
}

/** A leaning bore: a cross where it enters, and an arrow the way the bit leans. */
function drawPocket(view: FaceView, bore: Bore, title: string, size: number): Drawn[] {
  const [x, y] = view.toView(bore.at)
  const cross = CROSS * size
  const { tip, way } = pocketArrow(view, bore, size)
  const neck: Point = [tip[0] - way[0] * size, tip[1] - way[1] * size]
  const barb = 0.3 * size
  const head: ClosedPath = {
    kind: 'path',
    id: bore.id,
    title,
    filled: true,
    pen: 'hair',
    vertices: [
      { at: tip, bulge: 0 },
      { at: [neck[0] - way[1] * barb, neck[1] + way[0] * barb], bulge: 0 },
      { at: [neck[0] + way[1] * barb, neck[1] - way[0] * barb], bulge: 0 },
    ],
  }
  const lines: Line[] = [
    ...crossAt([x, y], cross),
    { kind: 'line', pen: 'thin', from: [x + way[0] * cross, y + way[1] * cross], to: neck },
  ]
  return [head, ...lines].map((entity) => ({ work: MARK, entity }))
}

/** Tip of a pocket's arrow, and its unit direction on the drawing. Throws where the bore does not lean. */
export function pocketArrow(view: FaceView, bore: Bore, size: number): { tip: Point; way: Point } {
  const [x, y] = view.toView(bore.at)
  const flat = view.turn(bore.axis)
  const length = Math.hypot(flat[0], flat[1])
  if (!(length > 0)) throw new Error(`${view.panel.id}, ${bore.id}: leans, but its axis is square: [${bore.axis}]`)
  const way: Point = [flat[0] / length, flat[1] / length]
  const room = Math.min(roomAhead(x, way[0], view.panel.length), roomAhead(y, way[1], view.panel.width))
  const long = Math.min(ARROW_MOST * size, Math.max(ARROW_LEAST * size, room))
  return { tip: [x + way[0] * long, y + way[1] * long], way }
}

/** How far one can go from a place on a length before leaving it; without end when standing still. */
function roomAhead(at: number, speed: number, length: number): number {
  if (speed === 0) return Number.POSITIVE_INFINITY
  return ((speed > 0 ? length : 0) - at) / speed
}

/** Counter-clockwise from the lower left. */
export function cornersOf({ min, max }: Area): Point[] {
  return [min, [max[0], min[1]], max, [min[0], max[1]]]
}

/** What no label may cover: holes with their mouths, marks, grooves, the outline. */
export function workObstacles(view: FaceView, size: number): Obstacle[] {
  const { panel, face, area } = view
  const bores = panel.bores.filter((bore) => isDrawnOn(bore, face))
  const corners = cornersOf(area)
  return [
    ...corners.map((from, k): Obstacle => ({ kind: 'line', from, to: corners[(k + 1) % 4] ?? from, open: true })),
    ...bores.flatMap((bore) => boreObstacles(view, bore, size)),
    ...panel.grooves
      .filter((groove) => groove.face === face)
      .map((groove): Obstacle => ({ kind: 'area', area: grooveArea(view, groove), open: true })),
    ...panel.cutouts.filter((one) => one.face === face).flatMap((one) => cutoutObstacles(view, one, size)),
  ]
}

function boreObstacles(view: FaceView, bore: Bore, size: number): Obstacle[] {
  const at = view.toView(bore.at)
  if (bore.leanDeg !== undefined) {
    return [
      { kind: 'disc', at, radius: CROSS * size },
      { kind: 'line', from: at, to: pocketArrow(view, bore, size).tip },
    ]
  }
  if (edgeOf(view.panel, bore)) {
    const { outer, inner } = edgeBoreLine(view, bore, size)
    const [dx, dy] = view.turn(bore.axis)
    // No leader crosses a hole in an edge, nor touches its inner end, where its own begins.
    const beyond: Point = [inner[0] + (dx * bore.diameter) / 4, inner[1] + (dy * bore.diameter) / 4]
    return [
      { kind: 'area', area: edgeBoreArea(view, bore), open: true },
      { kind: 'line', from: outer, to: beyond },
    ]
  }
  const radius = seenRadius(bore, size)
  return [{ kind: 'disc', at, radius: leavesPanel(view.panel, bore) ? Math.max(radius, CROSS * size) : radius }]
}
