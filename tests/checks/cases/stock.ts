import { type Built, openDefinition } from '../../../src/outputs/index.ts'
import type { RuleCase } from './case.ts'

/** With sizes that are as large as fits. */
function opened(text: string): Built {
  const result = openDefinition(text, 'test.yaml')
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join())
  return result.built
}

const box = (stock: string, rest = 'width: 500, depth: 400, carcase height: 700'): string => `
storyrod: 1
stock:
  board: { ${stock} }
modules:
  box: { ${rest}, stock: board, carcase: { back: none } }
`
const sheet = (size: string, grain = 'along length'): string =>
  box(`thickness: 18, sheet: ${size}, edge trim: 10, grain: ${grain}`)

/** Parts of 700 × 400 (two sides) and 464 × 400 (top and bottom). */
const onHand = (size: string, sheets: number): string =>
  `${box(`thickness: 18, sheet: ${size}, edge trim: 0, sheets: ${sheets}`)}kerf: 4\n`

export const stockCases: readonly RuleCase[] = [
  {
    rule: 'sheet-too-small',
    what: 'only the trim is in the way',
    // 719 − 2 × 10 = 699; (719 − 700) / 2 = 9.5.
    trips: sheet('[719, 420]'),
    severity: 'stop',
    message:
      'box, left side is 700 × 400 mm, its length along the grain; a sheet of board gives 699 × 400 mm; only the edge trim of 10 mm is in the way',
    fix: 'trim no more than 9.5 mm off each edge, if the factory edges are sound, or use a larger sheet',
    inside: sheet('[720, 420]'),
  },
  {
    rule: 'sheet-too-small',
    what: 'the grain is in the way',
    trips: sheet('[650, 1250]'),
    severity: 'stop',
    message:
      'box, right side is 700 × 400 mm, its length along the grain; a sheet of board gives 630 × 1230 mm; it would fit only with its grain across',
    // The smallest that is not smaller than 650 × 1250 either way.
    fix: 'make the module smaller, or use a larger sheet, such as 2500 × 1250 mm',
    inside: sheet('[650, 1250]', 'none'),
  },
  {
    rule: 'sheet-too-small',
    what: 'larger than any that is sold',
    trips: box('thickness: 18, sheet: [2500, 1250]', 'width: 500, depth: 400, carcase height: 3700'),
    severity: 'stop',
    message: 'box, left side is 3700 × 400 mm, its length along the grain; a sheet of board gives 2480 × 1230 mm',
    fix: 'make the module smaller, or use a larger sheet',
    inside: box('thickness: 18, sheet: [2500, 1250]', 'width: 500, depth: 400, carcase height: 2480'),
  },
  {
    rule: 'stock-spread',
    trips: box('thickness: [17.6, 18]'),
    severity: 'warn',
    // (17.6 + 18) / 2 = 17.8.
    message: 'board: the readings lie 0.4 mm apart (17.6, 18); panels are sized with their mean, 17.8',
    fix: 'sort the sheets by thickness and give each its own stock',
    inside: box('thickness: [17.7, 18]'),
  },
  {
    rule: 'stock-spread',
    what: 'by the limit of the definition',
    trips: `${box('thickness: [17.7, 18]')}findings: { stock-spread: { warn: 0.2 } }\n`,
    severity: 'warn',
    message: 'board: the readings lie 0.3 mm apart (17.7, 18); panels are sized with their mean, 17.9',
    fix: 'sort the sheets by thickness and give each its own stock',
    inside: `${box('thickness: [17.6, 18]')}findings: { stock-spread: { warn: 0.4 } }\n`,
  },
  {
    rule: 'sheets-short',
    // Two sides are 2 × 400 + 4 = 804 wide, top and bottom too, beside them 700 + 4 + 464 = 1168 long.
    trips: onHand('[1168, 803]', 1),
    severity: 'warn',
    // 2 × 700 × 400 + 2 × 464 × 400 = 931 200, less than 1168 × 803 = 937 904: the area alone would do.
    message:
      'board: its 4 parts need 2 sheets with a kerf of 4 mm, and there is 1; a better layout may be found by hand',
    fix: 'get 1 more, or make the modules smaller',
    inside: onHand('[1168, 804]', 1),
  },
  {
    rule: 'fitted-size',
    // As above: the height is h where h + 4 + 464 ≤ 1168.
    trips: () =>
      opened(
        `${box(
          'thickness: 18, sheet: [1168, 804], edge trim: 0, sheets: 1',
          'width: 500, depth: 400, carcase height: as large as fits',
        )}kerf: 4\n`,
      ),
    severity: 'note',
    // (2 × 700 + 2 × 464) × 400 = 931 200 of 1168 × 804 = 939 072: 99 %.
    message: 'as large as fits is 700 mm: 1 sheet of board, 99 % used',
    inside: box('thickness: 18, sheet: [1168, 804], edge trim: 0, sheets: 1'),
  },
]
