import { describe, expect, test } from 'vitest'
import {
  type BudgetOptions,
  type FacePlan,
  type FaceToPlan,
  type LoosePiece,
  laidOnSheets,
  type Piece,
  packRooms,
  planBudget,
  type SheetSpec,
} from '../../src/templates/index.ts'
import { panelOf, row } from '../drawing/page-panels.ts'

/** A4 with margins of 10, 9 and 24 for the furniture: 181 × 253 upright, 268 × 166 on its side. */
const SHEET: SheetSpec = { paper: { width: 210, height: 297 }, margin: 10, reserve: { left: 9, bottom: 24 } }

const page = (sheet: number): Piece => ({
  kind: 'face',
  row: sheet,
  column: 0,
  label: `A${sheet + 1}`,
  window: { min: [0, 0], max: [100, 100] },
  sheet,
  paper: SHEET.paper,
  at: [20, 40],
  marks: [],
  joins: [],
})

const pages = (count: number): FacePlan => ({
  pieces: Array.from({ length: count }, (_, sheet) => page(sheet)),
  sheets: count,
  grid: 12,
  least: 1,
})

/** A face whose pages are a certain number while so many of its bores are not marked otherwise; none when all are. */
const faceOf = (face: 'A' | 'B', bores: number, whole: number, some = 1): FaceToPlan => ({
  face,
  whole: (marked) => pages(marked.size === 0 ? whole : marked.size < bores ? some : 0),
})

const pins = { d: 5, deep: 13, purpose: 'shelf pin' } as const
/** 1400 long: 40 pins each 32 from 96, 37 from the front: 96 + 39 × 32 = 1344. */
const LONG = panelOf({ name: 'side', length: 1400, width: 540, bores: row({ x: 96, y: 37, ...pins }, [32, 0], 40) })
const plan = (whole: number, options: Omit<BudgetOptions, 'sheet'>) =>
  planBudget(LONG, [faceOf('A', 40, whole)], { sheet: SHEET, ...options })

describe('room', () => {
  test('margins and furniture taken off, both ways round', () => {
    expect(packRooms(SHEET)).toEqual({ upright: { width: 181, height: 253 }, lying: { width: 268, height: 166 } })
  })
  test('a roll keeps its width; of its length as much is cut off as the pieces need', () => {
    const roll: SheetSpec = { ...SHEET, paper: { width: 610, height: 5000, roll: true } }
    expect(packRooms(roll).lying).toEqual(packRooms(roll).upright)
    const piece: LoosePiece = {
      kind: 'strip',
      label: 'S1',
      window: { min: [0, 0], max: [50, 900] },
      marks: [],
      joins: [],
      use: { name: 'pins', bores: [], cuts: [], origin: [0, 0], places: [{ at: [0, 0], turned: false, folds: [] }] },
    }
    const [laid] = laidOnSheets([piece], roll, 3)
    // 900, two margins of 10, and 24.
    expect(laid).toMatchObject({ sheet: 3, paper: { width: 610, height: 944 }, at: [19, 34] })
  })
})

describe('a budget of sheets', () => {
  test('none is set: pages of the whole face, however many', () => {
    expect(plan(9, {})).toMatchObject({ stage: 'whole', sheets: 9, met: true })
    expect(plan(9, {}).budget).toBeUndefined()
  })
  test('pages of the whole face while they are within it', () => {
    expect(plan(4, { budget: 4 })).toMatchObject({ stage: 'whole', sheets: 4, met: true, budget: 4 })
  })
  test('else strips: 1369.5 of row in six pieces of 268 less 40, two a sheet', () => {
    // −8 to 1344 + 17.5; (1369.5 − 40) / 228 = 5.83: six pieces, 59.5 wide: 59.5 + 3 + 59.5 = 122 of 166: two a sheet.
    const found = plan(9, { budget: 3 })
    expect(found).toMatchObject({ stage: 'strips', sheets: 3, met: true })
    expect(found.faces[0]?.plan.pieces.map(({ label, sheet }) => `${label} on ${sheet}`)).toEqual([
      'S1.1 on 0',
      'S1.2 on 0',
      'S1.3 on 1',
      'S1.4 on 1',
      'S1.5 on 2',
      'S1.6 on 2',
    ])
    expect(found.faces[0]?.plan.grid).toBe(12)
  })
  test('else one repeated strip', () => {
    const found = plan(9, { budget: 1 })
    expect(found).toMatchObject({ stage: 'repeated', sheets: 1, met: true })
    // 104 + 17.5 + 4 × 32 = 249.5 of 268: four pitches, five holes. 40 = 5 + 8 × 4 + 3: the ninth time up to its fourth.
    expect(found.faces[0]?.plan.pieces[0]?.use?.repeat).toMatchObject({ holes: 5, pitches: 4, times: 9, last: 4 })
  })
  test('both faces share it; strips are numbered on from face to face', () => {
    const both = panelOf({
      name: 'partition',
      length: 300,
      width: 200,
      bores: [...row({ x: 96, y: 37, ...pins }, [32, 0], 5), ...row({ on: 'B', x: 112, y: 37, ...pins }, [32, 0], 5)],
    })
    const found = planBudget(both, [faceOf('A', 5, 2), faceOf('B', 5, 2)], { sheet: SHEET, budget: 2 })
    expect(found).toMatchObject({ stage: 'strips', sheets: 2, met: true })
    expect(found.faces.map(({ plan: own }) => own.pieces.map(({ label }) => label))).toEqual([['S1'], ['S2']])
    expect(planBudget(both, [faceOf('A', 5, 2), faceOf('B', 5, 2)], { sheet: SHEET, budget: 3 }).sheets).toBe(2)
  })
  test('where nothing is within it, the plan with the fewest sheets, and it says so', () => {
    // A lone bore in the middle keeps one page of the whole face.
    const panel = panelOf({
      name: 'side',
      length: 300,
      width: 540,
      bores: [...row({ x: 96, y: 37, ...pins }, [32, 0], 5), { x: 200, y: 300, d: 8, deep: 10 }],
    })
    const found = planBudget(panel, [faceOf('A', 6, 6)], { sheet: SHEET, budget: 1 })
    expect(found).toMatchObject({ stage: 'strips', sheets: 2, met: false, budget: 1 })
    // Pages of the whole face come first.
    expect(found.faces[0]?.plan.pieces.map(({ label, sheet }) => `${label} on ${sheet}`)).toEqual([
      'A1 on 0',
      'S1 on 1',
    ])
  })
  test('a face that strips do not help keeps its pages', () => {
    const found = planBudget(LONG, [faceOf('A', 40, 2, 2)], { sheet: SHEET, budget: 1 })
    expect(found.stage).toBe('repeated')
    const scattered = panelOf({ name: 'lone', length: 300, width: 300, bores: [{ x: 100, y: 120, d: 8, deep: 10 }] })
    expect(planBudget(scattered, [faceOf('A', 1, 2)], { sheet: SHEET, budget: 1 })).toMatchObject({
      stage: 'whole',
      sheets: 2,
      met: false,
    })
  })
  test('the last stage is what pieces for one pattern make of the rest', () => {
    const panel = panelOf({
      name: 'side',
      length: 300,
      width: 540,
      bores: [...row({ x: 96, y: 37, ...pins }, [32, 0], 5), { x: 200, y: 300, d: 8, deep: 10 }],
    })
    const lone = panel.bores[5]?.id ?? ''
    const found = planBudget(panel, [faceOf('A', 6, 6)], {
      sheet: SHEET,
      budget: 1,
      hardware: (_, marked) => {
        expect(marked.has(lone)).toBe(false)
        const piece: LoosePiece = {
          kind: 'hardware',
          label: 'H1',
          window: { min: [170, 270], max: [230, 330] },
          marks: [],
          joins: [],
          use: {
            name: 'test hole',
            bores: [lone],
            cuts: [],
            origin: [200, 300],
            places: [{ at: [200, 300], turned: false, folds: [] }],
          },
        }
        return { pieces: [piece], marked: new Set([lone]) }
      },
    })
    expect(found).toMatchObject({ stage: 'hardware', sheets: 1, met: true })
    expect(found.faces[0]?.plan.pieces.map(({ label }) => label)).toEqual(['S1', 'H1'])
  })
})
