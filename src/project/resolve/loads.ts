import type { Context, Said } from '../context.ts'
import type { Layers } from '../layers.ts'
import { layersOf, said } from '../layers.ts'
import { KG_M2_PER_PSF, KG_PER_POUND, parseAreaLoad, parseMass } from '../masses.ts'
import type { RawCommon, RawLoads } from '../schema/definition.ts'
import type { LoadsSpec } from '../types.ts'

/** Architectural woodwork: 40 lb/ft², not over 200 lb on one shelf (S46). */
const SHELF_KG_M2 = 40 * KG_M2_PER_PSF
const SHELF_MOST_KG = 200 * KG_PER_POUND
/** Kitchen cabinets are tested with 15 lb/ft² on all shelves, bottoms and drawers (S23, S24). */
const KITCHEN_KG_M2 = 15 * KG_M2_PER_PSF

/** What a module is to carry, key by key from itself, from common, and by default. */
export function resolveLoads(context: Context, layers: Layers<RawCommon>): LoadsSpec {
  const loads = layersOf<RawLoads>(layers.map((layer) => said([layer], 'loads')))
  const keys = ['on a shelf', 'shelf at most', 'on all shelves', 'in a drawer', 'on the top'] as const
  const shelf = readLoad(context, said(loads, 'on a shelf'), 'load on an area') ?? SHELF_KG_M2
  return {
    said: keys.some((key) => said(loads, key) !== undefined),
    shelf,
    shelfMost: readLoad(context, said(loads, 'shelf at most'), 'load') ?? SHELF_MOST_KG,
    allShelves: readLoad(context, said(loads, 'on all shelves'), 'load on an area') ?? Math.min(shelf, KITCHEN_KG_M2),
    drawer: readLoad(context, said(loads, 'in a drawer'), 'load on an area') ?? KITCHEN_KG_M2,
    top: readLoad(context, said(loads, 'on the top'), 'load'),
  }
}

/** A mass in kg or a load in kg/m²; `undefined` when none is said, or when it is none, which is reported. */
export function readLoad(
  context: Context,
  load: Said<number | string> | undefined,
  kind: 'load' | 'load on an area',
): number | undefined {
  if (load === undefined) return undefined
  const parsed = kind === 'load' ? parseMass(load.value) : parseAreaLoad(load.value)
  if (parsed === undefined) context.reportKind(load.path, load.value, kind)
  return parsed
}
