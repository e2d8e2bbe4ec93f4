import { NOISE_MM } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import type { RowSpec } from '../../project/index.ts'
import type { PlacingTrouble } from '../types.ts'
import { heightEdit } from './mend.ts'
import type { BuiltModule } from './stand.ts'

/**
 * How much each module is packed up, mm, so that the upper sides of the carcases of a row are level with the highest of
 * them and of the module that the row stands against. Rows with level floors are not packed.
 */
export function packings(
  rows: readonly RowSpec[],
  moduleOf: (key: string) => BuiltModule,
): { readonly packing: ReadonlyMap<string, number>; readonly troubles: PlacingTrouble[] } {
  const packing = new Map<string, number>()
  const troubles: PlacingTrouble[] = []
  const topOf = (key: string): number => {
    const { baseHeight, size } = moduleOf(key)
    return baseHeight + size.height + (packing.get(key) ?? 0)
  }
  for (const row of rows) {
    if (row.level === 'floors') continue
    const anchor = row.stands?.against
    const own = Math.max(...row.modules.map(topOf))
    const level = Math.max(own, anchor === undefined ? own : topOf(anchor))
    for (const key of row.modules) {
      const lower = level - topOf(key)
      if (lower <= NOISE_MM) continue
      packing.set(key, lower)
      troubles.push(packed(row, moduleOf(key), lower))
    }
    if (anchor !== undefined && level - topOf(anchor) > NOISE_MM) {
      const under = packing.get(anchor) ?? 0
      troubles.push(tooHigh(row, moduleOf(anchor), [level - topOf(anchor), under], standsAlone(rows, anchor)))
    }
  }
  return { packing, troubles }
}

const packed = (row: RowSpec, module: BuiltModule, lower: number): PlacingTrouble => ({
  rule: 'packing',
  severity: 'note',
  panels: [],
  message: `${module.name} needs ${mm(lower)} mm of packing between its carcase and what it stands on, so that tops are level`,
  fix: `put it there, or make the carcase ${mm(lower)} mm higher`,
  change: heightEdit(module, lower),
  at: row.at,
})

/** Not under a worktop with others: then it can be made higher by itself. */
const standsAlone = (rows: readonly RowSpec[], key: string): boolean =>
  rows.every(({ modules, worktop }) => worktop === undefined || modules.length === 1 || !modules.includes(key))

/** Higher by so much, and by the packing that is then not needed. */
const tooHigh = (
  row: RowSpec,
  anchor: BuiltModule,
  [higher, packed]: readonly [number, number],
  alone: boolean,
): PlacingTrouble => ({
  rule: 'tops-level',
  severity: 'warn',
  panels: [],
  message: `tops are to be level, but ${anchor.name}, which stands already, is ${mm(higher)} mm lower than this row`,
  fix: `make ${anchor.name} ${mm(higher + packed)} mm higher, or the row lower`,
  ...(alone && { change: heightEdit(anchor, higher + packed) }),
  at: row.at,
})
