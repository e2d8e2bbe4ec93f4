import { describe, expect, test } from 'vitest'
import { boardFacts, limitOf } from '../../src/project/index.ts'
import { parseAreaLoad, parseMass } from '../../src/project/masses.ts'
import { projectOf } from '../support/define.ts'

describe('a mass', () => {
  test.each([
    [40, 40],
    ['40', 40],
    ['40 kg', 40],
    ['12.5kg', 12.5],
    ['90 lb', 40.8233133],
    ['200 LBS', 90.718474],
    [0, 0],
  ])('%s is %s kg', (written, kg) => {
    expect(parseMass(written)).toBeCloseTo(kg, 9)
  })

  test.each(['heavy', '-5', '40 kg/m2', '1,5 kg', '', '10001', '40 kg 2', Number.NaN, -1])('%s is none', (written) => {
    expect(parseMass(written)).toBeUndefined()
  })
})

describe('a load on an area', () => {
  test.each([
    [195, 195],
    ['195 kg/m2', 195],
    ['195 kg/m²', 195],
    // 0.45359237 / 0.3048² = 4.88242764 kg/m² for 1 lb/ft².
    ['40 lb/ft2', 195.2971056],
    ['15 lb/ft²', 73.2364146],
  ])('%s is %s kg/m²', (written, load) => {
    expect(parseAreaLoad(written)).toBeCloseTo(load, 6)
  })

  test('a mass is none', () => expect(parseAreaLoad('40 kg')).toBeUndefined())
})

const text = (common: string, own: string): string => `
storyrod: 1
units: in
stock: { ply: { thickness: 0.7 } }
common: { depth: 20, carcase height: 30, width: 24, stock: ply${common} }
modules: { box: { ${own} } }
`
const loadsOf = (common: string, own: string) => projectOf(text(common, own)).modules[0]?.loads

describe('the loads of a module', () => {
  test('by default those of the trade, 40 and 15 lb/ft², 200 lb', () => {
    const loads = loadsOf('', '')
    expect(loads?.shelf).toBeCloseTo(195.297, 3)
    expect(loads?.shelfMost).toBeCloseTo(90.718, 3)
    expect(loads?.allShelves).toBeCloseTo(73.236, 3)
    expect(loads?.drawer).toBeCloseTo(73.236, 3)
    expect(loads?.top).toBeUndefined()
  })

  test('key by key from the module and from common; a bare number is kg in an inch project, too', () => {
    const loads = loadsOf(
      ', loads: { on the top: 50, in a drawer: 30 }',
      'loads: { on the top: 20 kg, on a shelf: 60 }',
    )
    expect(loads).toEqual({ said: true, shelf: 60, shelfMost: 200 * 0.45359237, allShelves: 60, drawer: 30, top: 20 })
  })
})

describe('kinds of board', () => {
  test.each([
    ['birch plywood', 18, 685, 8000, 0.8],
    ['fir plywood', 19, 525, 6550, 0.8],
    ['particleboard', 16, 650, 1600, 2.25],
    ['particleboard', 25, 640, 1500, 2.25],
    ['MDF', 9, 730, 2700, 2.25],
    ['MDF', 18, 730, 2200, 2.25],
    ['MDF', 19.1, 730, 2100, 2.25],
  ] as const)('%s, %s mm', (kind, thickness, density, stiffness, creep) => {
    expect(boardFacts(kind, thickness)).toMatchObject({ density, stiffness, creep })
  })

  test('what the stock says itself stands before that of its board', () => {
    const stock = (more: string) =>
      projectOf(`
storyrod: 1
stock: { board: { thickness: 18${more} } }
modules: { box: { width: 600, depth: 400, carcase height: 700, stock: board } }
`).stocks[0]
    expect(stock('')).toMatchObject({ density: 680, stiffness: 7000 })
    expect(stock(', board: MDF')).toMatchObject({ density: 730, stiffness: 2200, board: 'MDF' })
    expect(stock(', board: MDF, stiffness: 3000')).toMatchObject({ density: 730, stiffness: 3000 })
  })
})

test('limits of loads are changed as all limits are', () => {
  const project = projectOf(`${text('', '')}findings: { tipping: { warn: 12 }, shelf-sag: { warn: 144 } }\n`)
  expect(limitOf(project, 'tipping', 'warn')).toBe(12)
  expect(limitOf(project, 'shelf-sag', 'warn')).toBe(144)
})
