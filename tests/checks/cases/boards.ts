import { ROUND_STOCK } from '../../support/define.ts'

/** 600 × 400 × 720 of 18 mm board, unless the figures say otherwise; no back, dowels. */
export const box = (
  inside: string,
  { thickness = '18', carcase = 'back: none, joint: dowel', stocks = '' } = {},
): string => `
storyrod: 1
stock:
  board: { thickness: ${thickness}, sheet: [2500, 1250], density: 685 }
  thin: { thickness: 6, sheet: [2500, 1250], density: 670 }
${stocks}
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { ${carcase} }, inside: { ${inside} } }
`

/** Two bays beside each other, a partition of 18 between them that stands on the bottom, 18 above the floor of the carcase. */
export const bays = (left: string, right: string, carcase = 'back: none, joint: dowel'): string => `${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 400
    carcase height: 720
    stock: board
    carcase: { ${carcase} }
    inside:
      side by side:
        - { ${left} }
        - { ${right} }
`

/** A fixed shelf on the left whose middle lies 18 + 293 + 9 = 320 up, a multiple of the pins' 32; 302 above the partition's end. */
export const SHELF = (joint: string): string => `dividers: { joint: { ${joint} } }, stacked: [{}, { size: 293 }]`
export const pins = (datum: string): string => `loose shelves: { count: 1, pins: { keep clear: 64, datum: ${datum} } }`
