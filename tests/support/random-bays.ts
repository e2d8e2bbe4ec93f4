import fc from 'fast-check'
import { drawersBehindDoor, drawersOfBay } from './random-drawers.ts'
import { rawFront } from './random-fronts.ts'

/** Lengths in whole tenths of a millimetre, with their unit. */
const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

export type Raw = Record<string, unknown>

/** Clear sizes that a bay has about, mm; how far a bay's contents can be legal is judged by them, on the safe side. */
export interface Clear {
  readonly width: number
  readonly height: number
}

/** Joints of every kind for boards of 15 to 26 mm; cams suit the board of the project alone. */
export const anyJoint: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom('one-piece screw', 'through screw', 'dowel', 'pocket screw', 'screw 5x50', 'housing'),
  fc.constantFrom('cam and dowel', { fasten: 'cam and dowel', dowel: 'none', spacing: '200 mm' }),
  fc.record({
    fasten: fc.constantFrom('one-piece screw', 'dowel', 'pocket screw'),
    'end distance': tenths(30, 90),
    spacing: tenths(60, 250),
  }),
  fc.record({
    fasten: fc.constant('housing'),
    depth: tenths(4, 8),
    'stop front': tenths(0, 30),
    'stop rear': tenths(0, 20),
  }),
)

export const isCam = (joint: unknown): boolean => JSON.stringify(joint ?? '').includes('cam and dowel')

const pins = fc.record(
  {
    item: fc.constantFrom('pin 5', 'pin 1/4 in', 'pin 3'),
    pitch: fc.constantFrom('25 mm', '1 in', '31.75 mm', '32 mm', '64 mm'),
    datum: tenths(0, 32),
    'front setback': tenths(30, 60),
    'rear setback': tenths(30, 60),
    'keep clear': tenths(40, 90),
    'both faces': fc.constantFrom('share', 'stagger'),
  },
  { requiredKeys: [] },
)

const looseShelves = fc.oneof(
  fc.constantFrom(1, 2, 3),
  fc.record({ count: fc.constantFrom(1, 2), pins }),
  fc.record({
    count: fc.constant(1),
    clearance: tenths(0.5, 3),
    'front setback': tenths(0, 40),
    'rear gap': tenths(0, 9),
  }),
)

/** Doors and pairs with the choices that `rawFront` leaves to the rule. */
const hungFront = fc
  .record({
    front: rawFront,
    cover: fc.constantFrom('auto', 'auto', 'full', 'half', { left: 'half' }),
    hinges: fc.constantFrom('auto', 2, 3),
    pull: fc.constantFrom('none', { item: 'pull 128', end: 'middle' }, { item: 'knob' }),
    own: fc.boolean(),
  })
  .map(({ front, cover, hinges, pull, own }) => ({
    ...front,
    hinges,
    pull,
    ...(front.lay === 'overlay' && { cover }),
    ...(front.lay === 'overlay' && own && { hinge: 'hinge 35 full' }),
  }))

const anyFront: fc.Arbitrary<Raw> = fc.tuple(rawFront, hungFront, fc.boolean()).map(([plain, hung, rich]) => {
  const kind = (hung as Raw).kind
  return rich && (kind === 'door' || kind === 'pair') ? hung : plain
})

/** All that a bay may hold, before what cannot be together is taken out. */
const contents = fc.record(
  { front: anyFront, shelves: looseShelves, drawers: drawersOfBay, inner: drawersBehindDoor },
  { requiredKeys: [] },
)
const own = fc
  .tuple(fc.constantFrom('nothing', 'front', 'shelves', 'both', 'drawers', 'inner'), contents)
  .map(([wish, all]): Raw => ({ wish, ...all }))

const dividers = fc.record({ joint: anyJoint, stock: fc.constantFrom('board', 'board', 'thick') }, { requiredKeys: [] })

/** Trees of wishes, at most so many levels deep, two or three bays to a split. */
function wishes(levels: number): fc.Arbitrary<Raw> {
  const share = fc.constantFrom(1, 1.5, 2)
  if (levels === 0) return fc.record({ share, own })
  const bays = fc.array(wishes(levels - 1), { minLength: 2, maxLength: levels > 2 ? 2 : 3 })
  return fc.oneof(
    fc.record({ share, own }),
    fc.record({
      share,
      own,
      fronted: fc.nat(5),
      direction: fc.constantFrom('side by side', 'stacked'),
      bays,
      dividers,
    }),
  )
}

interface Around extends Clear {
  readonly behind: boolean
  /** No drawers: a fixed front lies before it. */
  readonly shut: boolean
  /** The carcase has no top, or bottom, that a flap could hang from there. */
  readonly openAbove: boolean
  readonly openBelow: boolean
  readonly outermost: boolean
}

const FRONT_LEAST_MM = 120

/** A front where one may be; smaller openings go without. */
function frontOf(raw: unknown, around: Around): Raw {
  const front = raw as Raw | undefined
  if (front === undefined || around.behind || around.width < FRONT_LEAST_MM || around.height < FRONT_LEAST_MM) return {}
  const { kind, hang, pull } = front
  const hangless = kind === 'flap' && (hang === 'top' ? around.openAbove : around.openBelow)
  if (hangless || (kind === 'pair' && around.width < 2 * FRONT_LEAST_MM)) return {}
  const small = around.height < 300 || around.width < 200
  const modest = { ...front, ...('hinges' in front && { hinges: 'auto' }), ...(pull !== undefined && { pull: 'none' }) }
  return { front: small ? modest : front }
}

/** What a bay that is not split holds, as far as it is legal together and has room. */
function leafOf(wish: Raw, around: Around): Raw {
  const has = (...words: string[]): boolean => words.includes(wish.wish as string)
  const front = has('front', 'both', 'inner') ? frontOf(wish.front, around) : {}
  const kind = (front.front as Raw | undefined)?.kind
  const behind = around.behind || kind !== undefined
  const roomy = around.width > 280 && around.height > 330 && !around.shut && kind !== 'fixed'
  if (has('drawers', 'inner') && roomy) {
    const drawers = behind ? wish.inner : has('drawers') ? wish.drawers : undefined
    if (drawers !== undefined) return { ...front, drawers }
  }
  const shelves = has('shelves', 'both') && around.height > 90 && around.width > 60 ? wish.shelves : undefined
  return { ...front, ...(shelves !== undefined && { 'loose shelves': shelves }) }
}

const THICKEST_MM = 26

/** A bay as a definition may have it, from a tree of wishes. */
function bayOf(wish: Raw, around: Around): Raw {
  const share = around.outermost ? {} : { share: wish.share }
  const bays = wish.bays as Raw[] | undefined
  const beside = wish.direction === 'side by side'
  if (bays === undefined || (beside ? around.width : around.height) < bays.length * 110) {
    return { ...share, ...leafOf(wish.own as Raw, around) }
  }
  // Most openings that are split have no front of their own, so that those in them may have some.
  const front = wish.fronted === 0 ? frontOf((wish.own as Raw).front, around) : {}
  const shut = around.shut || (front.front as Raw | undefined)?.kind === 'fixed'
  const inner = { ...around, behind: around.behind || 'front' in front, shut, outermost: false }
  const whole = (beside ? around.width : around.height) - (bays.length - 1) * THICKEST_MM
  const shares = bays.reduce((sum, bay) => sum + (bay.share as number), 0)
  const children = bays.map((bay, k) => {
    const size = (whole * (bay.share as number)) / shares
    if (beside) return bayOf(bay, { ...inner, width: size })
    const [openAbove, openBelow] = [around.openAbove && k === 0, around.openBelow && k === bays.length - 1]
    return bayOf(bay, { ...inner, height: size, openAbove, openBelow })
  })
  return { ...share, ...front, ...dividersOf(wish.dividers), [beside ? 'side by side' : 'stacked']: children }
}

function dividersOf(raw: unknown): Raw {
  const { joint, stock } = raw as Raw
  const words = { ...(joint !== undefined && { joint }), ...(stock !== undefined && !isCam(joint) && { stock }) }
  return Object.keys(words).length === 0 ? {} : { dividers: words }
}

/** The raw `inside` of a module, given its clear sizes and whether its carcase lacks a top or bottom. */
export type Inside = (clear: Clear & { readonly openAbove: boolean; readonly openBelow: boolean }) => Raw

const madeFor =
  (wish: Raw): Inside =>
  (clear) =>
    bayOf(wish, { ...clear, behind: false, shut: false, outermost: true })

/** Insides in trees of bays up to so many levels deep, with fronts of all kinds, drawers and loose shelves. */
export const anyInside = (levels: number): fc.Arbitrary<Inside> => wishes(levels).map(madeFor)

const evenFront = anyFront.map((front): Raw => {
  const { hang, ...rest } = front
  if (front.kind === 'door') return { ...rest, kind: 'pair' }
  if (front.kind !== 'flap') return rest
  return front.stay === 'auto' ? { ...front, stays: 'both' } : front
})

const evenOwn = own.map((wish): Raw => {
  const { front, ...rest } = wish
  return rest
})

const evenLeaf = fc.tuple(evenOwn, evenFront).map(
  ([wish, front]): Raw => ({
    share: 1,
    own: { ...wish, front: front.cover === undefined ? front : { ...front, cover: 'auto' } },
  }),
)

/** Of three bays, the outer ones are alike and hang at the sides; a door looks to its own hand. */
const evenThree = fc
  .record({ outer: rawFront, shelves: fc.boolean(), middle: evenLeaf, dividers })
  .map(({ outer, shelves, middle, dividers: between }): Raw => {
    const { fix, stay, stays, hang, ...front } = outer
    const wing = (side: 'left' | 'right'): Raw => ({
      share: 1,
      own: {
        wish: shelves ? 'both' : 'front',
        shelves: 1,
        front: {
          pull: 'none',
          ...front,
          kind: 'door',
          hang: side,
          ...(front.lay === 'inset' && { 'inset gap': '2 mm', gap: '3 mm' }),
        },
      },
    })
    return {
      share: 1,
      own: { wish: 'nothing' },
      fronted: 1,
      direction: 'side by side',
      dividers: between,
      bays: [wing('left'), middle, wing('right')],
    }
  })

/** Insides that are alike on both hands, with the parts of `anyInside`. */
export const evenInside: fc.Arbitrary<Inside> = fc
  .oneof(
    evenLeaf,
    evenThree,
    fc.record({
      share: fc.constant(1),
      own: evenLeaf.map((leaf) => leaf.own),
      fronted: fc.nat(3),
      direction: fc.constant('stacked'),
      dividers,
      bays: fc.array(evenLeaf, { minLength: 2, maxLength: 3 }),
    }),
  )
  .map(madeFor)
