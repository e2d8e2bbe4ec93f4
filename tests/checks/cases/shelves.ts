import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const shelved = (keys: string, { height = 336, depth = 400, back = 'none' } = {}): string => `${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: ${depth}
    carcase height: ${height}
    stock: board
    carcase: { back: ${back} }
    inside: { loose shelves: ${keys} }
`

export const shelfCases: readonly RuleCase[] = [
  {
    rule: 'pin-rows-short',
    // 336 − 2 × 18 = 300 inside; pins from 18 + 64 = 82 to 318 − 64 = 254: 96, 128 … 224. A shelf and 10 for the hand
    // take 28, less than 32: 5 heights for 5 shelves, not for 6.
    trips: shelved('6'),
    severity: 'stop',
    message: 'an opening 300 mm high has pin heights with room for 5 loose shelves of 18 mm; 6 are asked for',
    fix: 'ask for 5 loose shelves',
    inside: shelved('5'),
  },
  {
    rule: 'pin-rows-short',
    what: 'not even one',
    // 136 − 36 = 100 inside, from 18 to 118; 64 from both ends crosses. The nearest height to both ends is 64, 46 above
    // the lower panel: that is all that can be kept clear.
    trips: shelved('1', { height: 136 }),
    severity: 'stop',
    message: 'an opening 100 mm high has pin heights with room for 0 loose shelves of 18 mm; 1 is asked for',
    fix: 'set `keep clear: 46 mm`',
    inside: shelved('{ count: 1, pins: { keep clear: 46 } }', { height: 136 }),
  },
  {
    rule: 'pin-columns-crossed',
    // 80 deep: columns at 37 from front and rear, 6 apart; two diameters of 5 make 10. (80 − 10) / 2 = 35.
    trips: shelved('1', { depth: 80 }),
    severity: 'stop',
    message: 'the front and rear pin columns are only 6 mm apart; 10 mm is the least',
    fix: 'set `front setback: 35 mm` and `rear setback: 35 mm`',
    inside: shelved('1', { depth: 84 }),
  },
]
