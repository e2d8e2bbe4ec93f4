import fc from 'fast-check'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const offCentre = fc
  .record({
    across: fc.constantFrom('left', 'right'),
    along: fc.constantFrom('front', 'rear'),
    x: tenths(0, 40),
    y: tenths(0, 60),
  })
  .map(({ across, along, x, y }) => ({ [across]: x, [along]: y }))

const machine = fc.record(
  {
    width: tenths(150, 520),
    depth: tenths(150, 600),
    height: tenths(60, 420),
    mass: fc.integer({ min: 5, max: 60 }),
    'off centre': offCentre,
  },
  { requiredKeys: ['width', 'depth', 'height'] },
)

/** The keys of a flip-over top in a project with the stocks `board`, `thick` and `thin`; some of them cannot turn. */
export const flipOverTop = fc
  .record(
    {
      skin: fc.constantFrom('board', 'thick', 'thin'),
      core: fc.constantFrom('board', 'thick'),
      axle: fc.constantFrom('auto', 'axle 12', 'axle 16', 'axle 20', 'axle 5/8 in', 'rod M16'),
      'locking bolts': fc.oneof(
        fc.constantFrom('locking bolt M8', 'locking bolt 5/16 in', 'locking plunger 10'),
        fc.record({ 'each side': fc.constantFrom(1, 2), 'edge distance': tenths(20, 90) }),
      ),
      well: fc.oneof(fc.constant('auto'), tenths(260, 520)),
      surface: tenths(230, 450),
      gap: tenths(1, 6),
      'front clearance': tenths(0, 60),
      'rear clearance': tenths(0, 60),
      'turning clearance': tenths(0, 20),
      machines: fc.record({ upper: machine, lower: machine }, { requiredKeys: [] }),
    },
    { requiredKeys: [] },
  )
  .map(({ surface, ...top }) =>
    // An axle above the ends of the sides is an error of the definition.
    surface === undefined || Number.parseFloat(top.well ?? 'auto') < Number.parseFloat(surface)
      ? top
      : { ...top, surface },
  )

const back = fc.oneof(
  fc.constant('none'),
  fc.record({ sits: fc.constantFrom('applied', 'grooved', 'rebated'), stock: fc.constant('thin') }),
  fc.record({ sits: fc.constant('inset'), stock: fc.constant('board'), recess: tenths(0, 20) }),
)

const inside = fc.oneof(
  fc.constant({}),
  fc.record({ front: fc.record({ kind: fc.constant('pair'), lay: fc.constantFrom('overlay', 'inset') }) }),
  fc.constant({ 'side by side': [{}, {}] }),
)

/**
 * Definitions (JSON is YAML) of one module with a flip-over top, the same on both hands but for the machines. The module
 * is high enough for any well that is worked out.
 */
export const flipDefinition = fc
  .record({
    stock: fc.record({
      board: fc.record({ thickness: tenths(17, 20) }),
      thick: fc.record({ thickness: tenths(21, 27) }),
      thin: fc.record({ thickness: tenths(9, 13) }),
    }),
    units: fc.constantFrom('mm', 'in'),
    width: tenths(560, 800),
    depth: tenths(380, 700),
    carcase: fc.record({ top: fc.constantFrom('between', 'none'), back }),
    inside,
    top: flipOverTop,
    base: fc.constantFrom('none', { casters: 'caster 75' }),
  })
  .map(({ stock, units, top, ...rest }) =>
    JSON.stringify({
      storyrod: 1,
      units,
      stock,
      modules: { turner: { 'carcase height': '1100 mm', stock: 'board', ...rest, 'flip-over top': top } },
    }),
  )
