import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Panel } from '../../src/panel/index.ts'
import { type LoosePiece, liesWhole, markLetters, planStrips, type StripFace } from '../../src/templates/index.ts'
import { panelOf, row } from '../drawing/page-panels.ts'
import { LARGE, laid, marksOf, rowedPanels, SMALL, seen } from './strips-cases.ts'
import '../support/seed.ts'

const pin = { d: 5, deep: 13, purpose: 'shelf pin' } as const
const face = (panel: Panel): StripFace => ({ panel, face: 'A' })
const JOINED = { rooms: LARGE, least: 3, twice: false, long: 'joined', others: [] } as const

/** 360 × 540, front below, bottom at the left: eight pins each 32 from 96, at 37 from the front and 140 from the back. */
const LOW = panelOf({
  name: 'low side',
  length: 360,
  width: 540,
  bores: [...row({ x: 96, y: 37, ...pin }, [32, 0], 8), ...row({ x: 96, y: 400, ...pin }, [32, 0], 8)],
})

describe('two pin rows of the same holes', () => {
  const { pieces, marked } = planStrips(face(LOW), JOINED)
  const [strip] = pieces

  test('are marked with one strip, 37 from the front folded over it, and stopped at the bottom', () => {
    expect(pieces.map(({ label, kind }) => `${label} ${kind}`)).toEqual(['S1 strip'])
    expect(marked.size).toBe(16)
    expect(strip?.use.origin).toEqual([96, 37])
    expect(strip?.use.places[0]).toEqual({ at: [96, 37], turned: false, folds: ['y0', 'x0'] })
  })
  test('the rear one on a pencil line at 400, since the back edge is 140 away; stopped alike', () => {
    expect(strip?.use.places.slice(1)).toEqual([{ at: [96, 400], turned: false, folds: ['x0'] }])
  })
  test('the strip shows 8 beyond both edges, 15 beyond the last rim, 12 beside the row', () => {
    // Last hole at 96 + 7 × 32 = 320; its rim 2.5 further; 320 + 2.5 + 15 = 337.5. Across: 37 + 2.5 + 12 = 51.5.
    expect(strip?.window).toEqual({ min: [-8, -8], max: [337.5, 51.5] })
  })
})

describe('screws along two opposite edges', () => {
  // 9 from the left and 9 from the right of 300, at 50, 200, 350, 490 of 540: not the same from both ends.
  const ends = [50, 200, 350, 490].flatMap((y) => [9, 291].map((x) => ({ x, y, d: 5, deep: 'through' as const })))
  const panel = panelOf({ name: 'board', length: 300, width: 540, bores: ends })
  const rooms = { upright: { width: 260, height: 600 }, lying: { width: 600, height: 260 } }

  test('a strip with a fold line at both sides of its row serves both', () => {
    const { pieces } = planStrips(face(panel), { ...JOINED, rooms, twice: true })
    expect(pieces.length).toBe(1)
    const use = pieces[0]?.use
    expect(use?.places[0]).toEqual({ at: [9, 50], turned: false, folds: ['x0', 'y0'] })
    expect(use?.places[1]?.at).toEqual([291, 50])
    expect(use?.places[1]?.turned).toBe(false)
    expect([...(use?.places[1]?.folds ?? [])].sort()).toEqual(['x1', 'y0'])
    // The row at 9 has its second fold line at 9 + 9.
    expect(use?.secondFold).toEqual({ axis: 0, at: 18 })
    // 8 beyond the left edge; 42 of the board, more than 18 + 8. Below 8; the last rim at 492.5 and 15.
    expect(pieces[0]?.window).toEqual({ min: [-8, -8], max: [42, 507.5] })
  })
  test('with one fold line, the other row lies on a pencil line', () => {
    const { pieces } = planStrips(face(panel), { ...JOINED, rooms })
    expect(pieces[0]?.use.places[1]).toEqual({ at: [291, 50], turned: false, folds: ['y0'] })
    expect(pieces[0]?.use.secondFold).toBeUndefined()
  })
  test('rows that are the same from both ends are served turned half round, with one fold line', () => {
    const even = [50, 200, 340, 490].flatMap((y) => [9, 291].map((x) => ({ x, y, d: 5, deep: 8 })))
    const { pieces } = planStrips(face(panelOf({ name: 'even', length: 300, width: 540, bores: even })), {
      ...JOINED,
      rooms,
    })
    expect(pieces.length).toBe(1)
    // Its hole at 50 comes to lie at 490; the fold goes over the right edge, the stop over the far one.
    expect(pieces[0]?.use.places[1]?.at).toEqual([291, 490])
    expect(pieces[0]?.use.places[1]?.turned).toBe(true)
    expect([...(pieces[0]?.use.places[1]?.folds ?? [])].sort()).toEqual(['x1', 'y1'])
  })
})

describe('both hands', () => {
  const mirrored: Panel = {
    ...LOW,
    id: 'glaze-store/right',
    name: 'right side',
    // A mirror image: its lower end is at the right.
    edges: { x0: 'top', x1: 'bottom', y0: 'front', y1: 'back' },
    bores: LOW.bores.map((bore) => ({ ...bore, at: [360 - bore.at[0], bore.at[1], bore.at[2]] as const })),
  }
  test('a side whose rows are mirrored from end to end takes the strip turned half round', () => {
    const { pieces } = planStrips(face(LOW), { ...JOINED, twice: true, others: [LOW, mirrored] })
    expect(pieces[0]?.use.hand).toEqual({ other: 'right side', turned: true })
    expect(pieces[0]?.use.secondFold).toEqual({ axis: 1, at: 74 })
    // 2 × 37 + 8
    expect(pieces[0]?.window.max[1]).toBe(82)
  })
  test('a door hung at the other side takes it the same way up', () => {
    const holes = row({ x: 60, y: 22, d: 8, deep: 11 }, [200, 0], 3)
    const [left, right] = [
      panelOf({ name: 'left door', length: 600, width: 300, bores: holes }),
      panelOf({ name: 'right door', length: 600, width: 300, bores: holes.map((hole) => ({ ...hole, y: 278 })) }),
    ]
    const { pieces } = planStrips(face(left), {
      ...JOINED,
      twice: true,
      others: [{ ...right, id: 'glaze-store/other' }],
    })
    // Its row is at 300 - 278 = 22 from the far edge.
    expect(pieces[0]?.use.hand).toEqual({ other: 'right door', turned: false, edge: 'back' })
  })
  test('what is measured across would be measured from the wrong edge of a door hung at the other side', () => {
    // Rows at 22 and 200 from the front; on the other door at 22 and 200 from the back. The second row is on a pencil line,
    // `200 from front`, which is not so there: no other hand.
    const near = row({ x: 60, y: 22, d: 8, deep: 11 }, [200, 0], 3)
    const both = [...near, ...row({ x: 60, y: 200, d: 8, deep: 11 }, [200, 0], 3)]
    const left = panelOf({ name: 'left door', length: 600, width: 500, bores: both })
    const mirrored = both.map((hole) => ({ ...hole, y: 500 - hole.y }))
    const other = {
      ...left,
      ...panelOf({ name: 'right door', length: 600, width: 500, bores: mirrored }),
      id: 'x/other',
    }
    const { pieces } = planStrips(face(left), { ...JOINED, twice: true, others: [other] })
    expect(pieces[0]?.use.places.length).toBe(2)
    expect(pieces.map(({ use }) => use.hand)).toEqual(pieces.map(() => undefined))
    // Where its edges are a mirror image too, the words hold.
    const edges = { ...other.edges, y0: other.edges.y1, y1: other.edges.y0 }
    const swapped = planStrips(face(left), { ...JOINED, twice: true, others: [{ ...other, edges }] })
    expect(swapped.pieces[0]?.use.hand).toEqual({ other: 'right door', turned: false, edge: 'front' })
  })
  test('a panel with the very same rows, or with other ones, is not the other hand', () => {
    const same = { ...LOW, id: 'glaze-store/same' }
    const shifted = { ...mirrored, bores: mirrored.bores.slice(1) }
    const { pieces } = planStrips(face(LOW), { ...JOINED, twice: true, others: [same, shifted] })
    expect(pieces[0]?.use.hand).toBeUndefined()
    expect(pieces[0]?.use.secondFold).toBeUndefined()
  })
})

describe('a row longer than its piece', () => {
  // 18 pins each 32 from 96: the last at 640. On A4 on its side 266 of paper.
  const long = panelOf({ name: 'side', length: 760, width: 540, bores: row({ x: 96, y: 37, ...pin }, [32, 0], 18) })

  test('is joined of pieces that show 40 of each other, cut clear of holes', () => {
    const { pieces } = planStrips(face(long), { ...JOINED, rooms: SMALL })
    // −8 to 657.5 are 665.5; (665.5 − 40) / (266 − 40) = 2.77: three pieces.
    expect(pieces.map(({ label }) => label)).toEqual(['S1.1', 'S1.2', 'S1.3'])
    expect(pieces[0]?.window.min[0]).toBe(-8)
    expect(pieces[2]?.window.max[0]).toBe(657.5)
    for (const [k, piece] of pieces.entries()) {
      const next = pieces[k + 1]
      if (next === undefined) continue
      expect(piece.window.max[0] - next.window.min[0]).toBeCloseTo(40, 9)
      for (const cut of [piece.window.max[0], next.window.min[0]])
        for (let n = 0; n < 18; n += 1) expect(Math.abs(96 + 32 * n - cut)).toBeGreaterThanOrEqual(2.5 + 2)
    }
    expect(pieces.map(({ joins }) => joins.map(({ to, over }) => `${to} ${over ? 'over' : 'under'}`))).toEqual([
      ['S1.2 under'],
      ['S1.1 over', 'S1.3 under'],
      ['S1.2 over'],
    ])
    expect([...new Set(pieces.flatMap(({ marks }) => marks.map(({ id }) => id)))]).toEqual(['a', 'b', 'c', 'd'])
  })
  test('or has its first five holes, and is moved four pitches, four times, the last time up to its second hole', () => {
    // 96 + 8 + 4 × 32 + 2.5 + 15 = 249.5 of 266; a sixth hole would make 281.5. 18 = 5 + 4 + 4 + 4 + 1.
    const { pieces } = planStrips(face(long), { ...JOINED, rooms: SMALL, long: 'repeated' })
    expect(pieces.map(({ kind }) => kind)).toEqual(['repeated'])
    expect(pieces[0]?.use.repeat).toEqual({ holes: 5, step: 32, pitches: 4, move: [128, 0], times: 4, last: 2 })
    expect(pieces[0]?.window.max[0]).toBe(96 + 128 + 17.5)
  })
  test('is moved down where the far end is the stop', () => {
    const from = panelOf({
      ...{ name: 'side', length: 760, width: 540 },
      datum: { x: 'x1', y: 'y0' },
      bores: row({ x: 96, y: 37, ...pin }, [32, 0], 18),
    })
    const { pieces } = planStrips(face(from), { ...JOINED, rooms: SMALL, long: 'repeated' })
    // From the right end, 760 − 640 = 120 to its first hole: 120 + 8 + 3 × 32 + 17.5 = 241.5.
    expect(pieces[0]?.use.origin).toEqual([640, 37])
    expect(pieces[0]?.use.repeat).toEqual({ holes: 4, step: 32, pitches: 3, move: [-96, 0], times: 5, last: 3 })
  })
  test('an uneven row is never moved along', () => {
    const uneven = [0, 32, 64, 100, 300, 420, 560].map((x) => ({ x: 96 + x, y: 37, ...pin }))
    const panel = panelOf({ name: 'side', length: 760, width: 540, bores: uneven })
    const { pieces } = planStrips(face(panel), { ...JOINED, rooms: SMALL, long: 'repeated' })
    expect(pieces.every(({ use }) => use.repeat === undefined)).toBe(true)
  })
})

test('dowels in an edge: a strip over that edge, the holes on the flap at their distance from the face', () => {
  // Thickness 18.1, dowels in its middle at 9.05 below face A.
  const bores = row({ on: 'x0', x: 0, y: 40, d: 8, deep: 21 }, [0, 100], 3)
  const { pieces } = planStrips(face(panelOf({ name: 'shelf', length: 500, width: 320, bores })), JOINED)
  expect(pieces[0]?.use.origin).toEqual([-9.05, 40])
  expect(pieces[0]?.use.places).toEqual([{ at: [-9.05, 40], turned: false, folds: ['x0', 'y0'] }])
  // All of the edge and 4 more; 42 of the panel. From 8 below the end to 240 + 4 + 15.
  expect(pieces[0]?.window).toEqual({ min: [-18.1 - 4, -8], max: [42, 259] })
})

test('letters of marks: a to z, then aa', () => {
  expect([0, 25, 26, 27, 702].map(markLetters)).toEqual(['a', 'z', 'aa', 'ab', 'aaa'])
})

const options = fc.record({
  rooms: fc.constantFrom(SMALL, LARGE),
  least: fc.constantFrom(2, 3),
  twice: fc.boolean(),
  long: fc.constantFrom<'joined' | 'repeated'>('joined', 'repeated'),
})
const EDGE_AXIS = { x0: 0, x1: 0, y0: 1, y1: 1 } as const

describe('any panel with rows', () => {
  test('each strip, laid and moved as it says, marks bores of the panel with their own bit, and all that it promises', () => {
    fc.assert(
      fc.property(rowedPanels, fc.constantFrom<'A' | 'B'>('A', 'B'), options, (panel, side, how) => {
        const at: StripFace = { panel, face: side }
        const { pieces, marked } = planStrips(at, { ...how, others: [] })
        const hit = new Set<string>()
        for (const piece of pieces) {
          for (const { at: place, pattern } of marksOf(at, piece)) {
            const bore = panel.bores.find((one) => {
              const onSide = one.surface === side || (side === 'A' && one.surface !== 'B')
              const [x, y] = seen(at, one)
              return onSide && Math.hypot(x - place[0], y - place[1]) < 1e-6
            })
            expect(bore).toMatchObject({ diameter: pattern.diameter, depth: pattern.depth, through: pattern.through })
            hit.add(bore?.id ?? '')
          }
        }
        expect([...hit].sort()).toEqual([...marked].sort())
      }),
      { numRuns: 100 },
    )
  })

  test('each of a strip’s holes is whole on one of its pieces, which fit a sheet, are tied, and joined end to end', () => {
    fc.assert(
      fc.property(rowedPanels, fc.constantFrom<'A' | 'B'>('A', 'B'), options, (panel, side, how) => {
        const at: StripFace = { panel, face: side }
        const { pieces } = planStrips(at, { ...how, others: [] })
        for (const use of new Set(pieces.map((piece) => piece.use))) {
          const own = pieces.filter((piece) => piece.use === use)
          expectWhole(at, own)
          expectTied(at, own)
          for (const { window } of own) {
            const [width, height] = [window.max[0] - window.min[0], window.max[1] - window.min[1]]
            const fits = [how.rooms.upright, how.rooms.lying].some(
              (room) => width <= room.width + 1e-9 && height <= room.height + 1e-9,
            )
            expect(fits).toBe(true)
          }
          // A chain: each piece is joined to the next by two marks that both show.
          const joins = own.flatMap(({ joins: some }) => some)
          expect(joins.length).toBe(2 * (own.length - 1))
          for (const piece of own)
            for (const mark of piece.marks) expect(liesWhole({ at: mark.at, radius: 5 }, piece.window)).toBe(true)
          const letters = own.flatMap(({ marks }) => marks.map(({ id }) => id))
          for (const letter of new Set(letters)) expect(letters.filter((one) => one === letter).length).toBe(2)
        }
        expect(new Set(pieces.map(({ label }) => label)).size).toBe(pieces.length)
      }),
      { numRuns: 100 },
    )
  })
})

function expectWhole(at: StripFace, pieces: readonly LoosePiece[]): void {
  for (const id of pieces[0]?.use.bores ?? []) {
    const bore = at.panel.bores.find((one) => one.id === id)
    if (bore === undefined) throw new Error(`${id} is no bore`)
    const round = { at: seen(at, bore), radius: bore.diameter / 2 }
    expect(pieces.some(({ window }) => liesWhole(round, window))).toBe(true)
  }
}

/** Every edge that a strip is folded over at some place lies there on a line that it shows; else its row is measured. */
function expectTied(at: StripFace, pieces: readonly LoosePiece[]): void {
  const [first] = pieces
  if (first === undefined) throw new Error('a strip without a piece')
  const { use } = first
  const size = [at.panel.length, at.panel.width] as const
  const edges = { x0: 0, x1: size[0], y0: 0, y1: size[1] }
  const drawn = use.places[0].folds.map((edge) => ({ axis: EDGE_AXIS[edge], at: edges[edge] }))
  const lines = [...drawn, ...(use.secondFold === undefined ? [] : [use.secondFold])]
  for (const line of lines) {
    const shown = pieces.some(
      ({ window }) => window.min[line.axis] < line.at - 3 && window.max[line.axis] > line.at + 3,
    )
    expect(shown).toBe(true)
  }
  for (const place of use.places) {
    const fallsOn = lines.map(({ axis, at: from }) => {
      const point = axis === 0 ? ([from, 0] as const) : ([0, from] as const)
      return { axis, at: laid(first, place, point)[axis] }
    })
    for (const edge of place.folds) {
      const found = fallsOn.some(({ axis, at: to }) => axis === EDGE_AXIS[edge] && Math.abs(to - edges[edge]) < 1e-6)
      expect(found).toBe(true)
    }
  }
  expect(use.along).toBeDefined()
  expect(pieces.some(({ window }) => liesWhole({ at: use.origin, radius: 0 }, window))).toBe(true)
}
