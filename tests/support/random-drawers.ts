import fc from 'fast-check'

/** Lengths in whole tenths of a millimetre, with their unit. */
const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

/** Stocks that random drawers name, besides `board` for the module. */
export const drawerStock = fc.record({
  'drawer ply': fc.record({ thickness: tenths(11.5, 15) }),
  'drawer bottom': fc.record({ thickness: fc.array(tenths(5.8, 6.9), { minLength: 1, maxLength: 3 }) }),
})

const stack = fc.oneof(
  fc.integer({ min: 1, max: 4 }),
  fc
    .array(fc.oneof(fc.record({ height: tenths(110, 150) }), fc.record({ share: fc.constantFrom(1, 2) })), {
      minLength: 1,
      maxLength: 2,
    })
    .map((places) => [...places, {}]),
)

const joint = fc.constantFrom('through screw', 'dowel', 'screw 3.5x25', { fasten: 'through screw', spacing: '60 mm' })

const box = fc
  .record({
    stock: fc.constantFrom('drawer ply', 'board'),
    'bottom stock': fc.constant('drawer bottom'),
    bottom: fc.constantFrom('grooved', 'applied'),
    'groove depth': tenths(4, 7),
    'groove height': tenths(8, 16),
    joint,
    'clearance above': tenths(6, 20),
    'clearance below': tenths(8, 20),
    behind: tenths(3, 20),
  })
  .map(({ 'groove depth': depth, 'groove height': height, ...rest }) =>
    rest.bottom === 'grooved' ? { ...rest, 'groove depth': depth, 'groove height': height } : rest,
  )

const fronts = fc
  .record({
    lay: fc.constantFrom('overlay', 'inset'),
    // Full covers over one shared panel are a finding.
    cover: fc.constantFrom('auto', 'half', { left: 'auto', top: 'half' }),
    reveal: tenths(1, 3),
    gap: tenths(2, 4),
    'inset gap': tenths(1.5, 3),
    pull: fc.constantFrom('none', { item: 'pull 128' }, { item: 'knob', 'edge distance': '50 mm' }),
  })
  .map(({ lay, cover, reveal, gap, pull, 'inset gap': inset }) =>
    lay === 'inset' ? { lay, gap, pull, 'inset gap': inset } : { lay, cover, reveal, gap, pull },
  )

/** The raw key `drawers` of an open bay, at least 330 high and 300 wide and deep. */
export const drawersOfBay = fc.record(
  { stack, slide: fc.constantFrom('auto', 'slide 250', 'slide 10 in'), box, fronts },
  { requiredKeys: ['stack'] },
)

/** The raw key `drawers` of a bay behind a door. */
export const drawersBehindDoor = fc.record(
  {
    stack: fc.integer({ min: 1, max: 3 }),
    fronts: fc.constant('none'),
    packing: fc.constantFrom('auto', 'board'),
    box,
  },
  { requiredKeys: ['stack', 'fronts'] },
)

const door = fc
  .record({
    kind: fc.constantFrom('door', 'pair'),
    hang: fc.constantFrom('left', 'right'),
    lay: fc.constantFrom('overlay', 'inset'),
  })
  .map(({ kind, hang, lay }) => (kind === 'door' ? { kind, hang, lay } : { kind, lay }))

const leaf = fc.oneof(
  fc.record({ drawers: drawersOfBay }),
  fc.record({ front: door, drawers: drawersBehindDoor }),
  fc.constant({}),
)

const inside = fc.oneof(
  leaf,
  fc.record({ 'side by side': fc.array(leaf, { minLength: 2, maxLength: 2 }) }),
  fc.record({ stacked: fc.array(leaf, { minLength: 2, maxLength: 2 }) }),
  fc.record({
    front: door,
    'side by side': fc.array(fc.record({ drawers: drawersBehindDoor }), { minLength: 2, maxLength: 2 }),
  }),
)

/** Insides that are the same on both hands. */
const evenInside = fc.oneof(
  fc.record({ drawers: drawersOfBay }),
  fc.record({ front: fc.record({ kind: fc.constant('pair') }), drawers: drawersBehindDoor }),
)

const definition = (insides: fc.Arbitrary<unknown>): fc.Arbitrary<string> =>
  fc
    .record({
      board: tenths(17, 19),
      named: drawerStock,
      inside: insides,
      width: tenths(700, 1300),
      depth: tenths(400, 700),
      height: tenths(720, 900),
      units: fc.constantFrom('mm', 'in'),
    })
    .map(({ board, named, inside: raw, width, depth, height, units }) =>
      JSON.stringify({
        storyrod: 1,
        units,
        stock: { board: { thickness: board }, thin: { thickness: '6 mm' }, ...named },
        modules: {
          chest: {
            width,
            depth,
            'carcase height': height,
            stock: 'board',
            carcase: { back: { sits: 'applied', stock: 'thin' } },
            inside: raw,
          },
        },
      }),
    )

/** Definitions of one module with drawers with fronts, inner drawers behind doors, or both. */
export const anyChest = definition(inside)

/** The same, alike on both hands. */
export const evenChest = definition(evenInside)
