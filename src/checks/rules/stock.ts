import { NOISE_MM } from '../../geometry/index.ts'
import { coreOf } from '../../panel/index.ts'
import type { Stock } from '../../project/index.ts'
import type { Finding, Rule } from '../types.ts'
import { mm, panelWords } from '../words.ts'

/** Readings of one sheet further apart than this are worth a word, mm. */
const SPREAD_WARN_MM = 0.3

/** What the sheets themselves say: parts larger than they are, and uneven thickness. */
export const stock: Rule = {
  ids: ['sheet-too-small', 'stock-spread'],
  check: ({ panels, project, assembly }) => [
    ...panels.flatMap((panel): Finding[] => {
      const { length, width } = coreOf(panel)
      if (fits(panel.stock, length, width)) return []
      const { sheet, edgeTrim, grain, name } = panel.stock
      const grainWords = grain === 'none' ? '' : ', its length along the grain'
      return [
        {
          rule: 'sheet-too-small',
          severity: 'stop',
          panels: [panel.id],
          places: [],
          message: `${panelWords(panel)} is ${mm(length)} × ${mm(width)} mm${grainWords}; a sheet of ${name} gives ${mm(sheet.length - 2 * edgeTrim)} × ${mm(sheet.width - 2 * edgeTrim)} mm`,
          fix: assembly.modules.some((module) => module.key === panel.module && module.liesOver !== undefined)
            ? 'use a larger sheet, or lay two worktops: split the row where modules meet'
            : 'make the module smaller, or use a larger sheet',
          at: panel.at,
        },
      ]
    }),
    ...project.stocks.flatMap((one): Finding[] => {
      const spread = one.thickest - Math.min(...one.readings)
      if (spread <= SPREAD_WARN_MM + NOISE_MM) return []
      return [
        {
          rule: 'stock-spread',
          severity: 'warn',
          panels: [],
          places: [],
          message: `${one.name}: the readings lie ${mm(spread)} mm apart (${one.readings.map(mm).join(', ')}); panels are sized with their mean, ${mm(one.thickness)}`,
          fix: 'sort the sheets by thickness and give each its own stock',
          at: one.at,
        },
      ]
    }),
  ],
}

/** Whether a part comes out of a trimmed sheet; turned round only where there is no grain. */
export function fits(sheet: Stock, length: number, width: number): boolean {
  const usable = { length: sheet.sheet.length - 2 * sheet.edgeTrim, width: sheet.sheet.width - 2 * sheet.edgeTrim }
  const lies = (a: number, b: number): boolean => a <= usable.length + NOISE_MM && b <= usable.width + NOISE_MM
  return lies(length, width) || (sheet.grain === 'none' && lies(width, length))
}
