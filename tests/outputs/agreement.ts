/**
 * What panels.json says must be on the drawing of a face, worked out here and not taken from the program, and a
 * comparison with what a reader found. mm, as seen on that face, lower left corner of the panel at (0, 0), y up.
 */

/** What is needed of panels.json; written out here, so that a change of the format is seen. */
export interface PanelsJson {
  readonly format: string
  readonly version: number
  readonly units: string
  readonly files: readonly string[]
  readonly panels: readonly PanelRecord[]
}

export interface PanelRecord {
  readonly id: string
  readonly length: number
  readonly width: number
  readonly thickness: number
  readonly edges: Readonly<Record<'x0' | 'x1' | 'y0' | 'y1', string>>
  readonly lipping?: Readonly<Record<string, number>>
  readonly files: Readonly<Record<'svg' | 'dxf' | 'pdf', readonly string[]>>
  readonly drillings: readonly Drilling[]
  readonly grooves: readonly GrooveRecord[]
  readonly cutouts?: readonly CutoutRecord[]
}

export interface Drilling {
  readonly id: string
  readonly surface: string
  readonly x: number
  readonly y: number
  readonly diameter: number
  readonly depth: number
  readonly through: boolean
  readonly axis: readonly [number, number, number]
  readonly lean?: number
  readonly sink?: { readonly shape: string; readonly diameter: number }
}

export interface GrooveRecord {
  readonly id: string
  readonly kind: string
  readonly face: string
  readonly min: readonly [number, number]
  readonly max: readonly [number, number]
  readonly depth: number
  readonly ends: string
}

export interface CutoutRecord {
  readonly id: string
  readonly face: string
  readonly through: boolean
  readonly depth: number
  readonly path: readonly (readonly [x: number, y: number, bulge: number])[]
}

export type Point = readonly [number, number]

/** A contour as a reader found it: its corners, each with the bulge or (SVG) no bulge of what leaves it, and its arcs. */
export interface FoundPath {
  readonly layer: string
  readonly points: readonly Point[]
  /** Where each arc swells furthest, and its radius. */
  readonly arcs: readonly { readonly at: Point; readonly radius: number }[]
  readonly id?: string
}

export interface FoundCircle {
  readonly at: Point
  readonly radius: number
  readonly id?: string
}

/** All that a reader found on the layers for bores, grooves and marks of one drawing. */
export interface Found {
  readonly holes: readonly FoundCircle[]
  readonly grooves: readonly FoundPath[]
  readonly cutouts: readonly FoundPath[]
  readonly outline: readonly Point[]
  readonly marks: {
    readonly circles: readonly FoundCircle[]
    readonly paths: readonly FoundPath[]
    readonly lines: readonly (readonly [from: Point, to: Point])[]
  }
}

/** How far the finished panel reaches beyond its outline on the drawing of a face, mm. */
export function lippingsOf(
  { edges, lipping = {} }: PanelRecord,
  face: 'A' | 'B',
): Record<'left' | 'right' | 'low' | 'high', number> {
  const [x0 = 0, x1 = 0, low = 0, high = 0] = [edges.x0, edges.x1, edges.y0, edges.y1].map((edge) => lipping[edge])
  return face === 'A' ? { left: x0, right: x1, low, high } : { left: x1, right: x0, low, high }
}

/** How many of each have been compared, so that a comparison of nothing is seen. */
export interface Tally {
  holes: number
  grooves: number
  cutouts: number
  edges: number
  leans: number
  strays: number
}

export const nothing = (): Tally => ({ holes: 0, grooves: 0, cutouts: 0, edges: 0, leans: 0, strays: 0 })

/** Places are rounded to 0.001 mm in panels.json and in SVG; the rest is float noise. */
const NEAR_MM = 0.001 + 1e-6
/** Ends and corners are worked out from up to four rounded figures. */
const NEAR_DERIVED_MM = 0.002 + 1e-6

export const near = (a: Point, b: Point, by = NEAR_MM): boolean =>
  Math.abs(a[0] - b[0]) <= by && Math.abs(a[1] - b[1]) <= by

/** The widest circle of a bore reaches over an edge: such a bore is a mark. */
export function isStray(panel: PanelRecord, hole: Drilling): boolean {
  const radius = Math.max(hole.diameter, hole.sink?.diameter ?? 0) / 2
  const least = Math.min(hole.x, hole.y, panel.length - hole.x, panel.width - hole.y)
  return least < radius - NEAR_MM
}

/** Takes each wanted thing out of the list of those found; tells of what is missing and of what is left over. */
function pairOff<W, F>(
  wanted: readonly W[],
  found: readonly F[],
  isOne: (wanted: W, found: F) => boolean,
  what: string,
): string[] {
  const rest = [...found]
  const lost = wanted.filter((one) => {
    const k = rest.findIndex((other) => isOne(one, other))
    if (k >= 0) rest.splice(k, 1)
    return k < 0
  })
  return [
    ...lost.map((one) => `${what} not drawn: ${JSON.stringify(one)}`),
    ...rest.map((one) => `${what} not in panels.json: ${JSON.stringify(one)}`),
  ]
}

/** What disagrees on the drawing of one face; adds what was compared to the tally. */
export function disagreements(panel: PanelRecord, face: 'A' | 'B', found: Found, tally: Tally): string[] {
  const seen = (x: number): number => (face === 'A' ? x : panel.length - x)
  const turned = (dx: number): number => (face === 'A' ? dx : -dx)
  const own = panel.drillings.filter((hole) => hole.surface === `face ${face}`)
  const square = own.filter((hole) => hole.lean === undefined)
  const circles = (holes: readonly Drilling[]): FoundCircle[] =>
    holes.flatMap(({ id, x, y, diameter, sink }): FoundCircle[] => [
      { id, at: [seen(x), y], radius: diameter / 2 },
      ...(sink ? [{ id: `${id}-sink`, at: [seen(x), y] as Point, radius: sink.diameter / 2 }] : []),
    ])
  const holes = circles(square.filter((hole) => !isStray(panel, hole)))
  const strays = square.filter((hole) => isStray(panel, hole))
  const edges = face === 'A' ? panel.drillings.filter((hole) => hole.surface.startsWith('edge ')) : []
  const leans = own.filter((hole) => hole.lean !== undefined)
  const grooves = panel.grooves
    .filter((groove) => groove.face === face)
    .map((groove) => wantedGroove(panel, groove, seen))
  tally.holes += holes.length
  tally.grooves += grooves.length
  const cutouts = (panel.cutouts ?? [])
    .filter((cutout) => cutout.face === face && !isNotch(panel, cutout))
    .map((one) => wantedCutout(one, seen))
  tally.cutouts += cutouts.length
  tally.edges += edges.length
  tally.leans += leans.length
  tally.strays += strays.length
  return [
    ...pairOff(holes, found.holes, sameCircle, 'hole'),
    ...pairOff(grooves, found.grooves, sameGroove, 'groove'),
    ...pairOff(cutouts, found.cutouts, sameCutout, 'cutout'),
    ...pairOff(wantedOutline(panel, face, seen), found.outline, (p, q) => near(p, q, NEAR_DERIVED_MM), 'corner'),
    ...pairOff(circles(strays), found.marks.circles, sameCircle, 'mark of a stray hole'),
    ...pairOff(
      [...edges.map(wantedEdge), ...leans.map((hole) => wantedLean(hole, seen, turned))],
      found.marks.paths,
      samePath,
      'mark',
    ),
    ...pairOff(wantedLines({ edges, leans, strays }, seen), found.marks.lines, sameLine, 'line of a mark'),
  ]
}

const sameId = (a: string | undefined, b: string | undefined): boolean => a === undefined || b === undefined || a === b

const sameCircle = (wanted: FoundCircle, found: FoundCircle): boolean =>
  near(wanted.at, found.at) && Math.abs(wanted.radius - found.radius) <= NEAR_MM && sameId(wanted.id, found.id)

const samePoints = (a: readonly Point[], b: readonly Point[]): boolean =>
  a.length === b.length && pairOff(a, b, (p, q) => near(p, q, NEAR_DERIVED_MM), '').length === 0

interface WantedGroove {
  readonly id: string
  readonly kind: string
  readonly width: number
  readonly depth: number
  readonly points: readonly Point[]
  readonly arcs: FoundPath['arcs']
}

/** A groove runs along its longer side. Where it is round, half a circle as wide as it is takes the place of an end inside. */
function wantedGroove(panel: PanelRecord, groove: GrooveRecord, seen: (x: number) => number): WantedGroove {
  const xs = [seen(groove.min[0]), seen(groove.max[0])].sort((a, b) => a - b)
  const [left = 0, right = 0] = xs
  const [low, high] = [groove.min[1], groove.max[1]]
  const flat = right - left >= high - low
  const radius = Math.min(right - left, high - low) / 2
  const round = groove.ends === 'round'
  const [first, last, limit] = flat ? [left, right, panel.length] : [low, high, panel.width]
  const startRound = round && first > NEAR_MM
  const endRound = round && last < limit - NEAR_MM
  const [start, end] = [first + (startRound ? radius : 0), last - (endRound ? radius : 0)]
  const sides = flat ? [low, high] : [left, right]
  const middle = flat ? (low + high) / 2 : (left + right) / 2
  const put = (along: number, across: number): Point => (flat ? [along, across] : [across, along])
  return {
    id: groove.id,
    kind: groove.kind,
    width: 2 * radius,
    depth: groove.depth,
    points: [start, end].flatMap((along) => sides.map((across) => put(along, across))),
    arcs: [
      ...(startRound ? [{ at: put(first, middle), radius }] : []),
      ...(endRound ? [{ at: put(last, middle), radius }] : []),
    ],
  }
}

/** `GROOVE-W6P4-DEEP9P2`: kind, width and depth are in the name of the layer. */
function sameGroove(wanted: WantedGroove, found: FoundPath): boolean {
  const name = /^(GROOVE|REBATE)-W(\d+(?:P\d+)?)-DEEP(\d+(?:P\d+)?)$/.exec(found.layer)
  const figure = (k: number): number => Number(name?.[k]?.replace('P', '.'))
  const arcs = pairOff(
    wanted.arcs,
    found.arcs,
    (a, b) => near(a.at, b.at, NEAR_DERIVED_MM) && Math.abs(a.radius - b.radius) <= NEAR_DERIVED_MM,
    '',
  )
  return (
    name?.[1] === wanted.kind.toUpperCase() &&
    Math.abs(figure(2) - wanted.width) <= NEAR_DERIVED_MM &&
    Math.abs(figure(3) - wanted.depth) <= NEAR_MM &&
    samePoints(wanted.points, found.points) &&
    arcs.length === 0 &&
    sameId(wanted.id, found.id)
  )
}

interface WantedCutout {
  readonly id: string
  readonly layer: string
  readonly points: readonly Point[]
  readonly arcs: readonly { readonly at: Point; readonly centre: Point; readonly radius: number }[]
}

/**
 * The corners of a cutout, and where its arcs swell furthest: half way along, b·c/2 beside the middle of the chord c, to
 * its right where the bulge b is positive. On face B, left and right are changed.
 */
function wantedCutout({ id, through, depth, path }: CutoutRecord, seen: (x: number) => number): WantedCutout {
  const arcs = path.flatMap(([x, y, bulge], k) => {
    const [u, v] = path[(k + 1) % path.length] ?? [x, y]
    if (bulge === 0) return []
    const chord = Math.hypot(u - x, v - y)
    const at: Point = [seen((x + u + bulge * (v - y)) / 2), (y + v - bulge * (u - x)) / 2]
    // The centre lies a radius from the swell, toward the middle of the chord and on.
    const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
    const inward = Math.sign(bulge) / chord
    const centre: Point = [
      at[0] + (seen(0) === 0 ? 1 : -1) * -(v - y) * inward * radius,
      at[1] + (u - x) * inward * radius,
    ]
    return [{ at, centre, radius }]
  })
  const layer = through ? 'CUTOUT' : `POCKET-DEEP${String(Math.round(depth * 1000) / 1000).replace('.', 'P')}`
  return { id, layer, points: path.map(([x, y]): Point => [seen(x), y]), arcs }
}

/**
 * Each corner and each swell is found, and everything found is a corner or lies on one of the arcs: SVG cuts long arcs into
 * pieces.
 */
function sameCutout(wanted: WantedCutout, found: FoundPath): boolean {
  const places = [...found.points, ...found.arcs.map(({ at }) => at)]
  const isFound = (at: Point): boolean => places.some((one) => near(at, one, NEAR_DERIVED_MM))
  const onArc = (at: Point): boolean =>
    wanted.arcs.some(
      ({ centre, radius }) => Math.abs(Math.hypot(at[0] - centre[0], at[1] - centre[1]) - radius) <= 0.005,
    )
  return (
    wanted.layer === found.layer &&
    sameId(wanted.id, found.id) &&
    [...wanted.points, ...wanted.arcs.map(({ at }) => at)].every(isFound) &&
    found.points.every((at) => onArc(at) || wanted.points.some((one) => near(at, one, NEAR_DERIVED_MM))) &&
    found.arcs.every(({ at }) => onArc(at))
  )
}

type Span = readonly [low: number, high: number]

const spanOf = ({ path }: CutoutRecord, axis: 0 | 1): Span => {
  const all = path.map((corner) => corner[axis])
  return [Math.min(...all), Math.max(...all)]
}

/** True where a cutout takes a corner off its panel. */
function isNotch(panel: PanelRecord, cutout: CutoutRecord): boolean {
  const atEnd = ([low, high]: Span, size: number): boolean => low <= NEAR_MM || high >= size - NEAR_MM
  return cutout.through && atEnd(spanOf(cutout, 0), panel.length) && atEnd(spanOf(cutout, 1), panel.width)
}

/** The corners of what is cut: the panel less its lippings, and three corners in the place of each that a notch takes off. */
function wantedOutline(panel: PanelRecord, face: 'A' | 'B', seen: (x: number) => number): Point[] {
  const lip = lippingsOf(panel, face)
  const notches = (panel.cutouts ?? []).filter((one) => isNotch(panel, one))
  return [lip.left, panel.length - lip.right].flatMap((x) =>
    [lip.low, panel.width - lip.high].flatMap((y): Point[] => {
      const within = (value: number, a: number, b: number): boolean =>
        value >= Math.min(a, b) - NEAR_MM && value <= Math.max(a, b) + NEAR_MM
      const notch = notches
        .map((one) => ({ x: spanOf(one, 0).map(seen) as [number, number], y: spanOf(one, 1) }))
        .find((one) => within(x, ...one.x) && within(y, ...one.y))
      if (notch === undefined) return [[x, y]]
      const inner = (value: number, size: number, ends: Span): number =>
        value < size / 2 ? Math.max(...ends) : Math.min(...ends)
      const [u, v] = [inner(x, panel.length, notch.x), inner(y, panel.width, notch.y)]
      return [
        [x, v],
        [u, v],
        [u, y],
      ]
    }),
  )
}

/** A mark with a shape: the hole of an edge bore by its corners, an arrow head by the ray on which it lies. */
type WantedMark =
  | { readonly id: string; readonly corners: readonly Point[] }
  | { readonly id: string; readonly from: Point; readonly way: Point }

const innerEnd = ({ x, y, axis, depth }: Drilling): Point => [x + axis[0] * depth, y + axis[1] * depth]

/** Only face A shows edge bores, so nothing is mirrored. */
function wantedEdge(hole: Drilling): WantedMark {
  const { id, x, y, axis, diameter } = hole
  const radius = diameter / 2
  const ends: Point[] = [[x, y], innerEnd(hole)]
  const corners = ends.flatMap(([ex, ey]): Point[] => [
    [ex - axis[1] * radius, ey + axis[0] * radius],
    [ex + axis[1] * radius, ey - axis[0] * radius],
  ])
  return { id, corners }
}

function wantedLean(hole: Drilling, seen: (x: number) => number, turned: (dx: number) => number): WantedMark {
  return { id: hole.id, from: [seen(hole.x), hole.y], way: [turned(hole.axis[0]), hole.axis[1]] }
}

function samePath(wanted: WantedMark, found: FoundPath): boolean {
  if (found.arcs.length > 0 || !sameId(wanted.id, found.id)) return false
  if ('corners' in wanted) return samePoints(wanted.corners, found.points)
  if (found.points.length !== 3) return false
  const middle = [0, 1].map((axis) => found.points.reduce((sum, p) => sum + (p[axis] ?? 0) / 3, 0))
  const [dx, dy] = [(middle[0] ?? 0) - wanted.from[0], (middle[1] ?? 0) - wanted.from[1]]
  const size = Math.hypot(...wanted.way)
  const beside = Math.abs(dx * wanted.way[1] - dy * wanted.way[0]) / size
  const ahead = (dx * wanted.way[0] + dy * wanted.way[1]) / size
  return beside <= 2 * NEAR_DERIVED_MM && ahead > 0
}

/** A line that ends at a place (a centre line, from outside), lies about it (a cross), or leaves its cross (an arrow). */
type WantedLine =
  | { readonly id: string; readonly endsAt: Point; readonly by: Point }
  | { readonly id: string; readonly middle: Point; readonly flat: boolean }
  | { readonly id: string; readonly from: Point; readonly way: Point }

function wantedLines(
  marks: Readonly<Record<'edges' | 'leans' | 'strays', readonly Drilling[]>>,
  seen: (x: number) => number,
): WantedLine[] {
  const cross = ({ id, x, y }: Drilling): WantedLine[] =>
    [true, false].map((flat) => ({ id, middle: [seen(x), y], flat }))
  const way = (hole: Drilling): Point => [seen(hole.x + hole.axis[0]) - seen(hole.x), hole.axis[1]]
  return [
    ...marks.edges.map((hole) => ({ id: hole.id, endsAt: innerEnd(hole), by: [hole.x, hole.y] as Point })),
    ...[...marks.leans, ...marks.strays].flatMap(cross),
    ...marks.leans.map((hole) => ({ id: hole.id, from: [seen(hole.x), hole.y] as Point, way: way(hole) })),
  ]
}

function sameLine(wanted: WantedLine, [from, to]: readonly [Point, Point]): boolean {
  if ('endsAt' in wanted)
    return near(to, wanted.endsAt, NEAR_DERIVED_MM) && offLine(wanted.by, from, to) <= NEAR_DERIVED_MM
  if ('middle' in wanted) {
    const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
    const level = Math.abs(from[wanted.flat ? 1 : 0] - to[wanted.flat ? 1 : 0]) <= NEAR_MM
    return level && near(middle, wanted.middle, NEAR_DERIVED_MM)
  }
  const ahead = (to[0] - from[0]) * wanted.way[0] + (to[1] - from[1]) * wanted.way[1]
  const near0 = offLine(wanted.from, from, to) <= 2 * NEAR_DERIVED_MM
  return near0 && ahead > 0 && !near([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], wanted.from, NEAR_DERIVED_MM)
}

/** Distance of a point from the line through two others. */
function offLine(at: Point, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return Math.abs((at[0] - from[0]) * dy - (at[1] - from[1]) * dx) / Math.hypot(dx, dy)
}
