import type { EdgeSide } from '../../assembly/index.ts'
import type { ClosedPath } from '../../geometry/index.ts'
import type { Bore, Cutout, EdgeName, Groove, Panel } from '../../panel/index.ts'
import { seenPath } from '../cutouts.ts'
import type { Point } from '../types.ts'
import { edgeOf } from '../words.ts'

/** A bore that enters the face. Places are in the face's own frame: seen on it, x right, y up, mm. */
export interface FaceBore {
  readonly bore: Bore
  readonly at: Point
  /** Of the widest part, countersink included, mm. */
  readonly reach: number
  /** Unit direction in which a leaning bit travels under the face. */
  readonly lean?: Point
}

/** A bore that enters an edge. */
export interface EdgeBore {
  readonly bore: Bore
  /** On the edge's line, or on the shoulder of its rebate. */
  readonly at: Point
  readonly side: EdgeSide
  /** From this face to the bore's axis, mm. */
  readonly fromFace: number
  /** From the edge's line to where the bore starts, mm: more than 0 at the shoulder of a rebate. */
  readonly inFrom: number
  /** Of the widest part, countersink included, mm. */
  readonly reach: number
  /**
   * Its middle on the flap, the paper that folds down over the edge: as far beyond the edge's line as the bore lies from
   * the face. Absent at the shoulder of a rebate, where no paper can lie.
   */
  readonly onFlap?: Point
}

export interface FaceGroove {
  readonly groove: Groove
  readonly min: Point
  readonly max: Point
}

export interface FaceCutout {
  readonly cutout: Cutout
  readonly path: ClosedPath
}

/** One face of a panel, as a person looks at it. Face B is mirrored about the vertical: x becomes length − x. */
export interface FaceView {
  readonly panel: Panel
  readonly face: 'A' | 'B'
  readonly width: number
  readonly height: number
  readonly edges: Readonly<Record<EdgeSide, EdgeName>>
  readonly datum: Panel['datum']
  readonly bores: readonly FaceBore[]
  /** Only on face A: each is marked once, and every panel that is bored in its edges has pages of that face. */
  readonly edgeBores: readonly EdgeBore[]
  /** Shown beyond each edge, mm. */
  readonly surround: Readonly<Record<EdgeSide, number>>
  readonly grooves: readonly FaceGroove[]
  readonly cutouts: readonly FaceCutout[]
}

/** What is on a face, in the frame of that face; on face A with the bores of all four edges. */
export function faceView(panel: Panel, face: 'A' | 'B'): FaceView {
  const mirrored = face === 'B'
  const at = ([x, y]: readonly [number, number, ...unknown[]]): Point => [mirrored ? panel.length - x : x, y]
  const edgeBores = mirrored ? [] : panel.bores.flatMap((bore) => edgeBoresOf(panel, bore))
  return {
    panel,
    face,
    width: panel.length,
    height: panel.width,
    edges: mirrored ? { ...panel.edges, x0: panel.edges.x1, x1: panel.edges.x0 } : panel.edges,
    datum: { ...panel.datum, x: seenSide(panel.datum.x, mirrored) },
    bores: panel.bores.filter((bore) => bore.surface === face).map((bore) => faceBore(bore, at(bore.at), mirrored)),
    edgeBores,
    surround: surroundOf(panel.thickness, edgeBores),
    grooves: panel.grooves
      .filter((groove) => groove.face === face)
      .map((groove) => {
        const [a, b] = [at(groove.min), at(groove.max)]
        return { groove, min: [Math.min(a[0], b[0]), a[1]], max: [Math.max(a[0], b[0]), b[1]] }
      }),
    cutouts: panel.cutouts
      .filter((cutout) => cutout.face === face)
      .map((cutout) => ({ cutout, path: seenPath(panel, face, cutout) })),
  }
}

function seenSide<Side extends EdgeSide>(side: Side, mirrored: boolean): Side | 'x0' | 'x1' {
  if (!mirrored) return side
  if (side === 'x0') return 'x1'
  return side === 'x1' ? 'x0' : side
}

const reachOf = ({ diameter, sink }: Bore): number => Math.max(diameter, sink?.diameter ?? 0) / 2

function edgeBoresOf(panel: Panel, bore: Bore): EdgeBore[] {
  const edge = edgeOf(panel, bore)
  if (edge === undefined) return []
  const { side, inFrom } = edge
  const [x, y, z] = bore.at
  const [dx, dy] = OUTWARD[side]
  const place = { bore, at: [x, y] as const, side, fromFace: -z, inFrom, reach: reachOf(bore) }
  return [inFrom > 0 ? place : { ...place, onFlap: [x - dx * z, y - dy * z] }]
}

/** Shown beyond an edge without a flap, mm: room for its name. */
const SURROUND = 8
/** Shown beyond the far corner of an edge, and beyond the rims of the holes in it, mm. */
const BEYOND = { edge: 4, rim: 4 } as const

/** What a page shows beyond each edge, mm: where something is bored in the edge, its surface as the paper wraps it. */
function surroundOf(thickness: number, edgeBores: readonly EdgeBore[]): FaceView['surround'] {
  const beyond = (side: EdgeSide): number => {
    const onFlap = edgeBores.filter((item) => item.side === side && item.onFlap !== undefined)
    const rims = onFlap.map(({ fromFace, reach }) => fromFace + reach + BEYOND.rim)
    return onFlap.length === 0 ? SURROUND : Math.max(SURROUND, thickness + BEYOND.edge, ...rims)
  }
  return { x0: beyond('x0'), x1: beyond('x1'), y0: beyond('y0'), y1: beyond('y1') }
}

/** The edges over which the paper folds, since something is bored in them. */
export function flapSides({ edgeBores }: FaceView): ReadonlySet<EdgeSide> {
  return new Set(edgeBores.filter(({ onFlap }) => onFlap !== undefined).map(({ side }) => side))
}

function faceBore(bore: Bore, at: Point, mirrored: boolean): FaceBore {
  const reach = reachOf(bore)
  if (bore.leanDeg === undefined) return { bore, at, reach }
  const [x, y] = bore.axis
  const run = Math.hypot(x, y)
  if (run === 0) throw new RangeError(`${bore.id} is said to lean ${bore.leanDeg}° but its axis is square to the face`)
  return { bore, at, reach, lean: [(mirrored ? -x : x) / run, y / run] }
}

/** The corner of the face that distances are measured from. */
export function datumPoint(view: FaceView): Point {
  return [view.datum.x === 'x0' ? 0 : view.width, view.datum.y === 'y0' ? 0 : view.height]
}

/** Ends of an edge's line, from left to right or from bottom to top. */
export function edgeLine(view: FaceView, side: EdgeSide): readonly [Point, Point] {
  const { width, height } = view
  if (side === 'x0')
    return [
      [0, 0],
      [0, height],
    ]
  if (side === 'x1')
    return [
      [width, 0],
      [width, height],
    ]
  return side === 'y0'
    ? [
        [0, 0],
        [width, 0],
      ]
    : [
        [0, height],
        [width, height],
      ]
}

/** Unit direction from the face outward across an edge. */
export const OUTWARD: Readonly<Record<EdgeSide, Point>> = { x0: [-1, 0], x1: [1, 0], y0: [0, -1], y1: [0, 1] }
