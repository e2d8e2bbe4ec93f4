import { cutoutTitle, endsInside, faceView, grooveTitle, leadingEdge } from '../../drawing/index.ts'
import { boundsOf, type PathVertex, roundMm, same, type Vec2, type Vec3 } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import { type Bore, type Cutout, coreOf, type Groove, type Panel } from '../../panel/index.ts'
import { type BoreLines, isInEdge, rimOf, sideOf } from './bores.ts'
import { holeId } from './laid-index.ts'
import { closedPath } from './lines.ts'
import type { Picture } from './picture.ts'
import { seen } from './plane.ts'
import type { Face, PanelToScene, PartKind, ScenePoint } from './types.ts'

/** A panel that lies flat on the drawing, seen on one face. */
export interface Board {
  readonly panel: Panel
  readonly face: Face
  readonly frame: PanelToScene
  /** Of a pair: its corners say that they are its own. */
  readonly own: boolean
}

/** Draws a panel with all its work; what lies on the far face, or runs inside from the edges, is hidden. */
export function drawBoard(picture: Picture, board: Board, units: Units): void {
  const { panel, face, frame } = board
  picture.frames[panel.id] = frame
  drawBlank(picture, board)
  for (const groove of panel.grooves) drawGroove(picture, board, groove, units)
  for (const cutout of panel.cutouts) drawCutout(picture, board, cutout, units)
  for (const bore of [...panel.bores].sort((a, b) => Number(isHidden(a, face)) - Number(isHidden(b, face)))) {
    const lines = boreLines(board, bore)
    picture.hole(
      {
        id: holeId(panel, bore),
        panel: panel.id,
        operation: picture.operations.bore(bore),
        at: seen(frame, bore.at),
        place: asSeen(board, bore.at),
        d: lines.d,
        radius: bore.diameter / 2,
        hidden: isHidden(bore, face),
      },
      lines.reach,
    )
  }
}

const boreLines = ({ frame, face }: Board, bore: Bore): BoreLines =>
  isInEdge(bore)
    ? sideOf(frame, bore)
    : rimOf(frame, bore, seen(frame, bore.at), bore.surface !== face && bore.through ? 'out' : 'in')

/** Blind from the far face, or inside from an edge. */
const isHidden = (bore: Bore, face: Face): boolean => isInEdge(bore) || (bore.surface !== face && !bore.through)

/** A point of the panel frame as it is measured on the face: x right, y up from the lower left corner as seen. */
function asSeen({ panel, face }: Board, at: Vec3 | Vec2): Vec3 {
  return [face === 'B' ? panel.length - at[0] : at[0], at[1], 0]
}

/** The outline round the notches, lippings, the leading edge. */
function drawBlank(picture: Picture, board: Board): void {
  const { panel, frame } = board
  const corners = contourOf(panel)
  const points = corners.map(([x, y]): ScenePoint => seen(frame, [x, y, 0]))
  picture.polygon(
    { key: panel.id, kind: 'panel', filled: true, panel: panel.id, title: panel.name, at: panel.at },
    points,
  )
  picture.corners(
    corners.map(([x, y]): Vec3 => asSeen(board, [x, y])),
    ([x, y]) => seen(frame, [board.face === 'B' ? panel.length - x : x, y, 0]),
    board.own ? panel.id : undefined,
  )
  if (panel.lipping !== undefined) drawLippings(picture, board)
  const leading = leadingEdge(panel.edges)
  if (leading !== undefined) {
    const line = EDGES[leading](panel).map(([x, y]): ScenePoint => seen(frame, [x, y, 0]))
    const title = `${panel.edges[leading]} edge`
    picture.strokes({ key: `${panel.id} leading`, kind: 'edge', filled: false, panel: panel.id, title }, [line])
  }
}

/** Ends of the four edges of the finished panel. */
const EDGES: Readonly<Record<keyof Panel['edges'], (panel: Panel) => readonly [Vec2, Vec2]>> = {
  x0: ({ width }) => [
    [0, 0],
    [0, width],
  ],
  x1: ({ length, width }) => [
    [length, 0],
    [length, width],
  ],
  y0: ({ length }) => [
    [0, 0],
    [length, 0],
  ],
  y1: ({ length, width }) => [
    [0, width],
    [length, width],
  ],
}

function drawLippings(picture: Picture, { panel, frame }: Board): void {
  const { min, max } = coreOf(panel)
  const { length, width } = panel
  const strips = {
    x0: [0, 0, min[0], width],
    x1: [max[0], 0, length, width],
    y0: [0, 0, length, min[1]],
    y1: [0, max[1], length, width],
  } as const
  for (const side of ['x0', 'x1', 'y0', 'y1'] as const) {
    if (panel.lipping?.[side] === undefined) continue
    const [x0, y0, x1, y1] = strips[side]
    const corners: readonly Vec2[] = [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ]
    picture.polygon(
      {
        key: `${panel.id} lipping ${side}`,
        kind: 'lipping',
        filled: true,
        panel: panel.id,
        title: `lipping of the ${panel.edges[side]} edge`,
      },
      corners.map(([x, y]) => seen(frame, [x, y, 0])),
    )
  }
}

/** The corners of the finished panel, counter-clockwise on face A, with three in the place of each that a notch takes off. */
export function contourOf(panel: Panel): Vec2[] {
  const { length, width } = panel
  const notches = panel.cutouts.filter((cutout) => cutout.notch === true).map(({ path }) => boundsOf(path))
  const corners: readonly Vec2[] = [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ]
  return corners.flatMap(([x, y], k): Vec2[] => {
    const notch = notches.find(({ min, max }) => reaches(min[0], max[0], x) && reaches(min[1], max[1], y))
    if (notch === undefined) return [[x, y]]
    const inner: Vec2 = [x === 0 ? notch.max[0] : notch.min[0], y === 0 ? notch.max[1] : notch.min[1]]
    const beside: readonly [Vec2, Vec2] = [
      [x, inner[1]],
      [inner[0], y],
    ]
    // Walking counter-clockwise, one comes to the corners at (0, 0) and (length, width) along y, to the others along x.
    return k % 2 === 0 ? [beside[0], inner, beside[1]] : [beside[1], inner, beside[0]]
  })
}

/** True where a span begins or ends at a place, or goes over it. */
const reaches = (low: number, high: number, at: number): boolean =>
  (low < at || same(low, at)) && (high > at || same(high, at))

function drawGroove(picture: Picture, { panel, face, frame }: Board, groove: Groove, units: Units): void {
  const kind: PartKind = groove.face === face ? groove.kind : 'hidden'
  const key = `${panel.id} ${groove.id}`
  const operation = picture.operations.groove(groove)
  const title = grooveTitle(panel, groove, units)
  picture.part(
    { key, kind, filled: kind !== 'hidden', panel: panel.id, operation, title },
    closedPath(frame, groovePath(panel, groove), 0),
    [seen(frame, [groove.min[0], groove.min[1], 0]), seen(frame, [groove.max[0], groove.max[1], 0])],
  )
}

/** Its contour as seen on face A, with half circles where it takes the round of the cutter. */
export function groovePath(panel: Panel, groove: Groove): PathVertex[] {
  const { min, max } = groove
  const flat = max[0] - min[0] >= max[1] - min[1]
  const ends = endsInside(faceView(panel, 'A'), { min, max }, flat ? 0 : 1)
  const radius = flat ? (max[1] - min[1]) / 2 : (max[0] - min[0]) / 2
  const first = groove.roundEnds && ends.start ? radius : 0
  const last = groove.roundEnds && ends.end ? radius : 0
  const corners: readonly (readonly [Vec2, isEnd: 'start' | 'end' | undefined])[] = flat
    ? [
        [[min[0] + first, min[1]], undefined],
        [[max[0] - last, min[1]], 'end'],
        [[max[0] - last, max[1]], undefined],
        [[min[0] + first, max[1]], 'start'],
      ]
    : [
        [[min[0], min[1] + first], 'start'],
        [[max[0], min[1] + first], undefined],
        [[max[0], max[1] - last], 'end'],
        [[min[0], max[1] - last], undefined],
      ]
  const isRound = { start: first > 0, end: last > 0 }
  return corners.map(([at, end]) => ({ at, bulge: end !== undefined && isRound[end] ? 1 : 0 }))
}

function drawCutout(picture: Picture, board: Board, cutout: Cutout, units: Units): void {
  const { panel, face, frame } = board
  const isSeen = cutout.through || cutout.face === face
  const kind: PartKind = isSeen ? (cutout.through ? 'cutout' : 'pocket') : 'hidden'
  const { min, max } = boundsOf(cutout.path)
  const operation = picture.operations.cutout(cutout)
  const title = cutoutTitle(panel, cutout, units)
  picture.part(
    // Of a notch the outline has the lines already.
    {
      key: `${panel.id} ${cutout.id}`,
      kind,
      filled: isSeen && cutout.notch !== true,
      panel: panel.id,
      operation,
      title,
    },
    closedPath(frame, cutout.path, 0),
    [seen(frame, [min[0], min[1], 0]), seen(frame, [max[0], max[1], 0])],
  )
  if (cutout.notch === true) return
  const own = board.own ? { of: panel.id } : {}
  const snap = (at: Vec2, kindOf: 'centre' | 'corner') =>
    ({ at: seen(frame, [at[0], at[1], 0]), place: asSeen(board, at), kind: kindOf, ...own }) as const
  picture.snaps.push(snap([(min[0] + max[0]) / 2, (min[1] + max[1]) / 2], 'centre'))
  const ends = cutout.path.map(({ at }) => snap(at, 'corner'))
  cutout.path.forEach(({ bulge }, k) => {
    const [from, to] = [ends[k], ends[(k + 1) % ends.length]]
    if (roundMm(bulge) === 0 && from !== undefined && to !== undefined) picture.edges.push({ from, to })
  })
  if (cutout.path.every(({ bulge }) => bulge === 0)) picture.snaps.push(...ends)
}
