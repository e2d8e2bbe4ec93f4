import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const one = (findings: string, thickness = '18'): string => `${ROUND_STOCK}
  rough: { thickness: ${thickness}, sheet: [2500, 1250] }
findings: { ${findings} }
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none } }
`

export const definitionCases: readonly RuleCase[] = [
  {
    rule: 'silence-idle',
    trips: one('stock-spread: { silence: sorted by hand }'),
    severity: 'note',
    message: 'there is no finding of stock-spread to silence with "sorted by hand"',
    fix: 'take it out, so that it does not hide a later one',
    // 18.5 − 18 = 0.5 apart, more than 0.3: there is a finding to silence.
    inside: one('stock-spread: { silence: sorted by hand }', '[18, 18.5]'),
  },
]
