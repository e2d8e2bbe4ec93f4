import { poseOf, X, Y } from '../geometry/index.ts'
import type { BaseSpec, ModuleSpec } from '../project/index.ts'
import { boardBox } from './boards.ts'
import { merge, type Parts, partsOf } from './parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from './types.ts'

/** Kept between the swivel circles of two casters, mm; common practice. */
const CIRCLES_APART_MM = 10

/** Height that the base takes up, mm. */
export function baseHeight(base: BaseSpec): number {
  return base.kind === 'casters' ? base.item.overallHeight : 0
}

/** King pin to the edges of the footprint: the swivel circle stays inside by the gap. */
function casterInset(base: Extract<BaseSpec, { kind: 'casters' }>): number {
  return base.inset === 'auto' ? base.item.swivelRadius + base.footprintGap : base.inset
}

const mm = (value: number): string => String(Math.round(value * 10) / 10)

/** Four casters under the bottom panel, by the footprint of the module. */
export function placeBase(spec: ModuleSpec, bottom: PlacedPanel | undefined): Parts {
  const { base, key } = spec
  if (base.kind === 'none' || bottom === undefined) return merge([])
  const inset = casterInset(base)
  const box = boardBox(bottom)
  const places: readonly (readonly [number, number])[] = [
    [inset, inset],
    [spec.width - inset, inset],
    [spec.width - inset, spec.depth - inset],
    [inset, spec.depth - inset],
  ]
  const hardware = places.map(
    ([x, y], k): PlacedHardware => ({
      id: `${key}/casters/${k + 1}`,
      item: base.item,
      frame: key,
      stations: [{ part: 'plate', panel: bottom.id, pose: poseOf(X, Y, [x, y, box.min[2]]), wood: 'ahead' }],
      settings: {},
      series: `${key}/caster-${k + 1}`,
      at: base.at,
    }),
  )
  return partsOf({
    hardware,
    troubles: [...circleTroubles(spec, base, bottom), ...plateTroubles(spec, base, bottom)],
  })
}

type Casters = Extract<BaseSpec, { kind: 'casters' }>

function circleTroubles(spec: ModuleSpec, base: Casters, bottom: PlacedPanel): PlacingTrouble[] {
  const inset = casterInset(base)
  const { swivelRadius } = base.item
  const between = Math.min(spec.width, spec.depth) - 2 * inset - 2 * swivelRadius
  const narrow = spec.width < spec.depth ? 'wide' : 'deep'
  const troubles: PlacingTrouble[] = []
  if (between < CIRCLES_APART_MM) {
    const least = 2 * inset + 2 * swivelRadius + CIRCLES_APART_MM
    troubles.push({
      rule: 'caster-circles',
      severity: between < 0 ? 'stop' : 'warn',
      panels: [bottom.id],
      message: `the swivel circles of two casters ${between < 0 ? `overlap by ${mm(-between)} mm` : `pass ${mm(between)} mm apart`}; the module is ${mm(Math.min(spec.width, spec.depth))} mm ${narrow}`,
      fix: `make it ${mm(least)} mm ${narrow} or more, or take a smaller caster`,
      at: base.at,
    })
  }
  if (inset < swivelRadius) {
    troubles.push({
      rule: 'caster-footprint',
      severity: 'warn',
      panels: [bottom.id],
      message: `the casters swing ${mm(swivelRadius - inset)} mm beyond the footprint and can meet a neighbour's`,
      fix: `set \`inset: ${mm(swivelRadius + base.footprintGap)}\` or leave it to the rule`,
      at: base.at,
    })
  }
  return troubles
}

/** The whole top plate must lie on the bottom panel. */
function plateTroubles(spec: ModuleSpec, base: Casters, bottom: PlacedPanel): PlacingTrouble[] {
  const inset = casterInset(base)
  const box = boardBox(bottom)
  const { plate } = base.item
  const beyond = Math.max(
    box.min[0] - (inset - plate.x / 2),
    spec.width - inset + plate.x / 2 - box.max[0],
    box.min[1] - (inset - plate.y / 2),
    spec.depth - inset + plate.y / 2 - box.max[1],
  )
  if (beyond <= 0) return []
  return [
    {
      rule: 'caster-plate',
      severity: 'stop',
      panels: [bottom.id],
      message: `a caster plate of ${mm(plate.x)} × ${mm(plate.y)} mm stands ${mm(beyond)} mm beyond the bottom panel`,
      fix: `set the casters at least ${mm(inset + beyond)} mm in`,
      at: base.at,
    },
  ]
}
