import fc from 'fast-check'

/** Lengths in whole tenths of a millimetre, with their unit. */
const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const overhang = fc.oneof(
  tenths(0, 60),
  fc.record(
    { left: tenths(0, 60), right: tenths(0, 60), front: tenths(0, 60), back: tenths(0, 60) },
    { requiredKeys: [] },
  ),
)

const fix = fc.oneof(
  fc.constantFrom('none', 'through screw'),
  fc.record({ 'end distance': tenths(20, 90), spacing: tenths(100, 400) }),
)

/** Keys of a `worktop` in the stock `slab`, for a module whose carcase has a top, or for a row. */
export const worktopKeys = fc.record({ stock: fc.constant('slab'), overhang, fix }, { requiredKeys: ['stock'] })

const insert = fc.record(
  {
    width: tenths(150, 306),
    depth: tenths(150, 236),
    'corner radius': tenths(0, 30),
    'from left': fc.oneof(fc.constant('centred'), tenths(60, 200)),
    'from front': fc.oneof(fc.constant('centred'), tenths(100, 200)),
    play: tenths(0, 1),
    ledge: fc.record({ width: tenths(14, 25), depth: tenths(5, 10) }),
    'levelling screws': fc.constantFrom('none', 'levelling screw M5', 'levelling screw M6'),
  },
  { requiredKeys: ['width', 'depth', 'corner radius', 'ledge'] },
)

const slots = fc
  .record({
    kind: fc.constantFrom('fence', 'track'),
    width: tenths(12, 25),
    depth: tenths(6, 12),
    from: tenths(20, 60),
    stopped: fc.boolean(),
    along: fc.constantFrom('width', 'depth'),
  })
  .map(({ from, stopped, along, ...rest }) => {
    const [beside, begin] = along === 'width' ? ['from front', 'from left'] : ['from left', 'from front']
    return [{ ...rest, along, [beside ?? '']: from, ...(stopped && { [begin ?? '']: '80 mm', length: '200 mm' }) }]
  })

const chamber = fc.record(
  {
    height: tenths(120, 220),
    port: fc.record(
      { diameter: tenths(40, 100), 'from left': fc.oneof(fc.constant('centred'), tenths(60, 200)) },
      { requiredKeys: ['diameter'] },
    ),
  },
  { requiredKeys: ['height'] },
)

/** Keys of a `machine top` in the stock `slab`, for a module at least 600 wide, 500 deep and 500 high with a back. */
export const machineTopKeys = fc.record(
  { stock: fc.constant('slab'), overhang, insert, slots, chamber },
  { requiredKeys: ['stock'] },
)

const carcase = (tops: readonly string[]) =>
  fc.record({
    top: fc.constantFrom(...tops),
    joint: fc.constantFrom('one-piece screw', 'through screw', 'dowel'),
    back: fc.record({ sits: fc.constantFrom('applied', 'grooved', 'rebated'), stock: fc.constant('thin') }),
  })

const inside = fc.constantFrom(
  {},
  { 'side by side': [{}, {}] },
  { 'side by side': [{ size: '240 mm' }, {}, { size: '240 mm' }] },
  { front: { kind: 'pair' }, 'loose shelves': 1 },
)

const SIZES = { width: tenths(600, 1000), depth: tenths(500, 700) }

const stock = fc.record({
  board: fc.record({ thickness: tenths(17, 20) }),
  slab: fc.record({ thickness: tenths(22, 40) }),
  thin: fc.constant({ thickness: '6 mm' }),
})

const common = { 'working height': '900 mm', stock: 'board', base: { casters: 'caster 75', inset: '110 mm' } }

/** One module with a worktop or a machine top. */
export const toppedModule = fc
  .record({
    stock,
    units: fc.constantFrom('mm', 'in'),
    module: fc.oneof(
      fc.record({ ...SIZES, inside, carcase: carcase(['over', 'between']), worktop: worktopKeys }),
      fc.record({ ...SIZES, inside, carcase: carcase(['over', 'between', 'none']), 'machine top': machineTopKeys }),
    ),
  })
  .map(({ stock: sheets, units, module }) =>
    JSON.stringify({ storyrod: 1, units, stock: sheets, common, modules: { one: module } }),
  )

/** One module whose machine top, screws and inside are the same on both hands. */
export const evenTop = fc
  .record({
    stock,
    sizes: fc.record(SIZES),
    inside,
    carcase: carcase(['over', 'between']),
    over: tenths(0, 60),
    insert,
    fix,
  })
  .map(({ stock: sheets, sizes, over, insert: plate, ...module }) => {
    const { 'from left': _, ...centred } = plate
    return JSON.stringify({
      storyrod: 1,
      stock: sheets,
      common,
      modules: {
        one: {
          ...sizes,
          inside: module.inside,
          carcase: module.carcase,
          'machine top': { stock: 'slab', overhang: { left: over, right: over }, insert: centred, fix: module.fix },
        },
      },
    })
  })

/** Two to four modules in a row under one worktop. */
export const toppedRow = fc
  .record({
    stock,
    worktop: worktopKeys,
    modules: fc.array(fc.record({ ...SIZES, inside, carcase: carcase(['over', 'between']) }), {
      minLength: 2,
      maxLength: 4,
    }),
  })
  .map(({ stock: sheets, worktop, modules }) => {
    const names = modules.map((_, k) => `module ${k + 1}`)
    return JSON.stringify({
      storyrod: 1,
      stock: Object.fromEntries(
        Object.entries(sheets).map(([name, one]) => [name, { ...one, sheet: ['5 m', '1.3 m'] }]),
      ),
      common,
      modules: Object.fromEntries(modules.map((one, k) => [names[k], one])),
      'floor plan': [{ row: names, worktop }],
    })
  })
