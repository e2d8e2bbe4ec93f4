import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const printed = (outputs: string): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none } }
outputs: { ${outputs} }
`
const bars = (across: string, down = '180'): string => printed(`check bars: [${across}, ${down}]`)

export const printingCases: readonly RuleCase[] = [
  {
    rule: 'page-bars',
    // 210 − 2 × 15.1 = 179.8; 210 − 180 = 30, half of it 15.
    trips: printed('margin: 15.1'),
    severity: 'stop',
    message: 'A4 less margins of 15.1 mm has room for 179.8 mm across; the check bar needs 180 mm',
    fix: 'print on A3, or take a margin of at most 15 mm, if the printer leaves no more blank',
    inside: printed('margin: 15'),
  },
  {
    rule: 'page-bars',
    what: 'corrected',
    // 180 × 180 / 178.2 = 181.82, and 215.9 − 2 × 17.1 = 181.7; (215.9 − 181.818) / 2 = 17.04.
    trips: printed('paper: Letter, margin: 17.1, check bars: [178.2, 180]'),
    severity: 'stop',
    message: 'Letter less margins of 17.1 mm has room for 181.7 mm across; the check bar needs 181.8 mm',
    fix: 'print on Tabloid, or take a margin of at most 17 mm, if the printer leaves no more blank',
    inside: printed('paper: Letter, margin: 17, check bars: [178.2, 180]'),
  },
  {
    rule: 'printer-correction',
    what: 'warned of beyond 1 %',
    // 178.2 is 99 %.
    trips: bars('178.1'),
    severity: 'warn',
    message:
      'the check bar across (along the short side of the sheet) reads 178.1 mm, 98.944 % of 180 mm; a printer is not over 1 % off',
    fix: 'print the page anew at actual size, without this key, and measure the whole bar; see that neither bar was taken for the other',
    inside: bars('178.2'),
  },
  {
    rule: 'printer-correction',
    what: 'stopped beyond 3 %',
    // 180 × 1.03 = 185.4. Just inside the limit that is set here.
    trips: bars('180', '185.5'),
    severity: 'stop',
    message:
      'the check bar down (along the long side of the sheet) reads 185.5 mm, 103.056 % of 180 mm; a printer is not over 3 % off',
    fix: 'print the page anew at actual size, without this key, and measure the whole bar; see that neither bar was taken for the other',
    inside: `${bars('180', '185.5')}findings: { printer-correction: { warn: 3.1, stop: 4 } }\n`,
  },
  {
    rule: 'printer-correction',
    what: 'in the wrong unit',
    // 7.07 in = 179.578 mm.
    trips: bars('7.07'),
    severity: 'stop',
    message:
      'the check bar across (along the short side of the sheet) reads 7.07 mm, 3.928 % of 180 mm; a printer is not over 3 % off',
    fix: 'it reads like 7.07 in: say so',
    inside: bars('7.07 in'),
  },
  {
    rule: 'printer-correction',
    what: 'of the 100 mm mark',
    // 99.5 × 1.8 = 179.1; 99.5 / 180 = 55.278 %.
    trips: bars('179.1', '99.5'),
    severity: 'stop',
    message:
      'the check bar down (along the long side of the sheet) reads 99.5 mm, 55.278 % of 180 mm; a printer is not over 3 % off',
    fix: 'it reads like the 100 mm mark: measure the whole bar of 180 mm, which comes to 179.1 mm',
    inside: bars('179.1', '179.1'),
  },
  {
    rule: 'printer-correction',
    what: 'of a plotter',
    // 178.1 / 180 = 98.944 %.
    trips: printed('paper: roll 610, check bars: [180, 178.1]'),
    severity: 'warn',
    message: 'the check bar down (along the roll) reads 178.1 mm, 98.944 % of 180 mm; a printer is not over 1 % off',
    fix: 'print the page anew at actual size, without this key, and measure the whole bar; see that neither bar was taken for the other',
    inside: printed('paper: roll 610, check bars: [180, 178.2]'),
  },
]
