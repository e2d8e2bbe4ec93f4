import fc from 'fast-check'
import { anyBase, anyLipping, anyStretchers, railedTop } from './random-base.ts'
import { anyJoint, type Inside, isCam, type Raw } from './random-bays.ts'
import { flipOverTop } from './random-flip.ts'
import { anyOpening } from './random-openings.ts'
import { machineTopKeys, worktopKeys } from './random-tops.ts'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const back = fc.oneof(
  fc.constant('none'),
  fc.record({ sits: fc.constantFrom('applied', 'between sides', 'grooved', 'rebated'), stock: fc.constant('thin') }),
  fc.record({ sits: fc.constant('applied'), stock: fc.constant('thin'), margin: tenths(0, 4) }),
  fc.record({ sits: fc.constantFrom('applied', 'between sides'), stock: fc.constant('board') }),
  fc.record({ sits: fc.constant('inset'), stock: fc.constant('board'), recess: tenths(0, 20) }),
)

const carcase = fc.record({
  top: fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom<Raw>({ top: 'over' }, { top: 'between' }) },
    { weight: 1, arbitrary: fc.constant<Raw>({ top: 'none' }) },
    { weight: 2, arbitrary: railedTop },
  ),
  bottom: fc.constantFrom('over', 'between', 'over', 'between', 'none'),
  joint: anyJoint,
  back,
  frontGap: fc.option(tenths(0, 4), { nil: undefined }),
  stretchers: fc.option(anyStretchers, { nil: undefined, freq: 2 }),
})

type Carcase = typeof carcase extends fc.Arbitrary<infer T> ? T : never

const whole = {
  carcase,
  width: fc.integer({ min: 4000, max: 16000 }),
  depth: fc.integer({ min: 4000, max: 7000 }),
  height: fc.integer({ min: 5000, max: 14000 }),
  of: fc.constantFrom('carcase height', 'working height'),
  base: fc.oneof(anyBase, anyBase, fc.constant('none')),
  lipping: fc.option(anyLipping, { nil: undefined, freq: 1 }),
  tops: fc.record({ worktop: worktopKeys, machine: machineTopKeys, flip: flipOverTop }),
  topped: fc.constantFrom('nothing', 'nothing', 'worktop', 'machine', 'flip'),
}

/** One module before what cannot be together is taken out. */
export interface Wish {
  readonly carcase: Carcase
  /** Tenths of a millimetre. */
  readonly width: number
  readonly depth: number
  readonly height: number
  readonly of: string
  readonly base: unknown
  readonly lipping: readonly Raw[] | undefined
  readonly tops: { readonly worktop: Raw; readonly machine: Raw; readonly flip: Raw }
  readonly topped: string
  readonly inside: Inside
  readonly openings: readonly Raw[]
}

/** Modules of all kinds, with those insides and openings. */
export const anyWish = (inside: fc.Arbitrary<Inside>): fc.Arbitrary<Wish> =>
  fc.record({
    ...whole,
    inside,
    openings: fc.oneof(
      { weight: 3, arbitrary: fc.constant<Raw[]>([]) },
      { weight: 1, arbitrary: fc.array(anyOpening, { minLength: 1, maxLength: 2 }) },
    ),
  })

/** Modules with no part on one hand only. */
export const evenWish = (inside: fc.Arbitrary<Inside>): fc.Arbitrary<Wish> =>
  fc.record({ ...whole, inside, openings: fc.constant<Raw[]>([]) }).map((wish) => ({
    ...wish,
    base: JSON.stringify(wish.base).includes('fixed at') ? 'none' : wish.base,
    lipping: wish.lipping?.map((one) => ({ ...one, edges: 'all', on: ['sides', 'carcase'] })),
    tops: { ...wish.tops, machine: evenMachine(wish.tops.machine), worktop: evenOverhang(wish.tops.worktop) },
  }))

/** The overhang of both hands as that of the left, or of neither. */
function evenOverhang(top: Raw): Raw {
  const { overhang } = top
  if (typeof overhang !== 'object' || overhang === null) return top
  const { left = '0 mm', front = '0 mm' } = overhang as Raw
  return { ...top, overhang: { left, right: left, front } }
}

/** Insert and port in the middle, and slots that run the whole width. */
function evenMachine(top: Raw): Raw {
  const centred = (raw: unknown): unknown =>
    raw === undefined ? undefined : { ...(raw as Raw), 'from left': 'centred' }
  const { insert, slots, chamber, ...rest } = evenOverhang(top)
  const room = chamber as Raw | undefined
  const level = (slots as Raw[] | undefined)?.filter((slot) => slot.along === 'width' && slot.length === undefined)
  return {
    ...rest,
    ...(insert !== undefined && { insert: centred(insert) }),
    ...(level !== undefined && { slots: level }),
    ...(room !== undefined && { chamber: room.port === undefined ? room : { ...room, port: centred(room.port) } }),
  }
}

const mm = (tenth: number): string => `${tenth / 10} mm`

/** The raw keys of a module without openings whose parts can be together; `covered`: a worktop over its row. */
export function moduleOf(wish: Wish, covered: boolean): Raw {
  const topped = covered ? 'nothing' : wish.topped
  const flip = topped === 'flip'
  const machine = topped === 'machine'
  const height = flip ? Math.max(wish.height, 12500) : machine ? Math.max(wish.height, 9000) : wish.height
  const width = machine ? Math.max(wish.width, 6500) : wish.width
  const depth = machine ? Math.max(wish.depth, 5600) : wish.depth
  const laps = lapsOf(wish, { flip, covered, based: wish.base !== 'none' })
  const [openAbove, openBelow] = [laps.top === 'none', laps.bottom === 'none']
  // By half the height at most: base, tops, wells and chambers.
  const taken = (flip ? 750 : machine ? 400 : 100) + (wish.of === 'working height' ? 200 : 0)
  const clear = { width: width / 10 - 50, height: height / 10 - taken, openAbove, openBelow }
  const inside = wish.inside(clear)
  return {
    width: mm(width),
    depth: mm(depth),
    [wish.of]: mm(height),
    base: wish.base === 'none' ? 'none' : plinthSuits(wish.base, wish.carcase.joint),
    carcase: { ...carcaseOf(wish, laps), ...stretchersOf(wish, laps, inside, flip || machine) },
    ...(wish.lipping !== undefined && { lipping: wish.lipping }),
    ...(topped === 'worktop' && { worktop: worktopOn(wish.tops.worktop, laps.top) }),
    ...(machine && { 'machine top': machineOn(wish, laps.top) }),
    ...(flip && { 'flip-over top': wish.tops.flip }),
    inside,
    ...(wish.openings.length > 0 && { openings: wish.openings }),
  }
}

interface Laps {
  readonly top: string
  readonly bottom: string
  readonly sits: string
}

/** Something holds the sides together, bases have a bottom, a back between the sides has something to be screwed to. */
function lapsOf(wish: Wish, on: { readonly flip: boolean; readonly covered: boolean; readonly based: boolean }): Laps {
  const { back: asked } = wish.carcase
  const sits = typeof asked === 'string' ? asked : asked.sits
  const wished = String(wish.carcase.top.top)
  const turned = on.flip && wished !== 'none' ? 'between' : wished
  const top = on.covered && turned === 'none' ? 'over' : turned
  const held = wish.carcase.bottom === 'none' && (on.based || top === 'none') ? 'over' : wish.carcase.bottom
  const bottom = sits === 'between sides' && top !== 'between' ? 'between' : held
  return { top, bottom, sits }
}

function carcaseOf({ carcase: raw }: Wish, { top, bottom }: Laps): Raw {
  const { joint, back: behind, frontGap } = raw
  const rails = top === 'rails' ? railsSuit(raw.top.rails, joint) : undefined
  return {
    top,
    bottom,
    joint,
    back: behind,
    ...(frontGap !== undefined && { 'front gap': frontGap }),
    ...(rails !== undefined && { rails }),
  }
}

/** Boards of another thickness than the carcase's do not take its cams. */
function railsSuit(raw: unknown, carcaseJoint: unknown): Raw {
  const { joint, ...rest } = (raw ?? {}) as Raw
  return { joint: isCam(carcaseJoint) ? 'dowel' : 'one-piece screw', ...rest, ...(joint !== undefined && { joint }) }
}

function plinthSuits(base: unknown, carcaseJoint: unknown): unknown {
  if (typeof base !== 'object' || base === null || !('plinth' in base) || !isCam(carcaseJoint)) return base
  return { plinth: { joint: 'dowel', ...(base.plinth as Raw) } }
}

/** Stretchers where the inside is not split and no inset front stands. */
function stretchersOf({ carcase: raw }: Wish, { bottom }: Laps, inside: Raw, low: boolean): Raw {
  const split = 'side by side' in inside || 'stacked' in inside
  const inset = JSON.stringify(inside).includes('"inset"')
  if (raw.stretchers === undefined || split || low || bottom === 'none') return {}
  return { stretchers: raw.stretchers.map((one) => (inset ? { ...one, at: 'back' } : one)) }
}

function worktopOn(top: Raw, lap: string): Raw {
  if (lap !== 'none') return top
  return { ...top, fix: top.fix === 'none' ? 'none' : 'pocket screw' }
}

function machineOn({ tops: { machine }, carcase: { back: behind } }: Wish, lap: string): Raw {
  const { fix, chamber, ...rest } = machine
  const { port, ...closed } = (chamber ?? {}) as Raw
  const room = behind === 'none' || port === undefined ? closed : { ...closed, port }
  return { ...rest, ...(lap === 'none' && { fix: 'pocket screw' }), ...(chamber !== undefined && { chamber: room }) }
}
