import fc from 'fast-check'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const joint = fc.constantFrom('one-piece screw', 'through screw', 'dowel', 'pocket screw')

/** Raw `base` keys: every way to stand, by the rule or with sizes of its own. */
export const anyBase = fc.oneof(
  fc.constantFrom(
    'none',
    { casters: 'caster 75' },
    { casters: 'levelling caster 50' },
    { casters: 'caster 75', 'fixed casters': 'fixed caster 75', 'fixed at': 'left' },
    { casters: 'caster 100', 'fixed casters': 'fixed caster 100', 'fixed at': 'right' },
    { casters: 'caster 3 in', 'fixed casters': 'fixed caster 3 in', 'fixed at': 'back' },
    { casters: 'caster 75', inset: '90 mm', 'fixed casters': 'fixed caster 100', 'fixed at': 'back' },
  ),
  fc.record(
    { feet: fc.constantFrom('foot M8', 'foot M10', 'foot M10 insert', 'foot 3/8 in'), inset: tenths(30, 80) },
    { requiredKeys: ['feet'] },
  ),
  fc.record({
    plinth: fc.record(
      {
        height: tenths(60, 150),
        stock: fc.constantFrom('board', 'thick'),
        'front recess': tenths(30, 80),
        'side recess': tenths(0, 60),
        'back recess': tenths(0, 60),
        joint,
        fix: fc.constantFrom('through screw', 'one-piece screw', 'pocket screw', {
          fasten: 'dowel',
          spacing: '120 mm',
        }),
      },
      { requiredKeys: ['height'] },
    ),
  }),
)

/** Raw keys of a carcase that has rails for a top. */
export const railedTop = fc.record({
  top: fc.constant('rails'),
  rails: fc.record({ width: tenths(60, 150), stock: fc.constantFrom('board', 'thick'), joint }, { requiredKeys: [] }),
})

/** Raw `stretchers` that do not meet each other: at most one at each end under the top, and one low down. */
export const anyStretchers = fc
  .record({
    front: fc.boolean(),
    width: tenths(60, 120),
    stock: fc.constantFrom('board', 'thick'),
    joint,
    low: tenths(80, 250),
  })
  .map(({ front, width, stock, joint: fasten, low }) => [
    { at: 'back', width, stock, joint: fasten },
    { at: front ? 'front' : 'back', height: low, width: '60 mm' },
  ])

const edges = fc.oneof(
  fc.constant('all'),
  fc.uniqueArray(fc.constantFrom('front', 'back', 'left', 'right', 'top', 'bottom'), { minLength: 1, maxLength: 4 }),
)

/** Raw `lipping` on panels that every module of the property tests has. */
export const anyLipping = fc.array(
  fc.record(
    {
      thickness: fc.constantFrom('0.4 mm', '0.6 mm', '1 mm', '2 mm', '6 mm', '1/8 in'),
      edges,
      on: fc.uniqueArray(fc.constantFrom('sides', 'bottom', 'all', 'left side', 'carcase'), {
        minLength: 1,
        maxLength: 3,
      }),
      'take off from': fc.constantFrom('0.5 mm', '1 mm'),
    },
    { requiredKeys: ['thickness', 'edges', 'on'] },
  ),
  { minLength: 1, maxLength: 3 },
)

const back = fc.constantFrom(
  'none',
  { sits: 'applied', stock: 'thin' },
  { sits: 'applied', stock: 'board' },
  { sits: 'grooved', stock: 'thin' },
  { sits: 'rebated', stock: 'thin' },
  { sits: 'inset', stock: 'board', recess: '10 mm' },
)

const insides = fc.constantFrom(
  {},
  { front: { kind: 'pair' } },
  { 'side by side': [{}, { front: { kind: 'door' } }] },
  { 'side by side': [{ front: { kind: 'door' } }, {}, { front: { kind: 'door', lay: 'inset' } }] },
)

/** Definitions of one module on any base, with rails or a whole top, stretchers and lippings. */
export const anyStanding = fc
  .record({
    base: anyBase,
    top: fc.oneof(railedTop, fc.constantFrom({ top: 'over' }, { top: 'between' })),
    bottom: fc.constantFrom('over', 'between'),
    back,
    stretchers: fc.option(anyStretchers, { nil: undefined }),
    inside: insides,
    lipping: fc.option(anyLipping, { nil: undefined }),
    width: tenths(600, 1900),
    depth: tenths(450, 650),
    height: fc.record({ of: fc.constantFrom('carcase height', 'working height'), mm: tenths(700, 950) }),
    thickness: tenths(16, 20),
  })
  .map((one) => {
    const { base, top, bottom, stretchers, lipping, width, depth, height, thickness } = one
    // Stretchers stand in a carcase that is not split side by side.
    const inside = stretchers === undefined ? one.inside : {}
    return JSON.stringify({
      storyrod: 1,
      stock: {
        board: { thickness, sheet: [3000, 2000] },
        thick: { thickness: '22 mm', sheet: [3000, 2000] },
        thin: { thickness: '6 mm', sheet: [3000, 2000] },
      },
      modules: {
        box: {
          width,
          depth,
          [height.of]: height.mm,
          stock: 'board',
          base,
          carcase: { ...top, bottom, back: one.back, ...(stretchers && { stretchers }) },
          ...(lipping && { lipping }),
          inside,
        },
      },
    })
  })
