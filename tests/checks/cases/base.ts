import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const standing = (base: string, { width = 800, depth = 500, back = 'none' } = {}): string => `${ROUND_STOCK}
modules:
  box:
    width: ${width}
    depth: ${depth}
    carcase height: 700
    stock: board
    carcase: { back: ${back} }
    base: { ${base} }
`
const MIXED = 'casters: caster 75, fixed casters: fixed caster 75, fixed at: back'

export const baseCases: readonly RuleCase[] = [
  {
    rule: 'caster-circles',
    what: 'they meet',
    // 75 + 5 = 80 in, so 300 − 160 = 140 between two king pins, and 150 of circles. 4 × 75 + 2 × 5 + 10 = 320.
    // A caster of 50 swings 43: 4 × 43 + 20 = 192.
    trips: standing('casters: caster 75', { width: 300 }),
    severity: 'stop',
    message: 'the swivel circles of two casters overlap by 10 mm; the module is 300 mm wide',
    fix: 'make it 320 mm wide or more, or take a caster 50',
    inside: standing('casters: caster 75', { width: 320 }),
  },
  {
    rule: 'caster-circles',
    what: 'set too far in',
    // 500 − 2 × 171 − 150 = 8.
    trips: standing('casters: caster 75, inset: 171'),
    severity: 'warn',
    message: 'the swivel circles of two casters pass 8 mm apart; the module is 500 mm deep',
    fix: 'set `inset: auto`: 80 mm',
    inside: standing('casters: caster 75, inset: 170'),
  },
  {
    rule: 'caster-circles',
    what: 'a fixed wheel',
    // Pins 80 from front and back, 100 apart at 260: the wheel of 75 reaches 37.5 toward a circle of 75.
    trips: standing(MIXED, { depth: 260 }),
    severity: 'stop',
    message: 'two casters meet by 12.5 mm when they turn; 10 mm is wanted',
    fix: 'make the module 282.5 mm deep or more, or take smaller casters',
    inside: standing(MIXED, { depth: 282.5 }),
  },
  {
    rule: 'caster-footprint',
    what: 'casters that swivel',
    // 75 − 70.
    trips: standing('casters: caster 75, inset: 70'),
    severity: 'warn',
    message: "the casters swing 5 mm beyond the footprint and can meet a neighbour's",
    fix: 'set `inset: auto`: 80 mm or more',
    inside: standing('casters: caster 75, inset: 75'),
  },
  {
    rule: 'caster-footprint',
    what: 'fixed casters',
    // A wheel of 75 stands 37.5 to both sides of its pin.
    trips: standing(`${MIXED}, inset: 35`),
    severity: 'warn',
    message: 'the fixed casters stand 2.5 mm beyond the footprint',
    fix: 'set `inset: auto`',
    inside: standing(`${MIXED}, inset: 75`),
  },
  {
    rule: 'caster-plate',
    // 40 − 30 = 10; the bottom begins at 18.
    trips: standing('casters: caster 75, inset: 40'),
    severity: 'stop',
    message: 'a caster plate of 60 × 60 mm stands 8 mm beyond the bottom panel; it lies whole on it from 48 mm in',
    fix: 'set `inset: auto`',
    inside: standing('casters: caster 75, inset: 48'),
  },
  {
    rule: 'caster-heights',
    // 128 − 100.
    trips: standing('casters: caster 100, fixed casters: fixed caster 75, fixed at: right'),
    severity: 'warn',
    message: 'the casters differ in height: caster 100 128 mm, fixed caster 75 100 mm',
    fix: 'take fixed caster 100 with it, or put a packing 28 mm thick between each fixed caster 75 and the bottom',
    inside: standing('casters: caster 100, fixed casters: fixed caster 100, fixed at: right'),
  },
  {
    rule: 'plinth-fixing',
    // The back panel begins at 494; the driver wants 12, so the screws stand at most at 482; half of 18 behind them: 491.
    trips: standing('plinth: { height: 90, back recess: 8 }', { back: '{ sits: applied, stock: thin }' }),
    severity: 'stop',
    message: 'the plinth back cannot be fixed: no two screws reach it through the clear inside of the bottom',
    fix: 'set `back recess: 9 mm` or more',
    inside: standing('plinth: { height: 90, back recess: 9 }', { back: '{ sits: applied, stock: thin }' }),
  },
  {
    rule: 'foot-place',
    what: 'under a side',
    // The side ends at 18; a flange of 22 reaches 11: 29.
    trips: standing('feet: foot M8, inset: 20'),
    severity: 'stop',
    message: 'a levelling foot 20 mm in lies 9 mm under a side or the back, or beyond the bottom or the footprint',
    fix: 'set `inset: 29 mm`',
    inside: standing('feet: foot M8, inset: 29'),
  },
  {
    rule: 'foot-place',
    what: 'in the way of another',
    // 500 − 2 × 240 = 20 between two pads of 30. (500 − 30) / 2 = 235.
    trips: standing('feet: foot M8, inset: 240'),
    severity: 'stop',
    message: 'two levelling feet, 240 mm in, overlap by 10 mm',
    fix: 'set `inset: 235 mm`',
    inside: standing('feet: foot M8, inset: 235'),
  },
]
