import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boardBox, ownBox } from '../../src/assembly/index.ts'
import { compose, placedBox } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { built } from '../support/define.ts'
import { evenTop, toppedModule, toppedRow } from '../support/random-tops.ts'

const RUNS = { numRuns: 100 }
const TIGHT = 1e-6

const tops = (of: Built) => of.panels.filter((panel) => panel.role === 'worktop' || panel.role === 'machine top')

/** What must never be found, whatever was asked. */
const NEVER = ['mate-missing', 'mate-axis', 'panels-overlap', 'bore-far-side', 'bore-breaks-out', 'bore-skin']

function expectSound(of: Built): void {
  expect(of.findings.filter((finding) => NEVER.includes(finding.rule)).map((finding) => finding.message)).toEqual([])
  for (const panel of of.panels) {
    for (const bore of panel.bores) {
      const end = bore.at.map((v, k) => v + (bore.axis[k] ?? 0) * bore.depth)
      for (const [x = 0, y = 0, z = 0] of [bore.at, end]) {
        const within =
          Math.min(x, panel.length - x, y, panel.width - y, -z, z + panel.thickness) > -TIGHT ||
          bore.leanDeg !== undefined
        expect(within, `${panel.id} ${bore.purpose}`).toBe(true)
      }
    }
    for (const cutout of panel.cutouts) {
      for (const { at } of cutout.path) {
        expect(
          Math.min(at[0], panel.length - at[0], at[1], panel.width - at[1]),
          `${panel.id} ${cutout.id}`,
        ).toBeGreaterThan(0)
      }
    }
  }
}

/** Rules that bores of the screws from below could break; other causes of the same rules name no such screw. */
function expectNoScrewMeets(of: Built): void {
  const meets = of.findings.filter(
    (finding) =>
      /^(bores-|bore-in-groove|hole-covered)/.test(finding.rule) && / top: .*the screw \d/.test(finding.message),
  )
  expect(meets.map((finding) => finding.message)).toEqual([])
}

describe('over random tops', () => {
  test('the top lies on its carcase at the working height, and everything in it is sound', () => {
    let screws = 0
    fc.assert(
      fc.property(toppedModule, (text) => {
        const of = built(text)
        expectSound(of)
        expectNoScrewMeets(of)
        const [module] = of.assembly.modules
        const [top, ...more] = tops(of)
        if (module === undefined || top === undefined) throw new Error('no top')
        expect(more).toEqual([])
        const box = boardBox(top)
        expect(Math.abs(box.min[2] - module.size.height)).toBeLessThan(TIGHT)
        expect(Math.abs(module.baseHeight + box.max[2] - 900)).toBeLessThan(TIGHT)
        expect(box.min[0] <= 0 && box.min[1] <= 0).toBe(true)
        expect(box.max[0] > module.size.width - TIGHT && box.max[1] > module.size.depth - TIGHT).toBe(true)
        for (const bore of top.bores) {
          const off = bore.surface === 'B' ? bore.at[2] + top.thickness : bore.at[2]
          expect(Math.abs(off), `${top.id} ${bore.purpose} begins within the board`).toBeLessThan(TIGHT)
        }
        // Screws that hold the top never come up in its slots or its recess.
        const pilots = top.bores.filter((bore) => bore.purpose === 'screw pilot')
        screws += pilots.length
        for (const { at } of pilots) {
          const areas = [
            ...top.grooves.map(({ min, max }) => [min[0], max[0], min[1], max[1]]),
            ...top.cutouts.map(({ path }) => {
              const [xs, ys] = [path.map((one) => one.at[0]), path.map((one) => one.at[1])]
              return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
            }),
          ]
          for (const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] of areas) {
            const clear = Math.max(x0 - at[0], at[0] - x1, y0 - at[1], at[1] - y1)
            expect(clear).toBeGreaterThan(14.9)
          }
        }
      }),
      RUNS,
    )
    expect(screws).toBeGreaterThan(200)
  })

  test('over a row, every screw is one line through a module top into the one board', () => {
    let screws = 0
    fc.assert(
      fc.property(toppedRow, (text) => {
        const of = built(text)
        expectSound(of)
        expectNoScrewMeets(of)
        const [top, ...more] = tops(of)
        if (top === undefined) throw new Error('no top')
        expect(more).toEqual([])
        const owner = of.assembly.modules.find((module) => module.key === top.module)
        if (owner === undefined) throw new Error('no owner')
        const slab = placedBox(compose(owner.floorFromModule, top.moduleFromPanel), ownBox(top))
        expect(Math.abs(slab.max[2] - 900)).toBeLessThan(TIGHT)
        for (const module of of.assembly.modules.filter((one) => one !== owner)) {
          for (const panel of module.panels) {
            const box = placedBox(compose(module.floorFromModule, panel.moduleFromPanel), ownBox(panel))
            expect(box.max[2], panel.id).toBeLessThan(slab.min[2] + TIGHT)
            expect(box.min[0] > slab.min[0] - TIGHT && box.max[0] < slab.max[0] + TIGHT, panel.id).toBe(true)
          }
        }
        screws += top.bores.length
      }),
      RUNS,
    )
    expect(screws).toBeGreaterThan(400)
  })

  test('left mirrors right in an even machine top', () => {
    let compared = 0
    fc.assert(
      fc.property(evenTop, (text) => {
        const of = built(text)
        for (const top of tops(of)) {
          const print = (x: number, rest: readonly (number | string)[]): string =>
            [x, ...rest].map((one) => (typeof one === 'number' ? Math.round(one * 1e5) / 1e5 + 0 : one)).join(' ')
          const right = top.bores.map(({ at, surface, diameter, depth }) =>
            print(at[0], [at[1], surface, diameter, depth]),
          )
          const left = top.bores.map(({ at, surface, diameter, depth }) =>
            print(top.length - at[0], [at[1], surface, diameter, depth]),
          )
          expect(left.sort()).toEqual(right.sort())
          compared += left.length
        }
      }),
      RUNS,
    )
    expect(compared).toBeGreaterThan(500)
  })
})
