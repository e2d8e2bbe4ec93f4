import { describe, expect, test } from 'vitest'
import { paperSize } from '../../src/project/index.ts'
import { type Face, type FacePlan, planWhole, type Round } from '../../src/templates/index.ts'

/*
 * A4 with margins of 10 and a reserve of 9 left and 24 below has room for a window of 210 − 20 − 9 = 181 by
 * 297 − 20 − 24 = 253 upright, and of 297 − 29 = 268 by 210 − 44 = 166 lying.
 */
const A4 = paperSize('A4')
const ROLL = { width: 610, height: 5000, roll: true } as const
const OPTIONS = { margin: 10, overlap: 14, reserve: { left: 9, bottom: 24 } }
const SURROUND = { x0: 8, x1: 8, y0: 8, y1: 8 }

const faceOf = (width: number, height: number, things: readonly Round[]): Face => ({
  width,
  height,
  surround: SURROUND,
  things,
})
const row = (
  first: readonly [number, number],
  step: readonly [number, number],
  count: number,
  radius: number,
): Round[] =>
  Array.from({ length: count }, (_, k) => ({ at: [first[0] + k * step[0], first[1] + k * step[1]], radius }))
const labels = ({ pieces }: FacePlan): string[] => pieces.map(({ label }) => label)
const joins = ({ pieces }: FacePlan): string[] =>
  pieces.flatMap(({ label, joins }) => joins.filter(({ over }) => over).map(({ to }) => `${label} on ${to}`))

describe('a side of 500 × 560 with two pin rows', () => {
  // 13 pins every 32 from 58 to 442, 37 from either long edge; 5.5 round each. A lying page in the left corner, from −8,
  // ends at 260: it shows the pins up to 250. One in the right corner begins at 240: it shows those from 250. So a row
  // takes two pages, each in a corner. No page could show both ends of a row, 395 apart, nor both rows: 4 at least.
  // A plain grid: 516 wide less 14 in steps of 254 are 2 columns; 576 high less 14 in steps of 152 are 4 rows: 8.
  const things = [...row([58, 37], [32, 0], 13, 5.5), ...row([58, 523], [32, 0], 13, 5.5)]
  const plan = planWhole(faceOf(500, 560, things), A4, OPTIONS)

  test('takes four pages where a plain grid takes eight; no fewer could do', () => {
    expect([plan.sheets, plan.grid, plan.least]).toEqual([4, 8, 4])
  })

  test('each lies in a corner of its own, so that none is taped', () => {
    expect(labels(plan)).toEqual(['A1', 'A2', 'B1', 'B2'])
    expect(joins(plan)).toEqual([])
    expect(plan.pieces[0]?.window).toEqual({ min: [-8, 402], max: [260, 568] })
    expect(plan.pieces[3]?.window).toEqual({ min: [240, -8], max: [508, 158] })
  })

  test('windows hang from the top margin, right of what is reserved', () => {
    expect(plan.pieces[0]?.paper).toEqual({ width: 297, height: 210 })
    expect(plan.pieces[0]?.at).toEqual([19, 210 - 10 - 166])
  })
})

test('a door with two hinge cups and a pull: three pages in three corners', () => {
  // 715 × 397. Cups at 80 and 635 along the lower edge, 22.5 up; the pull at 500 and 628, 347 up. A lying page in the
  // upper right corner reaches from 723 − 268 = 455 to the edge and from 405 − 166 = 239 up: it shows both pull holes.
  // Cups 555 apart and the pull each need a page of their own. A plain grid: (731 − 14) / 254 → 3 columns,
  // (413 − 14) / 152 → 3 rows: 9 lying; upright (731 − 14) / 167 → 5 by (413 − 14) / 239 → 2: 10.
  const things = [
    { at: [80, 22.5], radius: 20.5 },
    { at: [635, 22.5], radius: 20.5 },
    { at: [500, 347], radius: 5.5 },
    { at: [628, 347], radius: 5.5 },
  ] as const
  const plan = planWhole(faceOf(715, 397, things), A4, OPTIONS)
  expect([plan.sheets, plan.grid, plan.least]).toEqual([3, 9, 3])
  expect(joins(plan)).toEqual([])
  expect(plan.pieces[0]?.window).toEqual({ min: [455, 239], max: [723, 405] })
})

test('a hole in the middle of a large top is tied to a corner by two more pages', () => {
  // 1200 × 600, the hole at 600, 300 (4 round). From 604 back to −8 are 612: two windows of at most 268 do not reach, so
  // three pages at least. Three do: 336 to 604, 82 to 350, −8 to 260. A plain grid: (1216 − 14) / 254 → 5 columns,
  // (616 − 14) / 152 → 4 rows: 20 lying; upright 8 × 3 = 24.
  const plan = planWhole(faceOf(1200, 600, [{ at: [600, 300], radius: 4 }]), A4, OPTIONS)
  expect([plan.sheets, plan.grid, plan.least]).toEqual([3, 20, 1])
  expect(joins(plan)).toHaveLength(2)
  for (const piece of plan.pieces)
    for (const join of piece.joins) expect(piece.marks.filter(({ pieces }) => pieces.includes(join.to))).toHaveLength(2)
  expect(new Set(plan.pieces.flatMap(({ marks }) => marks.map(({ id }) => id)))).toEqual(new Set(['a', 'b', 'c', 'd']))
})

test('a row in the middle of a long edge takes a page at the corner with it', () => {
  // 1000 × 300, three holes at 300 to 400 by 20: a page of 268 that ends at 404 begins at 136; the corner is one more.
  const plan = planWhole(faceOf(1000, 300, row([300, 20], [50, 0], 3, 4)), A4, OPTIONS)
  expect([plan.sheets, plan.least]).toEqual([2, 1])
  expect(joins(plan)).toEqual(['A2 on A1'])
  const [seam] = plan.pieces[0]?.joins ?? []
  expect(seam?.along).toBe(1)
})

test('a face with nothing to mark takes no page', () => {
  const plan = planWhole(faceOf(400, 300, []), A4, OPTIONS)
  expect([plan.pieces.length, plan.sheets, plan.least]).toEqual([0, 0, 0])
})

test('a hole larger than any page is shown in pieces: all of its rim', () => {
  const hole = { at: [250, 250], radius: 150 } as const
  const plan = planWhole(faceOf(500, 500, [hole]), A4, OPTIONS)
  for (let degrees = 0; degrees < 360; degrees += 10) {
    const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
    const at = [250 + 150 * x, 250 + 150 * y] as const
    const seen = plan.pieces.some(
      // Points of the rim lie at most 10 apart: what lies between two of them may be cut by a page's end.
      ({ window: { min, max } }) =>
        at[0] > min[0] - 10 && at[0] < max[0] + 10 && at[1] > min[1] - 10 && at[1] < max[1] + 10,
    )
    expect(seen).toBe(true)
  }
})

describe('a roll of 610', () => {
  test('a side of 720 × 500 is one sheet, as long as it needs', () => {
    // The roll leaves 610 − 44 = 566 across a lying sheet: 516 fit. Length: 736 + 9 + 20.
    const things = [
      { at: [30, 30], radius: 4 },
      { at: [690, 470], radius: 4 },
    ] as const
    const plan = planWhole(faceOf(720, 500, things), ROLL, OPTIONS)
    expect(plan.sheets).toBe(1)
    const [piece] = plan.pieces
    // What is needed lies from 26 to 694, with room 30 from −4 to 724; a corner brings its 8 beyond the edge.
    expect(piece?.window).toEqual({ min: [-8, -8], max: [724, 508] })
    expect(piece?.paper).toEqual({ width: 732 + 29, height: 610 })
  })

  test('what lies at one end of a long panel takes a short sheet', () => {
    // The hole ends at 103; the corner is laid on with its edge up to −8 + 120 = 112; 30 more: from −8 to 142.
    const plan = planWhole(faceOf(2000, 500, [{ at: [100, 100], radius: 3 }]), ROLL, OPTIONS)
    expect(plan.pieces.map(({ window }) => window)).toEqual([{ min: [-8, -8], max: [142, 508] }])
    // 150 + 29 = 179 would be too short for rulers and title: 210.
    expect(plan.pieces[0]?.paper).toEqual({ width: 210, height: 610 })
  })
})
