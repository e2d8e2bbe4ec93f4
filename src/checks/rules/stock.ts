import { NOISE_MM } from '../../geometry/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding, Rule } from '../types.ts'
import { mm } from '../words.ts'

/** What the sheets themselves say: uneven thickness. */
export const stock: Rule = {
  ids: ['stock-spread'],
  check: ({ project }) => {
    const most = limitOf(project, 'stock-spread', 'warn')
    return project.stocks.flatMap((one): Finding[] => {
      const spread = one.thickest - Math.min(...one.readings)
      if (spread <= most + NOISE_MM) return []
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
    })
  },
}
