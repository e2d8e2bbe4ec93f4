import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { type LaidOutDefinition, layOutDefinition, layoutKeeper } from '../../src/outputs/index.ts'
import { readDefinition } from '../../src/project/index.ts'
import { anyDefinition } from '../support/random.ts'
import { chain, someEdits } from '../support/random-edits.ts'
import { sampleFiles, sampleText } from '../support/samples.ts'
import { workshopText } from '../support/workshop.ts'

const FILE = 'again.yaml'
/** More of them when the way of keeping is changed: each takes a good part of a second. */
const RUNS = Number(process.env.STORYROD_RUNS ?? 8)

/** Everything that a layout says, the places of what it is made of too. */
function sayings(laid: LaidOutDefinition): unknown {
  if (!laid.ok) return laid
  const { project, assembly, panels } = laid.laid
  const paths = [
    ...project.stocks.map(({ at }) => at),
    ...project.modules.flatMap(({ at }) => [at, [...at, 'width'], [...at, 'inside', 'stacked', 0]]),
    ...project.rows.map(({ at }) => at),
    ...assembly.troubles.map(({ at }) => at),
    ...panels.map(({ at }) => at),
    ['common', 'depth'],
  ]
  return { project, assembly, panels, places: paths.map((path) => laid.locate(path)) }
}

/** Lays out all texts one after another, and each of them as if it were the first. */
function compare(texts: readonly string[]): { readonly right: number; readonly broken: number } {
  const keeper = layoutKeeper()
  let right = 0
  for (const text of texts) {
    const again = sayings(keeper(text, FILE, sampleFiles))
    const afresh = layOutDefinition(text, FILE, sampleFiles)
    if (!isDeepStrictEqual(again, sayings(afresh))) expect({ text, again }).toEqual({ text, again: sayings(afresh) })
    if (afresh.ok) right += 1
  }
  return { right, broken: texts.length - right }
}

const isRight = (text: string): boolean => readDefinition(text, FILE, sampleFiles).ok

const written = anyDefinition.map((json) => stringify(JSON.parse(json), { lineWidth: 0 }))
const workshop = workshopText(5)

describe('a definition that is laid out again and again', () => {
  test('comes out as if it had never been laid out before, whatever was changed, broken and mended', () => {
    const texts = fc.oneof(written, written, fc.constantFrom(workshop, sampleText('clay-cart')))
    const seen = { right: 0, broken: 0 }
    fc.assert(
      fc.property(texts, someEdits(3, 6), (text, edits) => {
        const { right, broken } = compare([text, ...chain(text, edits, isRight)])
        seen.right += right
        seen.broken += broken
      }),
      { numRuns: RUNS },
    )
    expect(seen.right).toBeGreaterThan(2 * RUNS)
    expect(seen.broken).toBeGreaterThan(RUNS / 2)
  })

  test('the pottery studio, too', () => {
    const text = sampleText('pottery-studio')
    fc.assert(
      fc.property(someEdits(5, 5), (edits) => {
        compare([text, ...chain(text, edits, isRight)])
      }),
      { numRuns: Math.ceil(RUNS / 8) },
    )
  })

  test('and what is as large as fits', () => {
    const text = sampleText('kiln-carts')
    const changes = [
      ['14.8', '14.5'],
      ['450', '455'],
      ['sheets: 1', 'sheets: 2'],
    ] as const
    const { right } = compare([text, ...changes.map(([from, to]) => text.replace(from, to))])
    expect(right).toBe(4)
  })

  test('and what depends on a neighbour: bolts, packing, the worktop over a row', () => {
    const text = workshopText(3)
    const low = (mm: number) => text.replace('width: 700', `width: 700\n    working height: ${mm}`)
    const level = (mm: number) =>
      text.replace('join: bolted', 'level: tops').replace('width: 600', `width: 600\n    carcase height: ${mm}`)
    const over = (mm: number) =>
      text.replace('join: bolted', 'worktop: { stock: board }').replace('width: 600', `width: ${mm}`)
    const { right } = compare([text, low(700), low(500), level(1640), level(1680), over(600), over(610)])
    expect(right).toBe(7)
  })

  test('a change of one module leaves the panels of all others the very same things', () => {
    const keeper = layoutKeeper()
    const first = keeper(workshop, FILE)
    // Cabinet 5 is bolted to cabinet 4, and by its left side, which stays where it was: those bolts come out the same.
    const second = keeper(workshop.replace('width: 900', 'width: 901'), FILE)
    if (!first.ok || !second.ok) throw new Error('the workshop cannot be laid out')
    const old = new Set(first.laid.panels)
    const made = second.laid.panels.filter((panel) => !old.has(panel)).map(({ id }) => id)
    expect(made.filter((id) => !id.startsWith('cabinet-5/'))).toEqual([])
    expect(made).toContain('cabinet-5/bottom')
  })

  test('two keepers know nothing of each other', () => {
    const [one, other] = [layoutKeeper(), layoutKeeper()]
    one(workshop, FILE)
    const changed = other(workshop.replace('thickness: 18', 'thickness: 19'), FILE)
    const back = one(workshop, FILE)
    expect(changed.ok && changed.laid.project.stocks[0]?.thickness).toBe(19)
    expect(back.ok && back.laid.project.stocks[0]?.thickness).toBe(18)
  })
})
