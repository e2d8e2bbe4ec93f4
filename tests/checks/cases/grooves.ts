import { bays, box, pins, SHELF } from './boards.ts'
import type { RuleCase } from './case.ts'

const grooved = (more: string, thickness = '18'): string =>
  box('', { thickness, carcase: `back: { sits: grooved, stock: thin, ${more} }` })
const housed = (depth: number, more = ''): string => SHELF(`fasten: housing, depth: ${depth}${more}`)
const shelves = (between: number): string =>
  bays(
    `dividers: { joint: { fasten: housing, depth: 6 } }, stacked: [{}, { size: ${between} }, { size: 293 }]`,
    '',
    'back: none',
  )
const stopped = (rear: string): string =>
  bays(housed(6, `, stop rear: ${rear}`), '', 'back: { sits: grooved, stock: thin }')

export const grooveCases: readonly RuleCase[] = [
  {
    rule: 'groove-wood',
    what: 'under it',
    // 10.5 − 8 = 2.5.
    trips: grooved('groove depth: 8', '10.5'),
    severity: 'warn',
    message: 'box, top: the groove for the back, 8 deep, leaves only 2.5 mm of wood under it',
    fix: 'cut it no deeper than 7.5 mm',
    inside: grooved('groove depth: 7.5', '10.5'),
  },
  {
    rule: 'groove-wood',
    what: 'beside it',
    trips: grooved('groove setback: 4'),
    severity: 'warn',
    message: 'box, top: the groove for the back, 8 deep, leaves only 4 mm of wood beside it',
    fix: 'move it 1 mm in from the edge',
    inside: grooved('groove setback: 5'),
  },
  {
    rule: 'groove-wood',
    what: 'on both faces',
    // 18 − 8 − 8 = 2.
    trips: bays(housed(8), housed(8), 'back: none'),
    severity: 'warn',
    message:
      'box, partition 1: the housing for the fixed shelf 2 and the housing for the fixed shelf 1 on the other face leave only 2 mm of wood between them',
    fix: 'cut each of them no deeper than 7.5 mm',
    inside: bays(housed(7.5), housed(7.5), 'back: none'),
  },
  {
    rule: 'groove-wood',
    what: 'along each other',
    // Housings 18.1 wide about shelves of 18, 2 apart: 1.9 between them.
    trips: shelves(2),
    severity: 'stop',
    message:
      'box, left side: the housing for the fixed shelf 1 and the housing for the fixed shelf 2 leave only 1.9 mm of wood between them',
    fix: 'move one of them 3.1 mm or more',
    inside: shelves(5.1),
  },
  {
    rule: 'groove-wood',
    what: 'one that stops before another',
    // The groove for the back lies from 10 to 16.2 before the rear edge; a housing that stops 19 before it leaves 2.8.
    trips: stopped('19'),
    severity: 'warn',
    message:
      'box, left side: the groove for the back and the housing for the fixed shelf 1 leave only 2.8 mm of wood between them',
    fix: 'leave 3 mm between them, or let the one run out into the other',
    // Stopped at 19.2: 3 between. One that runs on into the groove, at 12, is no finding either.
    inside: stopped('19.2'),
  },
  {
    rule: 'bore-in-groove',
    // Pins 13 deep against a housing 6 deep on the far face: 18 − 13 − 6 < 0. The housing reaches 9.05 up and down from the
    // shelf's middle: 9.05 + 2.5 + 3 = 14.55; in half millimetres 15.
    trips: bays(housed(6), pins('0'), 'back: none'),
    severity: 'stop',
    message:
      'box, partition 1: the shelf pin 5 × 13, 37 from front and 302 from bottom in face A (right face) runs into the housing for the fixed shelf 1',
    fix: 'move the pin rows of shelf opening 1 up 15 mm (`datum: 15 mm`)',
    inside: bays(housed(6), pins('14.55'), 'back: none'),
  },
  {
    rule: 'bore-in-groove',
    what: 'a skin over the far face',
    // 18 − 13 − 2.5 = 2.5 of wood between the pin's end and the floor of a housing 2.5 deep.
    trips: bays(housed(2.5), pins('0'), 'back: none'),
    severity: 'warn',
    message:
      'box, partition 1: the shelf pin 5 × 13, 37 from front and 302 from bottom in face A (right face) is only 2.5 mm from the housing for the fixed shelf 1',
    fix: 'move the pin rows of shelf opening 1 up 13.5 mm (`datum: 13.5 mm`)',
    inside: bays(housed(2), pins('0'), 'back: none'),
  },
]
