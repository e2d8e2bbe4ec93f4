import fc from 'fast-check'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const shape = fc.oneof(
  fc.record({ shape: fc.constant('round'), diameter: tenths(5, 150) }),
  fc.record({
    shape: fc.constant('slot'),
    length: tenths(61, 200),
    width: tenths(5, 60),
    turn: fc.constantFrom(0, 90),
  }),
  fc.record({
    shape: fc.constant('rectangle'),
    width: tenths(20, 300),
    height: tenths(20, 200),
    'corner radius': tenths(0, 10),
    turn: fc.constantFrom(0, 90),
  }),
  fc.record({
    shape: fc.constant('path'),
    unit: fc.constantFrom('mm', 'px'),
    scale: fc.constantFrom(0.5, 1, 2.25),
    svg: fc.constantFrom(
      'M0 0 H60 V30 H10 V80 H0 Z',
      'M0 0 H90 V30 H40 Q 30 80 0 80 Z',
      'M0 0 A30 30 0 1 1 0 40 L-10 20 Z',
      '<svg><g transform="rotate(30) scale(2 1)"><ellipse rx="40" ry="25"/></g></svg>',
    ),
    turn: fc.constantFrom(0, 90),
  }),
)

const distance = fc.oneof({ weight: 4, arbitrary: tenths(20, 400) }, { weight: 1, arbitrary: fc.constant('centred') })

/** Panels of every module of `openedDefinition`, with the edges and faces that they have. */
const PANELS = [
  { panel: 'left side', along: ['front', 'back'], up: ['top', 'bottom'], faces: ['inside', 'outside'] },
  { panel: 'right side', along: ['front', 'back'], up: ['top', 'bottom'], faces: ['inside', 'outside'] },
  { panel: 'back', along: ['left', 'right'], up: ['top', 'bottom'], faces: ['inside', 'outside'] },
  { panel: 'bottom', along: ['left', 'right'], up: ['front', 'back'], faces: ['inside', 'outside'] },
  { panel: 'shelf 1', along: ['left', 'right'], up: ['front', 'back'], faces: ['upper face', 'underside'] },
  { panel: 'door left', along: ['left', 'right'], up: ['top', 'bottom'], faces: ['hidden face', 'show face'] },
]

/** Keys of one opening, in a panel that a module with a shelf behind a pair of doors has; whether it fits there is left open. */
export const anyOpening: fc.Arbitrary<Record<string, unknown>> = fc
  .record({
    shape,
    where: fc.constantFrom(...PANELS),
    sides: fc.tuple(fc.integer({ min: 0, max: 1 }), fc.integer({ min: 0, max: 1 })),
    from: fc.tuple(distance, distance),
    centred: fc.boolean(),
    depth: fc.oneof(fc.constant('through'), tenths(1, 20)),
    face: fc.integer({ min: 0, max: 1 }),
  })
  .map(({ shape, where, sides, from, centred, depth, face }) => ({
    panel: where.panel,
    ...shape,
    from: centred ? 'centred' : { [where.along[sides[0]] ?? '']: from[0], [where.up[sides[1]] ?? '']: from[1] },
    ...(depth !== 'through' && { depth, face: where.faces[face] }),
  }))

/** Definitions of one module, metric or inch, with a shelf behind a pair of doors and up to five openings. */
export const openedDefinition: fc.Arbitrary<string> = fc
  .record({
    units: fc.constantFrom('mm', 'in'),
    width: tenths(600, 1000),
    depth: tenths(450, 650),
    height: tenths(700, 900),
    openings: fc.array(anyOpening, { minLength: 1, maxLength: 5 }),
  })
  .map(({ units, width, depth, height, openings }) =>
    JSON.stringify({
      storyrod: 1,
      units,
      stock: { board: { thickness: '18 mm' } },
      modules: {
        bench: {
          width,
          depth,
          'carcase height': height,
          stock: 'board',
          inside: { 'loose shelves': 1, front: { kind: 'pair' } },
          openings,
        },
      },
    }),
  )
