import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { paperSize } from '../../src/project/index.ts'
import { gridOf } from '../../src/templates/bounds.ts'
import { fieldOf } from '../../src/templates/field.ts'
import {
  type Face,
  type FacePlan,
  liesWhole,
  MARK_REACH,
  type Paper,
  type Piece,
  planWhole,
  type Rect,
} from '../../src/templates/index.ts'

const OPTIONS = { margin: 10, overlap: 14, reserve: { left: 9, bottom: 24 } }
const NOISE = 1e-6

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const beyond = fc.constantFrom(8, 24)
const faces: fc.Arbitrary<Face> = fc
  .record({
    width: real(30, 1600),
    height: real(30, 900),
    surround: fc.record({ x0: beyond, x1: beyond, y0: beyond, y1: beyond }),
    // Shares of the panel with its flaps: a round may lie on a flap, and over the corner of one.
    rounds: fc.array(fc.tuple(real(-0.02, 1.02), real(-0.02, 1.02), real(0, 20)), { maxLength: 30 }),
  })
  .map(({ width, height, surround, rounds }) => ({
    width,
    height,
    surround,
    things: rounds.map(([x, y, radius]) => ({ at: [x * width, y * height] as const, radius })),
  }))
const papers: fc.Arbitrary<Paper> = fc.oneof(
  fc.constantFrom('A4', 'A3', 'Letter', 'Legal', 'Tabloid').map((name) => paperSize(name as 'A4')),
  fc.constantFrom(610, 914.4).map((width): Paper => ({ width, height: 5000, roll: true })),
)

const meet = (a: Rect, b: Rect): Rect => ({
  min: [Math.max(a.min[0], b.min[0]), Math.max(a.min[1], b.min[1])],
  max: [Math.min(a.max[0], b.max[0]), Math.min(a.max[1], b.max[1])],
})
const wide = ({ min, max }: Rect): number => max[0] - min[0]
const high = ({ min, max }: Rect): number => max[1] - min[1]

/** Which of the edges a window shows with its fold line, and 40 mm of it or all; and 40 mm of the panel beside it. */
function shown({ width, height, surround }: Face, window: Rect): { upright: boolean; level: boolean } {
  const on = meet(window, { min: [0, 0], max: [width, height] })
  const enough = wide(on) >= Math.min(40, width) - NOISE && high(on) >= Math.min(40, height) - NOISE
  const past = (by: number, side: number): boolean => by >= Math.min(8, side) - NOISE
  const upright = past(-window.min[0], surround.x0) || past(window.max[0] - width, surround.x1)
  const level = past(-window.min[1], surround.y0) || past(window.max[1] - height, surround.y1)
  return { upright: enough && upright, level: enough && level }
}

/** The pieces that a piece hangs together with over its joins, itself among them. */
function groupOf(plan: FacePlan, start: Piece): Piece[] {
  const group = [start]
  for (const piece of group)
    for (const { to } of piece.joins) {
      const next = plan.pieces.find(({ label }) => label === to)
      if (next !== undefined && !group.includes(next)) group.push(next)
    }
  return group
}

const plans = fc.record({ face: faces, paper: papers }).map(({ face, paper }) => ({
  face,
  paper,
  plan: planWhole(face, paper, OPTIONS),
}))

describe('the pages of any face on any paper', () => {
  test('show every round whole, fit on their sheets, and are as many as is said', () => {
    fc.assert(
      fc.property(plans, ({ face, paper, plan }) => {
        for (const round of face.things) expect(plan.pieces.some(({ window }) => liesWhole(round, window))).toBe(true)
        plan.pieces.forEach(({ window, at, paper: sheet, sheet: number }, k) => {
          expect(number).toBe(k)
          expect(at[0]).toBeGreaterThanOrEqual(19 - NOISE)
          expect(at[1]).toBeGreaterThanOrEqual(34 - NOISE)
          expect(at[0] + wide(window)).toBeLessThanOrEqual(sheet.width - 10 + NOISE)
          expect(at[1] + high(window)).toBeLessThanOrEqual(sheet.height - 10 + NOISE)
          const sides = [sheet.width, sheet.height].sort((a, b) => a - b)
          if (paper.roll === true) {
            expect(sides).toContain(paper.width)
            expect(Math.max(...sides)).toBeLessThanOrEqual(5000)
          } else expect(sides).toEqual([paper.width, paper.height])
        })
        expect(plan.sheets).toBe(plan.pieces.length)
        expect(plan.sheets).toBeGreaterThanOrEqual(plan.least)
        // A grid of which rows and columns are moved so that no round is cut; the plain one may cut some and be smaller.
        expect(plan.sheets).toBeLessThanOrEqual(gridOf(fieldOf(face, paper, OPTIONS), 'keep').length)
        expect(new Set(plan.pieces.map(({ label }) => label)).size).toBe(plan.sheets)
      }),
      { numRuns: 150 },
    )
  })

  test('lie by a corner of the panel, or hang together with pages that show two edges square to each other', () => {
    fc.assert(
      fc.property(plans, ({ face, plan }) => {
        for (const piece of plan.pieces) {
          const edges = groupOf(plan, piece).map(({ window }) => shown(face, window))
          expect(edges.some(({ upright }) => upright)).toBe(true)
          expect(edges.some(({ level }) => level)).toBe(true)
        }
      }),
      { numRuns: 150 },
    )
  })

  test('share seams wide and long enough, with two marks of one letter each on both pages', () => {
    fc.assert(
      fc.property(plans, ({ face, plan }) => {
        const panel: Rect = { min: [0, 0], max: [face.width, face.height] }
        plan.pieces.forEach((piece, index) => {
          for (const { to, seam, along, over } of piece.joins) {
            const place = plan.pieces.findIndex(({ label }) => label === to)
            const mate = plan.pieces[place]
            expect(mate?.joins.find((join) => join.to === piece.label)).toEqual({
              to: piece.label,
              seam,
              along,
              over: !over,
            })
            expect(over).toBe(index > place)
            expect(mate && meet(piece.window, mate.window)).toEqual(seam)
            const on = meet(seam, panel)
            const [long, across] = along === 0 ? [wide(on), high(on)] : [high(on), wide(on)]
            const [most, narrow] = along === 0 ? [face.width, face.height] : [face.height, face.width]
            expect(long).toBeGreaterThanOrEqual(Math.min(80, most) - NOISE)
            expect(across).toBeGreaterThanOrEqual(Math.min(14, narrow) - NOISE)
            const marks = piece.marks.filter(({ pieces }) => pieces.includes(to))
            expect(marks).toHaveLength(2)
            expect(mate?.marks).toEqual(expect.arrayContaining(marks))
            for (const { at } of marks) expect(liesWhole({ at, radius: MARK_REACH }, seam)).toBe(true)
            const [a, b] = marks.map(({ at }) => at[along])
            // 6 at each end are the marks' own reach.
            expect(Math.abs((b ?? 0) - (a ?? 0))).toBeGreaterThanOrEqual(Math.min(60, long - 2 * MARK_REACH) - NOISE)
          }
        })
        const marks = new Map(plan.pieces.flatMap((piece) => piece.marks.map((mark) => [mark.id, mark])))
        const joins = plan.pieces.flatMap((piece) => piece.joins).length / 2
        expect(marks.size).toBe(2 * joins)
      }),
      { numRuns: 150 },
    )
  })

  test('are the same each time', () => {
    fc.assert(
      fc.property(faces, papers, (face, paper) => {
        expect(planWhole(face, paper, OPTIONS)).toEqual(planWhole(face, paper, OPTIONS))
      }),
      { numRuns: 20 },
    )
  })

  test('of a face with few holes, no mark touches a hole', () => {
    fc.assert(
      fc.property(plans, ({ face, plan }) => {
        fc.pre(face.things.length <= 4)
        const { things } = face
        for (const { at } of plan.pieces.flatMap(({ marks }) => marks))
          for (const round of things)
            expect(Math.hypot(at[0] - round.at[0], at[1] - round.at[1])).toBeGreaterThanOrEqual(
              round.radius + MARK_REACH,
            )
      }),
      { numRuns: 40 },
    )
  })
})
