import fc from 'fast-check'

/** Lengths in whole tenths of a millimetre, so that counterexamples read well, with their unit, so that any project takes them. */
const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const joint = fc.oneof(
  fc.constantFrom('one-piece screw', 'through screw', 'dowel', 'pocket screw', 'screw 5x50', 'housing'),
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

const pins = fc.record(
  {
    item: fc.constantFrom('pin 5', 'pin 1/4 in'),
    pitch: fc.constantFrom('25 mm', '1 in', '31.75 mm', '32 mm', '64 mm'),
    datum: tenths(0, 32),
    'front setback': tenths(30, 60),
    'rear setback': tenths(30, 60),
    'keep clear': tenths(40, 90),
    'both faces': fc.constantFrom('share', 'stagger'),
  },
  { requiredKeys: [] },
)

const looseShelves = fc.oneof(fc.constantFrom(1, 2, 3), fc.record({ count: fc.constantFrom(1, 2), pins }))

const anyFront = fc.record({
  kind: fc.constantFrom('door', 'pair'),
  hang: fc.constantFrom('left', 'right'),
  lay: fc.constantFrom('overlay', 'inset'),
  reveal: tenths(1, 3),
  gap: tenths(2, 4),
  'inset gap': tenths(1.5, 3),
  pull: fc.constantFrom('none', { item: 'pull 128', end: 'middle' }, { item: 'knob' }),
  cover: fc.constantFrom('auto', 'full', 'half', { left: 'half' }),
  hinges: fc.constantFrom('auto', 2, 3),
})

type AnyFront = typeof anyFront extends fc.Arbitrary<infer T> ? T : never

/** A front with the keys that mean something for its kind and lay. */
function sensible(one: AnyFront): Record<string, unknown> {
  const { kind, hang, lay, reveal, gap, pull, cover, hinges } = one
  return {
    kind,
    lay,
    gap,
    pull,
    hinges,
    ...(kind === 'door' && { hang }),
    ...(lay === 'inset' ? { 'inset gap': one['inset gap'] } : { reveal, cover }),
  }
}

const front = anyFront.map(sensible)
const pair = anyFront.map((one) => sensible({ ...one, kind: 'pair' }))

const leaf = fc.record({ 'loose shelves': looseShelves, front }, { requiredKeys: [] })
const plainLeaf = fc.record({ 'loose shelves': looseShelves }, { requiredKeys: [] })

/** An inside with at most one split in each direction; fronts on leaves, or one over all. */
const inside = fc.oneof(
  leaf,
  fc.record({
    dividers: fc.record({ joint, stock: fc.constantFrom('board', 'thick') }),
    'side by side': fc.array(leaf, { minLength: 2, maxLength: 2 }),
  }),
  fc.record({ dividers: fc.record({ joint }), stacked: fc.array(leaf, { minLength: 2, maxLength: 2 }) }),
  fc.record({ 'side by side': fc.tuple(leaf, fc.record({ stacked: fc.array(leaf, { minLength: 2, maxLength: 2 }) })) }),
  fc.record({ front, 'side by side': fc.array(plainLeaf, { minLength: 2, maxLength: 2 }) }),
)

const back = fc.oneof(
  fc.constant('none'),
  fc.record({ sits: fc.constantFrom('applied', 'between sides', 'grooved', 'rebated'), stock: fc.constant('thin') }),
  fc.record({ sits: fc.constant('between sides'), stock: fc.constant('board') }),
  fc.record({ sits: fc.constant('inset'), stock: fc.constant('board'), recess: tenths(0, 20) }),
)

const carcase = fc
  .record({
    top: fc.constantFrom('over', 'between', 'none'),
    bottom: fc.constantFrom('over', 'between'),
    joint,
    back,
  })
  .map((one) => {
    // A back between the sides needs a top or bottom there.
    const stands = one.top === 'between' || one.bottom === 'between'
    const between = typeof one.back === 'object' && one.back.sits === 'between sides'
    return between && !stands ? { ...one, bottom: 'between' } : one
  })

/** A module that has no part on one hand only, so that its left half must mirror its right half. */
export const evenModule = fc.record({
  width: tenths(500, 1000),
  carcase,
  inside: fc.record({ 'loose shelves': looseShelves, front: pair }, { requiredKeys: [] }),
})

const anyModule = fc.record({ width: tenths(900, 1400), carcase, inside })

const stock = fc.record({
  board: fc.record({
    thickness: fc.oneof(tenths(16, 22), fc.array(tenths(17.5, 18.5), { minLength: 1, maxLength: 3 })),
  }),
  thick: fc.record({ thickness: tenths(20, 25) }),
  thin: fc.record({ thickness: tenths(5, 9) }),
})

function definition(
  modules: fc.Arbitrary<Record<string, unknown>>,
  joined: fc.Arbitrary<boolean>,
): fc.Arbitrary<string> {
  return fc
    .record({
      stock,
      depth: tenths(450, 650),
      heights: fc.array(tenths(700, 900), { minLength: 3, maxLength: 3 }),
      modules: fc.array(modules, { minLength: 1, maxLength: 3 }),
      joined,
      units: fc.constantFrom('mm', 'in'),
      height: fc.constantFrom('carcase height', 'working height'),
      join: fc.constantFrom(
        'bolted',
        { bolt: 'bolt M8' },
        { bolt: 'bolt 1/4 in', 'end inset': '90 mm', 'side inset': '70 mm' },
      ),
      base: fc.constantFrom(
        'none',
        { casters: 'caster 75' },
        { casters: 'caster 100', inset: '110 mm' },
        { casters: 'caster 3 in' },
      ),
    })
    .map((parts) => {
      const names = parts.modules.map((_, k) => `module ${k + 1}`)
      return JSON.stringify({
        storyrod: 1,
        units: parts.units,
        stock: parts.stock,
        common: { depth: parts.depth, stock: 'board', base: parts.base },
        modules: Object.fromEntries(
          parts.modules.map((one, k) => [names[k], { [parts.height]: parts.heights[k], ...one }]),
        ),
        ...(names.length > 1 && { 'floor plan': [{ row: names, join: parts.joined ? parts.join : 'none' }] }),
      })
    })
}

/**
 * Definitions (JSON is YAML) of one to three modules in a row, metric or inch, over every lap, back, joint, front, base and
 * way of pinning that the engine builds; bays are split at most twice.
 */
export const anyDefinition = definition(anyModule, fc.boolean())

/** Definitions whose modules are the same on both hands and not joined. */
export const evenDefinition = definition(evenModule, fc.constant(false))
