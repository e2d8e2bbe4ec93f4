import fc from 'fast-check'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const pins = fc.record({
  'front setback': tenths(30, 130),
  'rear setback': tenths(30, 110),
  'keep clear': tenths(40, 90),
})

const leaf = fc.oneof(
  fc.constant({}),
  fc.record({ 'loose shelves': fc.record({ count: fc.constantFrom(1, 2), pins }) }),
  fc.record({ front: fc.record({ kind: fc.constant('door'), hang: fc.constantFrom('left', 'right') }) }),
)

const inside = fc.oneof(
  leaf,
  fc.record({ stacked: fc.array(leaf, { minLength: 2, maxLength: 4 }) }),
  fc.record({ 'side by side': fc.array(leaf, { minLength: 2, maxLength: 2 }) }),
)

const floorModule = fc.record({
  width: tenths(340, 900),
  depth: tenths(340, 700),
  height: tenths(600, 950),
  heightKey: fc.constantFrom('carcase height', 'working height'),
  inside,
  back: fc.constantFrom(
    'none',
    { sits: 'applied', stock: 'thin' },
    { sits: 'applied', stock: 'board' },
    { sits: 'inset', stock: 'board' },
    { sits: 'grooved', stock: 'thin' },
    { sits: 'rebated', stock: 'thin' },
  ),
  joint: fc.constantFrom('one-piece screw', 'dowel', 'pocket screw'),
  base: fc.constantFrom('none', { casters: 'caster 75' }, { casters: 'caster 75', inset: '70 mm' }),
})

const SIDES = ['left', 'right', 'front', 'back'] as const
const LINES = { left: ['front', 'back', 'middle'], front: ['left', 'right', 'middle'] } as const

/** Keys of `stands` against a module; which module is left to the plan. */
export const anyStands = fc
  .record({
    side: fc.constantFrom(...SIDES),
    fronts: fc.constantFrom('forward', 'left', 'right', 'back'),
    line: fc.constantFrom(0, 1, 2),
    shift: fc.oneof(fc.constant('0 mm'), tenths(-150, 150)),
    gap: fc.oneof(fc.constant('0 mm'), fc.constant('0 mm'), tenths(0, 40)),
  })
  .map(({ side, fronts, line, shift, gap }) => ({
    'at its': side,
    'fronts look': fronts,
    'line up': LINES[side === 'left' || side === 'right' ? 'left' : 'front'][line],
    shift,
    gap,
  }))

export const rowKeys = fc.record({
  length: fc.integer({ min: 1, max: 3 }),
  stands: fc.option(anyStands, { freq: 5, nil: undefined }),
  anchor: fc.nat(),
  join: fc.constantFrom(
    'none',
    'bolted',
    { bolt: 'bolt M8', 'side inset': '70 mm' },
    // Among the screws along the edges.
    { bolt: 'bolt M6', 'side inset': '25 mm', 'end inset': '30 mm' },
  ),
  level: fc.constantFrom('floors', 'tops'),
})

export type RowKeys = typeof rowKeys extends fc.Arbitrary<infer T> ? T : never

/** Rows over the names, each standing against a module of an earlier one where it is to; only keys that mean something. */
export function planOf(names: readonly string[], rows: readonly RowKeys[]): Record<string, unknown>[] {
  const plan: Record<string, unknown>[] = []
  let from = 0
  for (const keys of rows) {
    const row = names.slice(from, from + keys.length)
    if (row.length === 0) break
    const stands = from === 0 || keys.stands === undefined ? undefined : keys.stands
    const alone = row.length === 1 && (stands === undefined || stands.gap !== '0 mm')
    plan.push({
      row,
      ...(stands && { stands: { against: names[keys.anchor % from], ...stands } }),
      join: alone ? 'none' : keys.join,
      level: row.length === 1 && stands === undefined ? 'floors' : keys.level,
    })
    from += row.length
  }
  return plan
}

/** Definitions (JSON is YAML) of two to six modules of random sizes in rows that stand against each other in every way. */
export const anyFloorPlan = fc
  .record({
    modules: fc.array(floorModule, { minLength: 2, maxLength: 6 }),
    rows: fc.array(rowKeys, { minLength: 6, maxLength: 6 }),
    board: tenths(16, 20),
    thin: tenths(5, 10),
  })
  .map(({ modules, rows, board, thin }) => {
    const names = modules.map((_, k) => `module ${k + 1}`)
    return JSON.stringify({
      storyrod: 1,
      stock: { board: { thickness: board }, thin: { thickness: thin } },
      common: { stock: 'board' },
      modules: Object.fromEntries(
        modules.map(({ height, heightKey, back, joint, ...rest }, k) => [
          names[k],
          { [heightKey]: height, carcase: { back, joint }, ...rest },
        ]),
      ),
      'floor plan': planOf(names, rows),
    })
  })
