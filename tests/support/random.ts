import fc from 'fast-check'
import { isReadable } from './define.ts'
import { anyInside, evenInside, type Raw } from './random-bays.ts'
import { anyWish, evenWish, moduleOf, type Wish } from './random-carcase.ts'
import { drawerStock } from './random-drawers.ts'
import { planOf, type RowKeys, rowKeys } from './random-floor.ts'
import { ownHardware } from './random-hardware.ts'
import { worktopKeys } from './random-tops.ts'

/** Lengths in whole tenths of a millimetre, so that counterexamples read well, with their unit, so that any project takes them. */
const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const SHEET = ['6 m', '3 m']

const stocks = fc
  .record({
    board: fc.record({
      thickness: fc.oneof(tenths(16, 20.4), fc.array(tenths(17.5, 18.4), { minLength: 1, maxLength: 3 })),
    }),
    thick: fc.record({ thickness: tenths(20, 25) }),
    thin: fc.record({ thickness: tenths(5, 9) }),
    slab: fc.record({ thickness: tenths(22, 40) }),
    drawers: drawerStock,
  })
  .map(({ drawers, ...named }) =>
    Object.fromEntries(Object.entries({ ...named, ...drawers }).map(([name, one]) => [name, { ...one, sheet: SHEET }])),
  )

/** A row, and the worktop over it where it has one. */
type Row = RowKeys & { readonly worktop: Raw | undefined }

interface Parts {
  readonly units: string
  readonly stock: Raw
  readonly hardware: Raw | undefined
  readonly modules: readonly Wish[]
  readonly rows: readonly Row[]
}

const LEVEL = { of: 'carcase height', height: 8000 }

/** The modules under one worktop are of one height from the floor, and on one kind of base. */
function levelled(modules: readonly Wish[], rows: readonly Row[]): { wish: Wish; covered: boolean }[] {
  let from = 0
  return rows.flatMap((row): { wish: Wish; covered: boolean }[] => {
    const run = modules.slice(from, from + row.length)
    from += run.length
    if (row.worktop === undefined) return run.map((wish) => ({ wish, covered: false }))
    return run.map((wish) => ({ wish: { ...wish, ...LEVEL, base: run[0]?.base }, covered: true }))
  })
}

/** Own items in the places of those that the parts name. */
const OWN: readonly (readonly [string, string])[] = [
  ['caster 75', 'own caster'],
  ['pull 128', 'own pull'],
  ['pin 1/4 in', 'own pin'],
  ['bolt M8', 'own bolt'],
  ['screw 5x50', 'own screw'],
  ['hinge 35 full', 'own hinge'],
]

function textOf({ units, stock, hardware, modules, rows }: Parts): string {
  const names = modules.map((_, k) => `module ${k + 1}`)
  const raws = levelled(modules, rows).map(({ wish, covered }) => moduleOf(wish, covered))
  const plan = planOf(names, rows).map((row, k) => ({
    ...row,
    ...(rows[k]?.worktop !== undefined && { worktop: rows[k].worktop }),
  }))
  const named = JSON.stringify({
    common: { stock: 'board' },
    modules: Object.fromEntries(raws.map((raw, k) => [names[k], raw])),
    'floor plan': plan,
  })
  const own = OWN.reduce((text, [usual, mine]) => text.replaceAll(`"${usual}"`, `"${mine}"`), named)
  const rest: Raw = JSON.parse(hardware === undefined ? named : own)
  const used = Object.fromEntries(Object.entries(stock).filter(([name]) => named.includes(`"${name}"`)))
  return JSON.stringify(
    { storyrod: 1, units, stock: used, ...(hardware !== undefined && { hardware }), ...rest },
    null,
    1,
  )
}

const worktop = fc.option(worktopKeys, { nil: undefined, freq: 1 })

/** Before those that cannot be built are left out; few are. */
const tried = (modules: fc.Arbitrary<Wish>, most: number): fc.Arbitrary<string> =>
  fc
    .record({
      units: fc.constantFrom('mm', 'in'),
      stock: stocks,
      hardware: fc.option(ownHardware, { nil: undefined, freq: 1 }),
      modules: fc.array(modules, { minLength: 1, maxLength: most }),
      rows: fc.array(
        fc.tuple(rowKeys, worktop).map(([row, top]) => ({ ...row, worktop: top })),
        {
          minLength: 4,
          maxLength: 4,
        },
      ),
    })
    .map(textOf)

export const triedDefinition: fc.Arbitrary<string> = tried(
  anyWish(fc.oneof(anyInside(1), anyInside(2), anyInside(3))),
  4,
)

/**
 * Definitions (JSON is YAML) of one to four modules, metric or inch, over everything that the engine builds: trees of bays
 * up to three levels deep with all fronts, drawers and loose shelves; every lap, back and joint; rails, stretchers and
 * lippings; every base and top; openings; own hardware; any floor plan.
 */
export const anyDefinition: fc.Arbitrary<string> = triedDefinition.filter(isReadable)

/** Definitions of one module that is the same on both hands. */
export const evenTried: fc.Arbitrary<string> = tried(evenWish(evenInside), 1)
export const evenDefinition: fc.Arbitrary<string> = evenTried.filter(isReadable)
