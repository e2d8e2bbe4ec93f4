import { NOISE_MM } from '../../geometry/index.ts'
import type { Axle, JointScrew } from '../../hardware/index.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, isGroup, type Layers, layersOf, said } from '../layers.ts'
import { printable } from '../problem.ts'
import type { RawFlip, RawLock, RawMachine } from '../schema/definition.ts'
import type { FlipSpec, MachineSpec, Stock } from '../types.ts'
import { itemNamed, usualItem } from './hardware.ts'
import { stockNamed } from './stock.ts'

/** A flip-over top; `undefined` when none is said, or its stock or a machine's size cannot be told. */
export function resolveFlip(
  context: Context,
  flip: Said<unknown> | undefined,
  moduleStock: Stock | undefined,
): FlipSpec | undefined {
  if (flip === undefined) return undefined
  const layers = layersOf<RawFlip>([flip])
  const stock = (key: 'skin' | 'core'): Stock | undefined => {
    const name = said(layers, key)
    return name === undefined ? moduleStock : stockNamed(context, name)
  }
  const skin = stock('skin')
  const core = stock('core')
  const axle = resolveAxle(context, said(layers, 'axle'), core)
  const screws = resolveScrews(context, said(layers, 'screws'), skin, core)
  const lock = resolveLock(context, layers, flip)
  const machines = resolveMachines(context, said(layers, 'machines'))
  const well = said(layers, 'well')
  const surface = said(layers, 'surface')
  const length = (key: 'gap' | 'front clearance' | 'rear clearance' | 'turning clearance') => said(layers, key)
  const sizes = {
    well:
      well === undefined || well.value === 'auto'
        ? 'auto'
        : (context.length(well, { aboveZero: true, kind: 'well' }) ?? 'auto'),
    surface: surface === undefined ? 'level' : (context.length(surface, { aboveZero: true }) ?? 'level'),
    gap: context.lengthOr(length('gap'), DEFAULTS.platformGap, { aboveZero: true }),
    frontClearance: context.lengthOr(length('front clearance'), 0),
    rearClearance: context.lengthOr(length('rear clearance'), 0),
    turningClearance: context.lengthOr(length('turning clearance'), DEFAULTS.turningClearance),
    step: context.default(DEFAULTS.wellStep),
  } as const
  if (skin === undefined || core === undefined || machines === undefined) return undefined
  return { skin, core, axle, screws, lock, ...sizes, machines, at: flip.path }
}

const BARS = { mm: ['axle 12', 'axle 16', 'axle 20'], in: ['axle 1/2 in', 'axle 5/8 in', 'axle 3/4 in'] } as const

/** As named, or the thickest bar of the usual sizes that the core takes; the thinnest where it takes none. */
function resolveAxle(context: Context, axle: Said<string> | undefined, core: Stock | undefined): Axle {
  const named =
    axle === undefined || axle.value === 'auto' ? undefined : itemNamed(context, axle, ['axle'], ['auto'], 'axle')
  if (named !== undefined) return named
  const bars = BARS[context.usual].map((id) => usualItem(context, 'axle', id))
  const fitting = bars.filter((bar) => core === undefined || bar.coreLeast <= thinnest(core) + NOISE_MM)
  return fitting.at(-1) ?? usualItem(context, 'axle', BARS[context.usual][0])
}

/** Of all readings: there the axle has the least room. */
const thinnest = (stock: Stock): number => Math.min(...stock.readings)

const SCREWS = {
  mm: ['screw 3.5x25', 'screw 3.5x30', 'screw 4.5x45', 'screw 5x50'],
  in: ['screw #6x1', 'screw #6x1-1/4', 'screw #8x1-3/4'],
} as const
const SCREW_KINDS = ['through screw', 'one-piece screw'] as const

/** Of the core, left below the tip of a pilot that goes 1 mm deeper than its screw, mm; as the check of bores asks. */
const BELOW_SCREW_MM = 4

/** As named, or the longest of the usual sizes that stays inside the core; the shortest where none does. */
function resolveScrews(
  context: Context,
  screws: Said<string> | undefined,
  skin: Stock | undefined,
  core: Stock | undefined,
): JointScrew {
  const named =
    screws === undefined || screws.value === 'auto'
      ? undefined
      : itemNamed(context, screws, SCREW_KINDS, ['auto'], 'screw')
  if (named !== undefined) return named
  const all = SCREWS[context.usual].map((id) => usualItem(context, 'through screw', id))
  const room = skin === undefined || core === undefined ? 0 : skin.thickness + core.thickness - BELOW_SCREW_MM
  return (
    all.filter((screw) => screw.length <= room + NOISE_MM).at(-1) ??
    usualItem(context, 'through screw', SCREWS[context.usual][0])
  )
}

function resolveLock(context: Context, layers: Layers<RawFlip>, flip: Said<unknown>): FlipSpec['lock'] {
  const whole = said(layers, 'locking bolts')
  const own = asLayers<RawLock>([whole], 'item')
  const name = said(own, 'item')
  const usual = context.usual === 'in' ? 'locking bolt 5/16 in' : 'locking bolt M8'
  return {
    item: (name && itemNamed(context, name, ['locking bolt'])) ?? usualItem(context, 'locking bolt', usual),
    eachSide: said(own, 'each side')?.value ?? 2,
    edgeDistance: context.lengthOr(said(own, 'edge distance'), DEFAULTS.lockEdge, { aboveZero: true }),
    at: whole?.path ?? flip.path,
  }
}

/** Both machines; `undefined` when the size of one cannot be told, which is reported. */
function resolveMachines(context: Context, machines: Said<unknown> | undefined): FlipSpec['machines'] | undefined {
  const one = (key: 'upper' | 'lower'): MachineSpec | undefined | 'unknown' => {
    const raw = machines !== undefined && isGroup(machines.value) ? machines.value[key] : undefined
    if (machines === undefined || raw === undefined) return undefined
    return resolveMachine(context, { value: raw, path: [...machines.path, key] }, `${key} machine`) ?? 'unknown'
  }
  const upper = one('upper')
  const lower = one('lower')
  return upper === 'unknown' || lower === 'unknown' ? undefined : { upper, lower }
}

function resolveMachine(context: Context, machine: Said<unknown>, usualName: string): MachineSpec | undefined {
  const layers = layersOf<RawMachine>([machine])
  const size = (key: 'width' | 'depth' | 'height') => context.length(said(layers, key), { aboveZero: true })
  const [width, depth, height] = [size('width'), size('depth'), size('height')]
  const from = said(layers, 'off centre')
  const offCentre = { right: shift(context, from, 'right', 'left'), rear: shift(context, from, 'rear', 'front') }
  if (width === undefined || depth === undefined || height === undefined) return undefined
  return {
    name: printable(said(layers, 'name')?.value ?? '').trim() || usualName,
    width,
    depth,
    height,
    mass: said(layers, 'mass')?.value,
    offCentre,
    at: machine.path,
  }
}

/** A shift along one axis, mm: one of two opposite ways, never both. */
function shift(
  context: Context,
  from: Said<unknown> | undefined,
  plus: 'right' | 'rear',
  minus: 'left' | 'front',
): number {
  const layers = layersOf<Record<string, number | string>>([from])
  const [ahead, back] = [said(layers, plus), said(layers, minus)]
  if (ahead !== undefined && back !== undefined) {
    context.report(back.path, `a machine does not stand to the ${plus} and to the ${minus}`, {
      expected: `${plus} or ${minus}, not both`,
      on: 'key',
    })
  }
  return context.lengthOr(ahead, 0) - context.lengthOr(back, 0)
}
