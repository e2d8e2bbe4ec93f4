import { NOISE_MM, poseOf, X, Y } from '../../geometry/index.ts'
import { itemsOfKind, type JointScrew } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { Edit, Limits, TopFix, WorktopSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { placeJoint } from '../joints/index.ts'
import { atLeast } from '../mend.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'
import { edgeBores } from './edge-bores.ts'
import { type Area, areaOf, grown } from './plan.ts'
import { screwPlaces } from './screw-places.ts'

/** Wood left between the pilot of a screw and the upper face of the top, mm; common practice. */
const SKIN_MM = 3
/** Length of screw that must be in the top, mm; common practice: it only keeps the board from lifting. */
const BITE_MM = 8
/** An upright that begins so far below a panel is no hindrance to a driver, mm; common practice. */
const DRIVER_MM = 40

/** Kept between the axis of a screw and an upright beside which it is driven, or a cut above its tip, mm; common practice. */
const CLEAR_MM = 15

/** A top, and what of one module it is screwed to from below. */
export interface BelowFixing {
  /** Key of the module that is screwed to the top, and its name. */
  readonly module: string
  readonly moduleName: string
  readonly panels: readonly PlacedPanel[]
  /** What is placed in them already, in the module's frame. */
  readonly hardware: readonly PlacedHardware[]
  readonly spec: WorktopSpec
  readonly top: Pick<PlacedPanel, 'id' | 'key' | 'name' | 'thickness'>
  /** Where the screws must not come, seen from above: cuts in the upper face of the top. */
  readonly cuts: readonly Area[]
}

/** A top, and what of one module it is fixed to in any way. */
export interface Fixing extends BelowFixing {
  readonly top: PlacedPanel
  readonly limits: Limits
}

/**
 * The screws that hold a top on one module. They stand in plain holes, not in slots: sheet goods do not move across the
 * grain as solid wood does.
 */
export function fixTop(fixing: Fixing): Parts {
  const { fix } = fixing.spec
  if (fix === undefined) return merge([])
  return fix.kind === 'pockets' ? throughSides(fixing, fix) : fromBelow(fixing, fix)
}

function throughSides({ module, panels, spec, top, limits }: Fixing, fix: Extract<TopFix, { kind: 'pockets' }>): Parts {
  const sides = panels.filter((panel) => panel.role === 'left side' || panel.role === 'right side')
  return merge(
    sides.map((side) =>
      placeJoint({ module, head: top, tip: side, joint: fix.joint, at: spec.at, asked: [...spec.at, 'fix'], limits }),
    ),
  )
}

type FromBelow = Extract<TopFix, { kind: 'from below' }>

/** The screws through the top, or the rails, of a module's carcase; module frame. */
export function fromBelow(fixing: BelowFixing, fix: FromBelow): Parts {
  const heads = fixing.panels.filter((panel) => panel.role === 'top' || panel.role === 'top rail')
  const parts = heads.map((head) => throughHead(fixing, fix, head))
  const placed = merge(parts)
  if (placed.hardware.length >= 2 || placed.troubles.length > 0) return placed
  const count = placed.hardware.length === 0 ? 'no screw' : 'only one screw'
  const what = `${fixing.moduleName}: ${count} from below finds a place under the ${fixing.top.name}`
  const fix2 =
    heads.length === 0 ? `give the carcase a top, or ${BY_HAND}` : `set a smaller end distance, or ${BY_HAND}`
  return merge([placed, { troubles: [trouble(fixing, heads, what, { fix: fix2, change: byHand(fixing) })] }])
}

const BY_HAND = '`fix: none` and fasten it by hand'
const byHand = ({ spec }: BelowFixing): readonly Edit[] => [{ path: [...spec.at, 'fix'], value: 'none' }]

function throughHead(fixing: BelowFixing, fix: FromBelow, head: PlacedPanel): Parts {
  const { module, panels, spec, top } = fixing
  const screw = screwFor(fix.screws, head.thickness, top.thickness)
  if (screw === undefined) return partsOf({ troubles: [noScrew(fixing, fix, head)] })
  const { min, max } = boardBox(head)
  const hindering = panels.filter((panel) => {
    const box = boardBox(panel)
    return panel !== head && box.min[2] < min[2] - NOISE_MM && box.max[2] > min[2] - DRIVER_MM
  })
  const clear = [...hindering.map(areaOf), ...fixing.cuts].map((area) => grown(area, CLEAR_MM))
  const places = screwPlaces(areaOf(head), [...clear, ...edgeBores(head, panels, fixing.hardware)], fix)
  const series = `${module}/${head.key}+${top.key}`
  return partsOf({
    hardware: places.map(([x, y], k): PlacedHardware => {
      const pose = poseOf(X, Y, [x, y, max[2]])
      return {
        id: `${series}/${k + 1}`,
        item: screw,
        frame: module,
        stations: [
          { part: 'head', panel: head.id, pose, wood: 'behind' },
          { part: 'tip', panel: top.id, pose, wood: 'ahead' },
        ],
        settings: {},
        series,
        at: spec.at,
      }
    }),
  })
}

/** How far from the underside of the panel below the pilot of a screw reaches, mm. */
function reachOf(screw: JointScrew): number {
  const depth = screw.parts.tip?.[0]?.depth
  return typeof depth === 'object' && 'reach' in depth ? depth.reach : screw.length
}

/** Of its hole in the panel below, mm. */
const girthOf = (screw: JointScrew): number => screw.parts.head?.[0]?.diameter ?? 0

/** The longest of these screws that bites and leaves the skin; of two as long, the thicker. */
export function screwFor(screws: readonly JointScrew[], head: number, top: number): JointScrew | undefined {
  const fitting = screws.filter(
    (screw) => screw.length - head >= BITE_MM - NOISE_MM && reachOf(screw) - head <= top - SKIN_MM + NOISE_MM,
  )
  return fitting.reduce<JointScrew | undefined>(
    (best, screw) =>
      best === undefined ||
      screw.length > best.length ||
      (screw.length === best.length && girthOf(screw) > girthOf(best))
        ? screw
        : best,
    undefined,
  )
}

function noScrew(fixing: BelowFixing, fix: FromBelow, head: PlacedPanel): PlacingTrouble {
  const { top, moduleName } = fixing
  const least = head.thickness + BITE_MM
  const beyond = Math.max(0, ...fix.screws.map((screw) => reachOf(screw) - screw.length))
  const most = head.thickness + top.thickness - SKIN_MM - beyond
  const [only, more] = fix.screws
  const asked = only !== undefined && more === undefined ? `a ${only.id} does not` : 'no screw of the catalogue does'
  const what = `${moduleName}: through the ${head.name} of ${mm(head.thickness)} mm into the ${top.name} of ${mm(top.thickness)} mm, ${asked} both hold and leave ${SKIN_MM} mm of wood over it`
  return trouble(fixing, [head], what, otherScrew(fixing, fix, head.thickness, least, most))
}

/** A screw of the catalogue where one was asked for that does not do, or the top that the shortest of them wants. */
function otherScrew(
  fixing: BelowFixing,
  { screws }: FromBelow,
  head: number,
  least: number,
  most: number,
): Pick<PlacingTrouble, 'fix' | 'change'> {
  const { top, spec } = fixing
  const isInch = ({ id }: JointScrew): boolean => id.includes('#')
  const alike = itemsOfKind('through screw').filter((one) => screws.some((asked) => isInch(asked) === isInch(one)))
  const found = screwFor(alike, head, top.thickness)
  const from = mm(Math.ceil(least * 10 - NOISE_MM) / 10)
  const to = mm(Math.floor(most * 10 + NOISE_MM) / 10)
  if (found !== undefined) {
    const fix = `take a screw between ${from} and ${to} mm long: ${found.id}`
    return { fix, change: [{ path: [...spec.at, 'fix', 'fasten'], value: found.id }] }
  }
  const shortest = Math.min(...alike.filter(({ length }) => length >= least - NOISE_MM).map(reachOf))
  const thick = Number.isFinite(shortest)
    ? `use a top of ${atLeast(shortest - head + SKIN_MM)} or more`
    : 'use another board'
  return { fix: `${thick}, or ${BY_HAND}`, change: byHand(fixing) }
}

const trouble = (
  fixing: BelowFixing,
  heads: readonly PlacedPanel[],
  message: string,
  mending: Pick<PlacingTrouble, 'fix' | 'change'>,
): PlacingTrouble => ({
  rule: 'top-screws',
  severity: 'stop',
  panels: [fixing.top.id, ...heads.map((head) => head.id)],
  message,
  ...mending,
  at: fixing.spec.at,
})
