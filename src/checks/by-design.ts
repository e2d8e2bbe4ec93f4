import type { Assembly, PlacedHardware } from '../assembly/index.ts'
import { boxSolid, circlePath, gapToPrism, liesIn, NOISE_MM, type Prism, type Vec3 } from '../geometry/index.ts'
import type { Item } from '../hardware/index.ts'
import type { Bore, Cutout, Groove, Panel } from '../panel/index.ts'
import type { DefinitionPath } from '../project/index.ts'
import { alongOf, type SolidWork } from './works.ts'

/** Where the definition asks for each cutout and each piece of hardware, and what those pieces are. */
export interface Designs {
  readonly cutoutAt: (panel: Panel, cutout: Cutout) => DefinitionPath
  readonly hardwareAt: (id: string) => DefinitionPath | undefined
  readonly itemOf: (id: string) => Item | undefined
  readonly pieceOf: (id: string) => PlacedHardware | undefined
}

export function designsOf({ modules, hardware }: Assembly): Designs {
  const cutouts = new Map(
    modules.flatMap((module) => module.cutouts.map((one) => [`${one.panel} ${one.key}`, one.at] as const)),
  )
  const pieces = new Map(hardware.map((piece): [string, PlacedHardware] => [piece.id, piece]))
  return {
    cutoutAt: (panel, { id }) => cutouts.get(`${panel.id} ${id}`) ?? panel.at,
    hardwareAt: (id) => pieces.get(id)?.at,
    itemOf: (id) => pieces.get(id)?.item,
    pieceOf: (id) => pieces.get(id),
  }
}

/** Whether two works of a panel are to meet, or to lie as near each other as they do. */
export function byDesign(panel: Panel, a: SolidWork, b: SolidWork, designs: Designs): boolean {
  const [one, other] = [a.work, b.work]
  if (one.kind === 'bore' && other.kind === 'bore') return ofOnePattern(one.bore, other.bore)
  if (one.kind === 'bore' && other.kind === 'groove') return entersBy(panel, one.bore, b.prism)
  if (one.kind === 'bore' && other.kind === 'cutout') return throughFloor(panel, one.bore, other.cutout, designs)
  if (one.kind === 'groove' && other.kind === 'groove') return cross(one.groove, other.groove)
  // The corner that a housing takes off a board opens into the groove or rebate for the back at that board's end.
  if (one.kind === 'groove' && other.kind === 'cutout') return other.cutout.notch === true
  if (one.kind === 'cutout' && other.kind === 'cutout')
    return isStepped(one.cutout, other.cutout) || isStepped(other.cutout, one.cutout)
  return false
}

/** Holes of one piece of hardware stand as its maker set them; the bolt of a cam runs into its housing. */
const ofOnePattern = (a: Bore, b: Bore): boolean =>
  a.uses.some((use) => b.uses.some((other) => use.hardware === other.hardware))

/** A bore in an edge that starts within the panel, at the shoulder of a rebate. */
function entersBy(panel: Panel, { at, surface }: Bore, prism: Prism | undefined): boolean {
  const into = { x0: at[0], x1: panel.length - at[0], y0: at[1], y1: panel.width - at[1], A: 0, B: 0 }[surface]
  return prism !== undefined && into > NOISE_MM && touches(at, prism)
}

const touches = (at: Vec3, prism: Prism): boolean => gapToPrism(boxSolid({ min: at, max: at }), prism) <= NOISE_MM

/**
 * A hole bored on through the floor of a recess, for hardware of the same part of the definition: levelling screws in the
 * ledge of a machine top. A hole of anything else would lose its depth there.
 */
function throughFloor(panel: Panel, bore: Bore, cutout: Cutout, { cutoutAt, hardwareAt }: Designs): boolean {
  if (cutout.through || Math.abs(bore.axis[2]) < 1 - NOISE_MM) return false
  const at = cutoutAt(panel, cutout)
  if (!bore.uses.every((use) => sameDesign(at, hardwareAt(use.hardware) ?? []))) return false
  return liesIn(circlePath([bore.at[0], bore.at[1]], bore.diameter / 2), cutout.path)
}

/** One place lies in the other, both below their module: `modules`, its name, and the part of it. */
function sameDesign(a: DefinitionPath, b: DefinitionPath): boolean {
  const short = Math.min(a.length, b.length)
  return short > 2 && a.slice(0, short).every((step, k) => step === b[k])
}

/**
 * Grooves across each other in one face: where they meet, one opens into the other, and no wood is lost beyond them.
 * Whether the boards in them are in each other's way is seen where panels overlap.
 */
const cross = (a: Groove, b: Groove): boolean => a.face === b.face && alongOf(a) !== alongOf(b) && meet(a, b)

const meet = (a: Groove, b: Groove): boolean =>
  ([0, 1] as const).every(
    (axis) => Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]) >= -NOISE_MM,
  )

/** A deeper cutout wholly inside a recess of the same face: an opening with a ledge. */
function isStepped(outer: Cutout, inner: Cutout): boolean {
  if (outer.through || !(inner.through || (inner.face === outer.face && inner.depth > outer.depth + NOISE_MM)))
    return false
  return liesIn(inner.path, outer.path)
}
