import { roundMm, type Vec3 } from '../geometry/index.ts'
import type { Sink } from '../hardware/index.ts'
import { type Bore, type Cutout, coreOf, type Groove, type Panel, type Surface } from '../panel/index.ts'
import type { PanelFiles } from './paths.ts'

/** Raised when a reader of the last version could misread the file. */
export const PANELS_VERSION = 1

/** One panel in panels.json. Lengths in mm, rounded to 0.001. */
interface PanelRecord {
  readonly id: string
  readonly module: string
  readonly panel: string
  readonly role: string
  readonly stock: string
  readonly length: number
  readonly width: number
  readonly thickness: number
  /** Only where edges are lipped: what is cut from the sheet, and the lippings by the names of their edges. */
  readonly cut?: { readonly length: number; readonly width: number }
  readonly lipping?: Readonly<Record<string, number>>
  readonly grain: string
  readonly faces: Readonly<Record<'A' | 'B', string>>
  readonly edges: Readonly<Record<string, string>>
  readonly datum: Readonly<Record<'x' | 'y', string>>
  /** Module frame from panel frame: the panel's axes and origin seen in the module. */
  readonly pose: { readonly x: Vec3; readonly y: Vec3; readonly z: Vec3; readonly origin: Vec3 }
  readonly files: PanelFiles
  readonly drillings: readonly DrillingRecord[]
  readonly grooves: readonly GrooveRecord[]
  /** Left out where a panel has none. */
  readonly cutouts?: readonly CutoutRecord[]
}

interface DrillingRecord {
  readonly id: string
  readonly surface: string
  readonly x: number
  readonly y: number
  readonly z: number
  readonly diameter: number
  readonly depth: number
  readonly through: boolean
  readonly sink?: Sink
  readonly lean?: number
  readonly axis: Vec3
  readonly purpose: string
  readonly hardware: readonly { readonly id: string; readonly item: string; readonly part: string }[]
}

interface GrooveRecord {
  readonly id: string
  readonly kind: string
  readonly face: string
  readonly min: readonly [number, number]
  readonly max: readonly [number, number]
  readonly depth: number
  readonly ends: 'square' | 'round'
  readonly purpose: string
}

interface CutoutRecord {
  readonly id: string
  readonly face: string
  readonly through: boolean
  readonly depth: number
  /** Closed, counter-clockwise as seen on face A: corners with the bulge of what leaves them. */
  readonly path: readonly (readonly [x: number, y: number, bulge: number])[]
  readonly purpose: string
}

/** The text of panels.json: two spaces, points on one line, one final line end, keys in a fixed order. */
export function panelsJson(
  title: string,
  panels: readonly Panel[],
  filesOf: (panel: Panel) => PanelFiles,
  files: readonly string[],
  stamp?: string,
): string {
  const content = {
    format: 'storyrod panels',
    version: PANELS_VERSION,
    title,
    units: 'mm',
    ...(stamp !== undefined && { warning: stamp }),
    files,
    panels: panels.map((panel) => recordOf(panel, filesOf(panel))),
  }
  return `${JSON.stringify(content, null, 2).replace(LIST_OF_NUMBERS, oneLine)}\n`
}

/** Line breaks stand only between the parts of JSON, never in its strings. */
const LIST_OF_NUMBERS = /\[\n\s+-?[\d.]+(?:,\n\s+-?[\d.]+)*\n\s+\]/g

const oneLine = (list: string): string => list.replace(/\n\s+/g, ' ').replace('[ ', '[').replace(' ]', ']')

const vec = (v: Vec3): Vec3 => [roundMm(v[0]), roundMm(v[1]), roundMm(v[2])]
/** Directions carry six decimals: at 0.001 a leaning axis would be out by a tenth of a millimetre in a hundred. */
const direction = (v: Vec3): Vec3 => v.map((c) => Math.round(c * 1e6) / 1e6 + 0) as unknown as Vec3

function recordOf(panel: Panel, files: PanelFiles): PanelRecord {
  const pose = panel.moduleFromPanel
  return {
    id: panel.id,
    module: panel.moduleName,
    panel: panel.name,
    role: panel.role,
    stock: panel.stock.name,
    length: roundMm(panel.length),
    width: roundMm(panel.width),
    thickness: roundMm(panel.thickness),
    ...lippingOf(panel),
    grain: panel.stock.grain,
    faces: panel.faces,
    edges: panel.edges,
    datum: { x: panel.edges[panel.datum.x], y: panel.edges[panel.datum.y] },
    pose: { x: direction(pose.x), y: direction(pose.y), z: direction(pose.z), origin: vec(pose.origin) },
    files,
    drillings: panel.bores.map((bore) => drillingOf(panel, bore)),
    grooves: panel.grooves.map(grooveOf),
    ...(panel.cutouts.length > 0 && { cutouts: panel.cutouts.map(cutoutOf) }),
  }
}

function lippingOf(panel: Panel): Pick<PanelRecord, 'cut' | 'lipping'> {
  const { lipping, edges } = panel
  if (lipping === undefined) return {}
  const core = coreOf(panel)
  const sides = (['x0', 'x1', 'y0', 'y1'] as const).filter((side) => lipping[side] !== undefined)
  return {
    cut: { length: roundMm(core.length), width: roundMm(core.width) },
    lipping: Object.fromEntries(sides.map((side) => [edges[side], roundMm(lipping[side] ?? 0)])),
  }
}

/** `face A`, `edge front`. */
function surfaceName(panel: Panel, surface: Surface): string {
  return surface === 'A' || surface === 'B' ? `face ${surface}` : `edge ${panel.edges[surface]}`
}

function drillingOf(panel: Panel, bore: Bore): DrillingRecord {
  const [x, y, z] = vec(bore.at)
  return {
    id: bore.id,
    surface: surfaceName(panel, bore.surface),
    x,
    y,
    z,
    diameter: roundMm(bore.diameter),
    depth: roundMm(bore.depth),
    through: bore.through,
    ...(bore.sink && { sink: sinkOf(bore.sink) }),
    ...(bore.leanDeg !== undefined && { lean: bore.leanDeg }),
    axis: direction(bore.axis),
    purpose: bore.purpose,
    hardware: bore.uses.map(({ hardware, item, part }) => ({ id: hardware, item, part })),
  }
}

function sinkOf(sink: Sink): Sink {
  const diameter = roundMm(sink.diameter)
  return sink.shape === 'cone' ? { ...sink, diameter } : { ...sink, diameter, depth: roundMm(sink.depth) }
}

function grooveOf(groove: Groove): GrooveRecord {
  return {
    id: groove.id,
    kind: groove.kind,
    face: groove.face,
    min: [roundMm(groove.min[0]), roundMm(groove.min[1])],
    max: [roundMm(groove.max[0]), roundMm(groove.max[1])],
    depth: roundMm(groove.depth),
    ends: groove.roundEnds ? 'round' : 'square',
    purpose: groove.purpose,
  }
}

/** Bulges carry six decimals, as directions do. */
function cutoutOf(cutout: Cutout): CutoutRecord {
  const { id, face, through, path, purpose } = cutout
  const bulgeOf = (bulge: number): number => Math.round(bulge * 1e6) / 1e6 + 0
  return {
    id,
    face,
    through,
    depth: roundMm(cutout.depth),
    path: path.map(({ at, bulge }) => [roundMm(at[0]), roundMm(at[1]), bulgeOf(bulge)]),
    purpose,
  }
}
