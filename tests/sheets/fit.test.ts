import { describe, expect, test } from 'vitest'
import { openDefinition } from '../../src/outputs/index.ts'
import { renderProblems } from '../../src/project/index.ts'

const open = (text: string) => {
  const opened = openDefinition(text, 'test.yaml')
  if (!opened.ok) throw new Error(renderProblems(opened.problems))
  return opened.built
}

/** A strip of board 300 wide and 1000 long: parts 296 deep lie on it in one row. */
const strip = (kerf: string, more = '', width = 'as large as fits'): string => `storyrod: 1
kerf: ${kerf}
${more}
stock:
  board: { thickness: 18, sheet: [1000, 300], edge trim: 0, sheets: 1 }
modules:
  box: { width: ${width}, depth: 296, carcase height: 200, stock: board, carcase: { back: none } }
`

describe('as large as fits', () => {
  test('by hand: two sides, top and bottom in one row with three cuts', () => {
    // 2 × 200 + 2 × (S − 36) + 3 × 4 = 1000 → S = 330.
    expect(open(strip('4')).project.modules[0]?.width).toBe(330)
    // With a kerf of 3.2: S = 331.2, and whole millimetres: 331.
    const of = open(strip('3.2'))
    expect(of.project.modules[0]?.width).toBe(331)
    // 400 + 2 × 295 = 990 of 1000 mm in use, 296 of 300: 97.68 %.
    expect(of.findings).toMatchObject([
      { rule: 'fitted-size', severity: 'note', message: 'as large as fits is 331 mm: 1 sheet of board, 98 % used' },
    ])
  })

  test('step and limit', () => {
    expect(open(strip('3.2', 'fit: { step: 25 }')).project.modules[0]?.width).toBe(325)
    const limited = open(strip('3.2', 'fit: { at most: 300 }'))
    expect(limited.project.modules[0]?.width).toBe(300)
    expect(limited.findings[0]?.message).toContain('300 mm, the most that is allowed')
    // In inches, sixteenths: 331.2 / 1.5875 = 208.6 → 208 × 1.5875 = 330.2 mm = 13 in.
    const inches = strip('3.2 mm', 'units: in').replace('18,', '18 mm,').replace('[1000, 300]', '["1000 mm", "300 mm"]')
    expect(open(inches.replace('296', '296 mm').replace('200', '200 mm')).project.modules[0]?.width).toBeCloseTo(
      330.2,
      9,
    )
  })

  test('square in plan, fronts and back included, and alike in all modules that ask', () => {
    const of = open(`storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250], sheets: 3 }
  thin: { thickness: 6, sheet: [2500, 1250] }
common: { depth: same as width, carcase height: 700, stock: board, carcase: { back: { sits: applied, stock: thin } } }
modules:
  store: { width: as large as fits, inside: { loose shelves: 2, front: { kind: pair } } }
  shelves: { width: as large as fits, inside: { loose shelves: 3 } }
  narrow: { width: 300 }
`)
    const [store, shelves, narrow] = of.assembly.modules
    expect(store?.size.width).toBe(store?.size.depth)
    expect(shelves?.size).toEqual(store?.size)
    expect(narrow?.size.width).toBe(300)
    expect(of.findings.filter((finding) => finding.severity === 'stop')).toEqual([])
    expect(of.findings.filter((finding) => finding.rule === 'sheets-short')).toEqual([])
  })

  test('no larger size comes out: each is tried by hand in a definition with that size', () => {
    const size = open(strip('3.2')).project.modules[0]?.width ?? 0
    expect(open(strip('3.2', '', String(size))).findings).toEqual([])
    for (const larger of [size + 1, size + 2, size + 10]) {
      expect(open(strip('3.2', '', String(larger))).findings).toMatchObject([
        {
          rule: 'sheets-short',
          severity: 'warn',
          message: `board: its 4 parts need 2 sheets with a kerf of 3.2 mm, and there is 1; a better layout may be found by hand`,
        },
      ])
    }
  })

  test('what can never come out is an error at the size', () => {
    const opened = openDefinition(strip('3.2').replace('[1000, 300]', '[1000, 200]'), 'test.yaml')
    expect(
      opened.ok ? '' : renderProblems(opened.problems),
    ).toBe(`test.yaml:7:17  error  modules › box › width: no size is so small that all parts come out of the sheets that there are
  7 |   box: { width: as large as fits, depth: 296, carcase height: 200, stock: board, carcase: { back: no…
    |                 ^^^^^^^^^^^^^^^^
  expected: more sheets, or fewer or simpler modules
`)
  })
})

test('lipped panels leave the saw smaller', () => {
  // As above, but the sides are lipped 2 mm at their top and bottom edges, so each is 4 shorter: 8 in all, and the width
  // takes half of it: 331.2 + 4 = 335.2 → 335.
  const lipped = strip('3.2').replace(
    'stock: board, carcase',
    'stock: board, lipping: [{ thickness: 2, edges: [top, bottom], on: [sides] }], carcase',
  )
  expect(open(lipped).project.modules[0]?.width).toBe(335)
})
