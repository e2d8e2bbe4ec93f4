import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const joined = (keys: string, stocks = ''): string => `${ROUND_STOCK}
  thick: { thickness: 40, sheet: [2500, 1250] }
  ${stocks}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, ${keys} }
`
const housed = (stops: string): string =>
  joined(`carcase: { back: none, joint: { fasten: housing, ${stops} } }, inside: { stacked: [{}, {}] }`)
const rebated = (width: string): string =>
  joined(`carcase: { back: { sits: rebated, rebate width: ${width}, joint: pocket screw } }`)

export const jointCases: readonly RuleCase[] = [
  {
    rule: 'screw-bite',
    what: 'too short',
    // 50 long through a side of 40: 10 mm in the top. 50 − 15 = 35 is the thickest board that leaves 15.
    trips: joined('carcase: { back: none }').replace('stock: board', 'stock: thick'),
    severity: 'warn',
    message: 'left side and top: a one-piece screw 7x50 reaches only 10 mm into the top',
    // 70 − 40 = 30.
    fix: 'take a one-piece screw 7x70, which reaches 30 mm into the top',
    inside: joined('carcase: { back: none }')
      .replace('thickness: 40', 'thickness: 35')
      .replace(/stock: board/, 'stock: thick'),
  },
  {
    rule: 'screw-bite',
    what: 'much too short',
    // 25 long through a side of 18: 7 mm, less than 8. The next of 4 mm holes that leaves 15: 18 + 15 = 33, so 35 long.
    trips: joined('carcase: { back: none, joint: screw 3.5x25 }'),
    severity: 'stop',
    message: 'left side and top: a screw 3.5x25 reaches only 7 mm into the top',
    fix: 'take a screw 3.5x35, which reaches 17 mm into the top',
    inside: joined('carcase: { back: none, joint: screw 3.5x35 }'),
  },
  {
    rule: 'screw-bite',
    what: 'a platform’s skins',
    // 30 long through a skin of 25: 5 mm. 25 + 8 = 33.
    trips: joined(
      'carcase: { back: none }, flip-over top: { skin: skin, screws: screw 3.5x30 }',
      'skin: { thickness: 25 }',
    ),
    severity: 'stop',
    message: 'box: platform skins of 25 mm: a screw 3.5x30 reaches only 5 mm into the core',
    fix: 'set `screws: screw 3.5x35`, which reaches 10 mm into the core',
    inside: joined(
      'carcase: { back: none }, flip-over top: { skin: skin, screws: screw 3.5x30 }',
      'skin: { thickness: 22 }',
    ),
  },
  {
    rule: 'housing-short',
    // 400 deep, 170 + 190 taken: 40 remain; 18 + 0.1 wide and 30 more make 48.1. 8.1 of 360 less: 170 × (1 − 0.0225) = 166.17…
    trips: housed('stop front: 170, stop rear: 190'),
    severity: 'stop',
    message: 'the housing for fixed shelf 1 in the left side is only 40 mm long between its ends; 48.1 mm is the least',
    fix: 'set `stop front: 166.1 mm` and `stop rear: 185.7 mm`',
    // 400 − 170 − 181.9 = 48.1
    inside: housed('stop front: 170, stop rear: 181.9'),
  },
  {
    rule: 'pocket-depth',
    // Into a shoulder of 11.5 − 0.5 = 11, so 5.5 below the inside: 5.5 / sin 15° = 21.25 of wood on the slant. The screw
    // bites (18 − 3) / cos 15° = 15.53 in the back, 16.47 of it stay: 4.78 remain. A screw of 4.5 through 5 leaves 3 of 11.
    trips: rebated('11.5'),
    severity: 'stop',
    message: 'back and left side: a pocket screw 32 mm leaves a pocket only 4.8 mm deep; 5 mm is the least',
    // 45 − 18 = 27.
    fix: 'take a screw 4.5x45, which reaches 27 mm into the left side',
    // 5.75 / sin 15° = 22.22; less 16.47: 5.75.
    inside: rebated('12'),
  },
  {
    rule: 'bore-near-edge',
    what: 'the usual screw in thin boards',
    // The hole of 7 leaves (12 − 7) / 2 = 2.5, its pilot of 5 3.5 for 4. One of 5: 3.5 for 3, and a pilot of 3.5 leaves 4.25.
    trips: joined('carcase: { back: none }', 'slim: { thickness: 12 }').replace('stock: board', 'stock: slim'),
    severity: 'stop',
    message:
      'box, top: the one-piece screw pilot 5 × 41, 50 from front in the right edge has only 3.5 mm of wood beside it; 4 mm must remain',
    fix: 'an edge of 12 mm is too thin for a one-piece screw 7x50: take a one-piece screw 5x50',
    inside: joined('carcase: { back: none }', 'slim: { thickness: 13 }').replace('stock: board', 'stock: slim'),
  },
]
