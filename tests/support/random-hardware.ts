import fc from 'fast-check'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const pairs = (x: fc.Arbitrary<string>, y: fc.Arbitrary<string>): fc.Arbitrary<string[]> =>
  fc.tuple(x, y).map((two) => [...two])

const hinge = fc.record(
  {
    'base figure': tenths(13, 16),
    'cup distance': fc.constantFrom({ least: '3 mm', most: '7 mm' }, { least: '3 mm', most: '6 mm', usual: '4 mm' }),
    'plate heights': fc.constantFrom(['0 mm', '2 mm', '3 mm'], ['-2 mm', '0 mm', '3.5 mm']),
    'plate line': fc.constantFrom('28 mm', '37 mm', '37 mm'),
    pattern: fc.constantFrom(['45 mm', '9.5 mm'], ['48 mm', '6 mm'], ['52 mm', '5.5 mm']),
    'cup depth': tenths(10.5, 12.5),
    'plate holes apart': fc.constantFrom('32 mm', '28 mm'),
    'plate hole diameter': fc.constantFrom('5 mm', '2.5 mm'),
    'plate hole depth': tenths(8, 12.5),
  },
  { requiredKeys: [] },
)

const caster = fc.record(
  {
    'overall height': tenths(60, 120),
    'swivel radius': tenths(50, 90),
    plate: pairs(tenths(60, 80), tenths(60, 80)),
    'hole pattern': pairs(tenths(30, 48), tenths(30, 48)),
    'hole diameter': tenths(5, 9),
  },
  { requiredKeys: [] },
)

const pull = fc.record({ centres: tenths(60, 200), 'hole diameter': tenths(4, 6) }, { requiredKeys: [] })
const pin = fc.record({ 'hole diameter': tenths(3, 8), 'hole depth': tenths(8, 12.5) }, { requiredKeys: [] })
const bolt = fc.record({ 'hole diameter': tenths(6.5, 9), 'nut bore': tenths(7, 10) }, { requiredKeys: [] })
const screw = fc.record(
  { 'hole diameter': tenths(5, 6), 'pilot diameter': tenths(2.5, 4), length: tenths(45, 60) },
  { requiredKeys: [] },
)

/**
 * Raw `hardware` of a definition: one own item of each of six kinds under names `own <kind>`, and some items of the
 * catalogue changed under their own names. Lengths carry their unit.
 */
export const ownHardware = fc
  .record({ hinge, caster, pull, pin, bolt, screw, usualPin: pin })
  .map(({ usualPin, ...own }) => ({
    'own hinge': { like: 'hinge 35 full', ...own.hinge },
    'own caster': { like: 'caster 75', ...own.caster },
    'own pull': { like: 'pull 128', ...own.pull },
    'own pin': { like: 'pin 5', ...own.pin },
    'own bolt': { like: 'bolt M6', ...own.bolt },
    'own screw': { like: 'screw 5x50', ...own.screw },
    'pin 5': usualPin,
  }))

/** Definitions of two modules, bolted together, that use every own item; one on either hand. */
export const definitionOfOwnHardware = fc
  .record({
    hardware: ownHardware,
    width: tenths(500, 700),
    depth: tenths(500, 600),
    units: fc.constantFrom('mm', 'in'),
  })
  .map(({ hardware, width, depth, units }) =>
    JSON.stringify({
      storyrod: 1,
      units,
      stock: { board: { thickness: '18 mm', sheet: ['2500 mm', '1250 mm'] } },
      hardware,
      common: {
        width,
        depth,
        'carcase height': '720 mm',
        stock: 'board',
        carcase: { joint: 'own screw' },
        base: { casters: 'own caster' },
      },
      modules: Object.fromEntries(
        ['left', 'right'].map((hang) => [
          hang,
          {
            inside: {
              'loose shelves': { count: 1, pins: hang === 'left' ? { item: 'own pin' } : { item: 'pin 5' } },
              front: { kind: 'door', hang, hinge: 'own hinge', pull: { item: 'own pull' } },
            },
          },
        ]),
      ),
      'floor plan': [{ row: ['left', 'right'], join: { bolt: 'own bolt' } }],
    }),
  )

const nonsense = fc.constantFrom<unknown>(
  ...[0, -1, 1e-9, 0.5, 3, 40, 9999, 1e12, 'through', '3/4 in', '-2 mm', 'many', '', null, true, [], [0, 0], [40, 3]],
  ...[
    [1, 2, 3],
    [9999, 9999],
    { least: 1, most: 2 },
    { least: 5, most: 1 },
    { least: 3, most: 90, usual: 60 },
    { x: 1 },
  ],
)

/** Figures of any value under any of some words, and holes anywhere: most are refused; what is read must be built. */
export const nonsenseHardware = (like: string, words: readonly string[], parts: readonly string[]) =>
  fc
    .record({
      figures: fc.dictionary(fc.constantFrom(...words, 'cup depht', '__proto__', 'holes', 'title'), nonsense, {
        maxKeys: 3,
      }),
      holes: fc.option(
        fc.dictionary(
          fc.constantFrom(...parts, 'plaet'),
          fc.array(
            fc.record({
              at: fc.constantFrom([0, 0], [-900, 900], [10, -10], [0]),
              diameter: fc.constantFrom(5, 0.01, 900, 0),
              depth: fc.constantFrom(13, 'through', 900, 1e-9),
            }),
            { maxLength: 3 },
          ),
          { maxKeys: 2 },
        ),
        { nil: undefined, freq: 2 },
      ),
    })
    .map(({ figures, holes }) => ({ ...figures, like, ...(holes && { holes }) }))
