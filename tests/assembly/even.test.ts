import { describe, expect, test } from 'vitest'
import { place, turn } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import type { Bore, Panel } from '../../src/panel/index.ts'
import { built } from '../support/define.ts'
import { evenDefinition } from '../support/random.ts'
import { expectFaultless } from '../support/sought.ts'

/** A bore by its size, its place and its direction in the module; of the mirror image where `across` is its width. */
function figures({ moduleFromPanel }: Panel, bore: Bore, across: number | undefined): number[] {
  const [x, y, z] = place(moduleFromPanel, bore.at)
  const [u, v, w] = turn(moduleFromPanel, bore.axis)
  const at = across === undefined ? [x, y, z] : [across - x, y, z]
  const way = across === undefined ? [u, v, w] : [-u, v, w]
  const size = [bore.diameter, bore.depth]
  if (!bore.through) return [...at, ...way, ...size]
  // A through hole is the same from either end.
  return [...at.map((value, axis) => (Math.abs(way[axis] ?? 0) > 0.5 ? 0 : value)), ...size]
}

const same = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, k) => Math.abs(value - (b[k] ?? Number.NaN)) < 1e-6)

/** Those of the first that the second lacks. */
const lacking = (some: readonly number[][], all: readonly number[][]): number[][] =>
  some.filter((one) => !all.some((other) => same(one, other)))

/** The panel on the other hand: itself where it stands in the middle. */
function partnerOf(of: Built, panel: Panel): Panel | undefined {
  const swap: Record<string, string> = { left: 'right', right: 'left' }
  const key = panel.key.replace(/left|right/, (hand) => swap[hand] ?? hand)
  return of.panels.find((one) => one.module === panel.module && one.key === key)
}

/** Panels with a hand, whose bores must be those of the other hand in a mirror. */
const handed = (panel: Panel): boolean => /left|right/.test(panel.key)

describe('over random modules that are alike on both hands', () => {
  test('sides, drawer sides, packings, plinth sides and doors mirror each other', () => {
    let compared = 0
    expectFaultless(
      evenDefinition,
      (text) => {
        const of = built(text)
        const width = of.project.modules[0]?.width
        return of.panels.filter(handed).flatMap((left) => {
          const right = partnerOf(of, left)
          if (right === undefined) return [`${left.id} has no partner`]
          const mirrored = left.bores.map((bore) => figures(left, bore, width))
          const found = right.bores.map((bore) => figures(right, bore, undefined))
          compared += found.length
          const odd = [...lacking(mirrored, found), ...lacking(found, mirrored)]
          const sizes = same([left.length, left.width], [right.length, right.width])
          return [...odd.map((one) => `${left.id}: ${one}`), ...(sizes ? [] : [`${left.id} is of another size`])]
        })
      },
      { numRuns: 100 },
    )
    expect(compared).toBeGreaterThan(1000)
  })
})
