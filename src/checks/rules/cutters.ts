import { boundsOf, NOISE_MM, type Vec2 } from '../../geometry/index.ts'
import { fineMm, formatMm } from '../../length/index.ts'
import type { Cutout, Groove, Panel } from '../../panel/index.ts'
import { type BitSpec, type DefinitionPath, limitOf, type OpeningSpec, type Project } from '../../project/index.ts'
import { makes } from '../bits.ts'
import { type TightSpot, tightSpots } from '../corners.ts'
import { count, emptyTally, type Tally, tallyWords } from '../counted.ts'
import { written } from '../runs.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { mm, panelWords } from '../words.ts'
import { added } from './bits.ts'
import { cutoutWords } from './cutouts.ts'

/** What the router bits of the shop cannot cut; looked at only where `bits` lists one. */
export const cutters: Rule = {
  ids: ['cutter-corner', 'groove-cutter'],
  check: (subject) => {
    const { project, panels } = subject
    const cutting = project.bits.filter(({ kind }) => kind === 'straight' || kind === 'end mill')
    if (cutting.length === 0) return []
    const shop: Shop = { project, cutting, askedAt: askedAt(subject), openings: openingsOf(project), groups: new Map() }
    const corners = panels.flatMap((panel) => {
      for (const groove of panel.grooves) checkGroove(shop, panel, groove)
      return panel.cutouts.flatMap((cutout) => checkCutout(shop, panel, cutout))
    })
    return [...corners, ...[...shop.groups.values()].map((group) => groupFinding(shop, group))]
  },
}

/** Cuts that wait for the same cutter. */
interface Group {
  readonly why: 'narrow' | 'deep'
  readonly width: number
  readonly depth: number
  readonly tally: Tally
}

interface Shop {
  readonly project: Project
  readonly cutting: readonly BitSpec[]
  readonly askedAt: (panel: Panel, cutout: Cutout) => DefinitionPath
  /** By their place in the definition. */
  readonly openings: ReadonlyMap<string, OpeningSpec>
  readonly groups: Map<string, Group>
}

function askedAt({ assembly }: Subject): Shop['askedAt'] {
  const placed = new Map(
    assembly.modules.flatMap((module) => module.cutouts.map((one) => [`${one.panel} ${one.key}`, one.at] as const)),
  )
  return (panel, cutout) => placed.get(`${panel.id} ${cutout.id}`) ?? panel.at
}

const openingsOf = ({ modules }: Project): ReadonlyMap<string, OpeningSpec> =>
  new Map(modules.flatMap(({ openings }) => openings.map((one) => [JSON.stringify(one.at), one] as const)))

const diameterOf = (list: readonly BitSpec[]): number => Math.min(...list.map(({ diameter }) => diameter))
const reachOf = ({ depth }: BitSpec): number => depth ?? Number.POSITIVE_INFINITY

/**
 * The cutters that go into a cut of that width and reach its floor; where there are none, what is wanted is noted. A rebate
 * is open on one side: a cutter of any width makes it.
 */
function cuttersFor(
  shop: Shop,
  cut: { readonly width: number; readonly depth: number; readonly purpose: string },
  panel: Panel,
): readonly BitSpec[] {
  const narrow = shop.cutting.filter(({ diameter }) => diameter <= cut.width + NOISE_MM)
  const fitting = narrow.filter((bit) => reachOf(bit) >= cut.depth - NOISE_MM)
  if (fitting.length > 0) return fitting
  const why = narrow.length === 0 ? 'narrow' : 'deep'
  const key = `${why} ${fineMm(cut.width)} ${fineMm(cut.depth)}`
  const group = shop.groups.get(key) ?? { why, width: cut.width, depth: cut.depth, tally: emptyTally() }
  shop.groups.set(key, group)
  count(group.tally, cut.purpose, panel)
  return []
}

function checkGroove(shop: Shop, panel: Panel, { kind, min, max, depth, purpose }: Groove): void {
  const width = kind === 'rebate' ? Number.POSITIVE_INFINITY : Math.min(max[0] - min[0], max[1] - min[1])
  cuttersFor(shop, { width, depth, purpose }, panel)
}

function checkCutout(shop: Shop, panel: Panel, cutout: Cutout): Finding[] {
  const { project } = shop
  const { min, max } = boundsOf(cutout.path)
  const [wide, high] = [max[0] - min[0], max[1] - min[1]]
  if (isBored(shop, cutout, wide)) return []
  const depth = cutout.depth + (cutout.through ? limitOf(project, 'groove-cutter', 'beyond') : 0)
  // A notch is open to the edge; else a slot's round ends say how wide it is, and a box what no shape in it is wider than.
  const width = cutout.notch === true ? Number.POSITIVE_INFINITY : Math.min(wide, high, ...endsOf(cutout))
  const fitting = cuttersFor(shop, { width, depth, purpose: cutout.purpose }, panel)
  if (fitting.length === 0) return []
  const radius = diameterOf(fitting) / 2
  const left = limitOf(project, 'cutter-corner', 'left')
  const tight = tightSpots(cutout.path, radius).filter((spot) => spot.left > left + NOISE_MM && within(panel, spot.at))
  return tight.length === 0 ? [] : [cornerFinding(shop, panel, cutout, radius, tight)]
}

/** Widths of the ends that turn back on themselves, mm. */
const endsOf = ({ path }: Cutout): number[] =>
  tightSpots(path, Number.POSITIVE_INFINITY).flatMap(({ radius, turnDeg }) =>
    turnDeg >= 179 && radius > 0 ? [2 * radius] : [],
  )

/** A round one for which there is a bit: it is bored, not routed. */
function isBored({ project }: Shop, { path, depth, through }: Cutout, diameter: number): boolean {
  const round = path.length === 2 && path.every(({ bulge }) => Math.abs(bulge - 1) < NOISE_MM)
  const make = through ? 'hole' : 'flat hole'
  return round && project.bits.some((bit) => makes(project, bit, { make, diameter, depth, inFace: true }))
}

/** Not on the panel's outline, where a notch begins. */
const within = ({ length, width }: Panel, [x, y]: Vec2): boolean =>
  x > NOISE_MM && y > NOISE_MM && x < length - NOISE_MM && y < width - NOISE_MM

function cornerFinding(shop: Shop, panel: Panel, cutout: Cutout, radius: number, tight: readonly TightSpot[]): Finding {
  const at = shop.askedAt(panel, cutout)
  const opening = shop.openings.get(JSON.stringify(at))
  const z = cutout.face === 'A' ? 0 : -panel.thickness
  const asked = Math.max(...tight.map((spot) => spot.radius))
  const sharp = asked <= NOISE_MM ? 'square corners' : `corners of ${fineMm(asked)} mm`
  const rounded = opening?.shape === 'rectangle' ? roundedUp(radius, shop.project) : undefined
  const relief = reliefWords(radius, tight)
  return {
    rule: 'cutter-corner',
    severity: 'warn',
    panels: [panel.id],
    places: tight.map(({ at: [x, y] }) => ({ panel: panel.id, surface: cutout.face, at: [x, y, z] })),
    message: `${panelWords(panel)}: the ${cutoutWords(panel, cutout)}, has ${tight.length} inner ${sharp}; the smallest router bit that reaches its floor, ${fineMm(2 * radius)} mm, leaves a radius of ${fineMm(radius)} mm`,
    fix: rounded === undefined ? relief : `give it a corner radius of ${rounded}, or ${relief}`,
    ...(rounded !== undefined && { change: [{ path: [...at, 'corner radius'], value: rounded }] }),
    at,
  }
}

/** The relief that just reaches a square corner: its middle r / √2 in from both walls (S59b). */
function reliefWords(radius: number, tight: readonly TightSpot[]): string {
  const square = tight.every(({ turnDeg, radius: has }) => Math.abs(turnDeg - 90) < 0.01 && has <= NOISE_MM)
  const where = square
    ? `${fineMm(radius / Math.SQRT2)} mm in from both walls`
    : `${fineMm(radius)} mm from the corner on its bisector`
  return `relieve each with the same bit, its middle ${where}, or square them with a chisel`
}

/** The least radius in steps that a person types that is not less. */
function roundedUp(radius: number, { units }: Project): string {
  const step = units === 'mm' ? 0.1 : 25.4 / 64
  return written(Math.ceil(radius / step - NOISE_MM) * step, units).text
}

/** Diameters that router bits are sold in, mm: common practice. */
const SOLD_MM = [3.175, 6, 6.35, 8, 9.525, 12.7]

function groupFinding({ project, cutting }: Shop, { why, width, depth, tally }: Group): Finding {
  const smallest = diameterOf(cutting)
  const fitting = cutting.filter(({ diameter }) => diameter <= width + NOISE_MM)
  const longest = [...fitting].sort((a, b) => reachOf(b) - reachOf(a))[0]
  const diameter = why === 'deep' ? longest?.diameter : SOLD_MM.findLast((sold) => sold <= width + NOISE_MM)
  const deep = Math.ceil(depth * 10 - NOISE_MM) / 10
  return {
    rule: 'groove-cutter',
    severity: 'warn',
    panels: [],
    places: [],
    message:
      why === 'narrow'
        ? `no router bit is narrow enough for ${tallyWords(tally)}, ${fineMm(width)} mm wide; the narrowest is ${fineMm(smallest)} mm`
        : `no router bit reaches ${fineMm(depth)} mm deep for ${tallyWords(tally)}; the longest that goes in cuts ${fineMm(longest?.depth ?? 0)} mm deep`,
    ...(diameter === undefined
      ? { fix: 'make it wider, or leave it to a chisel' }
      : {
          fix: `get a straight bit of ${formatMm(diameter)} mm that cuts ${mm(deep)} mm deep, and put it under \`bits\``,
          change: [added(project, { kind: 'straight', diameter: `${diameter} mm`, depth: `${mm(deep)} mm` })],
        }),
    at: ['bits'],
  }
}
