import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

/** Modules 500 deep and 700 high in boards of 18 mm, where they do not say otherwise. */
const floor = (modules: readonly string[], plan: string, board = ''): string => `${ROUND_STOCK}${board}
common: { stock: board, depth: 500, carcase height: 700, carcase: { back: none, joint: dowel } }
modules:
  ${modules.join('\n  ')}
floor plan:
  ${plan}
`

const ports = (port: string): string =>
  floor(
    [
      `one: { width: 600, openings: [{ panel: right side, shape: rectangle, ${port}, for: port }] }`,
      'two: { width: 600 }',
    ],
    '- { row: [one, two], join: bolted }',
  )
const onPlinth = (height: number): string =>
  floor(
    ['low: { width: 600, carcase height: 80 }', `high: { width: 600, base: { plinth: { height: ${height} } } }`],
    '- { row: [low, high], join: bolted }',
  )
const boardsOf = (thickness: number): string =>
  floor(
    ['one: { width: 600, stock: other }', 'two: { width: 600, stock: other }'],
    '- { row: [one, two], join: { bolt: bolt M10 } }',
    `  other: { thickness: ${thickness}, sheet: [2500, 1250] }`,
  )
const rolling = (inset: number, more = ''): string =>
  `${floor(
    ['one', 'two'].map((name) => `${name}: { width: 600, base: { casters: caster 75, inset: ${inset} } }`),
    '- { row: [one, two] }',
  )}${more}`
const three = (plan: string): string =>
  floor(['one: { width: 600 }', 'two: { width: 600 }', 'three: { width: 600 }'], plan)
const high = (height: number, plan: string): string =>
  floor(['one: { width: 600 }', `two: { width: 600, carcase height: ${height} }`], plan)

const LEVEL_ROW = '- { row: [one, two], level: tops }'
const LEVEL_BESIDE = '- { row: [one] }\n  - { row: [two], level: tops, stands: { against: one, at its: right } }'

export const floorCases: readonly RuleCase[] = [
  {
    rule: 'join-overlap',
    // 80 − 65 = 15; a tee nut M6 is 19 wide (S35).
    trips: onPlinth(65),
    severity: 'stop',
    message: 'low and high are to be bolted together, but their sides share only 15 mm',
    fix: 'let their sides share 19 mm or more, by heights or depths that are nearer to each other, or set `join: none`',
    inside: onPlinth(61),
  },
  {
    rule: 'bolt-moved',
    // The bolt is wished at 96 from the front and 64 up; the port reaches from 44 to 84 up. The washer's radius is 9: the
    // row goes up to 84 + 9 = 93, by 29. A port that begins at 64 + 9 = 73 is clear of it.
    trips: ports('width: 60, height: 40, from: { front: 96, bottom: 64 }'),
    severity: 'note',
    message: 'one and two: bolts 1, 2 moved 29 mm up, off the port of one',
    inside: ports('width: 60, height: 40, from: { front: 96, bottom: 93 }'),
  },
  {
    rule: 'bolt-blocked',
    // The port reaches from 20 to 220 and from 36 to 196 up: to pass it the bolt would move to 229, 205 or 27; but the
    // bottom of 18 stands below, and a flange of 9.5 on it: 27.5. From 37 up it is 28, 36 down. With 204 the bolts of a
    // row are one, at 250.
    trips: ports('width: 200, height: 160, from: { front: 120, bottom: 116 }'),
    severity: 'stop',
    message: 'one and two: bolt 1 has no free place within 64 mm; in the way: the port of one',
    fix: 'set `end inset` to 64 mm and `side inset` to 204 mm, or move what is in the way',
    inside: ports('width: 200, height: 160, from: { front: 120, bottom: 117 }'),
  },
  {
    rule: 'bolt-blocked',
    what: 'by the limit of the definition',
    // Of the move by 36 above 35 is allowed.
    trips: `${ports('width: 200, height: 160, from: { front: 120, bottom: 117 }')}findings: { bolt-blocked: { farthest: 35 } }\n`,
    severity: 'stop',
    message: 'one and two: bolt 1 has no free place within 35 mm; in the way: the port of one',
    fix: 'set `end inset` to 28 mm and `side inset` to 96 mm, or move what is in the way',
    inside: `${ports('width: 200, height: 160, from: { front: 120, bottom: 117 }')}findings: { bolt-blocked: { farthest: 36 } }\n`,
  },
  {
    rule: 'nut-barrel',
    // The barrel of an M10 tee nut is 10.2 long, that of M6 7.8 (S35).
    trips: boardsOf(10.1),
    severity: 'stop',
    message: 'two, left side: the barrel of the nut of bolt M10 is 10.2 mm long, the board only 10.1 mm thick',
    fix: 'take bolt M6, or a thicker board there',
    inside: boardsOf(10.2),
  },
  {
    rule: 'caster-neighbours',
    // Circles of 75: 66 + 66 − 150 = −18. Moved by d both ways: (132 + d)² + d² ≥ 160², so 26: 158² + 26² = 25 640.
    trips: rolling(66),
    severity: 'stop',
    message: 'the swivel circles of casters of one and two overlap by 18 mm',
    fix: 'set the casters of two 26 mm further in (`inset: 92 mm`)',
    inside: rolling(80),
  },
  {
    rule: 'caster-neighbours',
    what: 'passing near each other',
    // 2 × 79.9 − 150 = 9.8; by the limit of the definition 2 × 75 − 150 = 0 will do.
    trips: rolling(79.9),
    severity: 'warn',
    message: 'the swivel circles of casters of one and two pass 9.8 mm apart',
    fix: 'set the casters of two 1 mm further in (`inset: 80.9 mm`)',
    inside: rolling(75, 'findings: { caster-neighbours: { apart: 0 } }\n'),
  },
  {
    rule: 'footprints-overlap',
    what: 'by all of a module',
    // One module deep to the back.
    trips: three('- { row: [one, two] }\n  - { row: [three], stands: { against: one, at its: right } }'),
    severity: 'stop',
    message: 'two and three stand in the same place: their footprints overlap by 600 × 500 mm',
    fix: 'stand three on another side, or set its `shift` to 500 mm',
    inside: three('- { row: [one, two] }\n  - { row: [three], stands: { against: one, at its: right, shift: 500 } }'),
  },
  {
    rule: 'footprints-overlap',
    what: 'by a little',
    trips: three(
      '- { row: [one] }\n  - { row: [two], stands: { against: one, at its: back } }\n  - { row: [three], stands: { against: one, at its: back, shift: 590 } }',
    ),
    severity: 'stop',
    message: 'two and three stand in the same place: their footprints overlap by 10 × 500 mm',
    fix: 'stand three on another side, or set its `shift` to 600 mm',
    inside: three(
      '- { row: [one] }\n  - { row: [two], stands: { against: one, at its: back } }\n  - { row: [three], stands: { against: one, at its: back, shift: 600 } }',
    ),
  },
  {
    rule: 'packing',
    trips: high(690, LEVEL_ROW),
    severity: 'note',
    message: 'two needs 10 mm of packing between its carcase and what it stands on, so that tops are level',
    fix: 'put it there, or make the carcase 10 mm higher',
    inside: high(700, LEVEL_ROW),
  },
  {
    rule: 'tops-level',
    trips: high(712, LEVEL_BESIDE),
    severity: 'warn',
    message: 'tops are to be level, but one, which stands already, is 12 mm lower than this row',
    fix: 'make one 12 mm higher, or the row lower',
    inside: high(700, LEVEL_BESIDE),
  },
  {
    rule: 'worktop-level',
    trips: high(688, '- { row: [one, two], worktop: { stock: board } }'),
    severity: 'stop',
    message: 'the worktop of the row lies on one; the upper side of two is 12 mm lower',
    fix: 'make two 12 mm higher, or give all modules of the row one working height',
    inside: high(700, '- { row: [one, two], worktop: { stock: board } }'),
  },
  {
    rule: 'worktop-neighbour',
    what: 'a worktop in a higher module',
    // 18 of the side's thickness and of the worktop's, less than the overhang of 20.
    trips: floor(
      ['one: { width: 600, worktop: { stock: board, overhang: 20 } }', 'two: { width: 600, carcase height: 730 }'],
      '- { row: [one, two] }',
    ),
    severity: 'stop',
    message: 'one, worktop, and two, left side, overlap by 18 mm',
    fix: 'make the overhang of one at its right 0 mm, stand them further apart, or lay one worktop over the row',
    inside: floor(
      [
        'one: { width: 600, worktop: { stock: board, overhang: { left: 20 } } }',
        'two: { width: 600, carcase height: 730 }',
      ],
      '- { row: [one, two] }',
    ),
  },
  {
    rule: 'worktop-neighbour',
    what: 'two worktops, one of them under common keys',
    // 20 + 20 − 38 = 2; 18 is left of the first.
    trips: floor(['one: { width: 600 }', 'two: { width: 600 }'], gapped(38)).replace(
      'common: {',
      'common: { worktop: { stock: board, overhang: 20 },',
    ),
    severity: 'stop',
    message: 'one, worktop, and two, worktop, overlap by 2 mm',
    fix: 'make the overhang of one at its right 18 mm, stand them further apart, or lay one worktop over the row',
    inside: floor(['one: { width: 600 }', 'two: { width: 600 }'], gapped(40)).replace(
      'common: {',
      'common: { worktop: { stock: board, overhang: 20 },',
    ),
  },
]

function gapped(gap: number): string {
  return `- { row: [one] }\n  - { row: [two], stands: { against: one, at its: right, gap: ${gap} } }`
}
