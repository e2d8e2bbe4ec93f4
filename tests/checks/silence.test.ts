import { expect, test } from 'vitest'
import { mustStop } from '../../src/checks/index.ts'
import { limitOf } from '../../src/project/index.ts'
import { built, projectOf, ROUND_STOCK } from '../support/define.ts'

/**
 * The cups of two doors 20 from the ends of an inset door 484 high stand 18 − … : hinges at 20 and 464, cups of 35 mm,
 * come 17.5 − 20 = 2.5 mm near the end: less than the radius, a stop.
 */
const two = (findings: string): string => `${ROUND_STOCK}
findings: ${findings}
modules:
  one: { width: 500, depth: 400, carcase height: 500, stock: board, carcase: { back: none }, inside: { front: { kind: door, hinges: [20, 480] } } }
  two: { width: 500, depth: 400, carcase height: 500, stock: board, carcase: { back: none }, inside: { front: { kind: door, hinges: [20, 480] } } }
`

const ofRule = (text: string, id: string) => built(text).findings.filter(({ rule }) => rule === id)

test('a silenced stop stops nothing, is still listed, last, and carries its reason', () => {
  const loud = built(two('{}')).findings
  const stops = new Set(loud.filter(({ severity }) => severity === 'stop').map(({ rule }) => rule))
  expect(stops.size).toBeGreaterThan(0)
  const silences = [...stops].map((id) => `${id}: { silence: drilled by eye }`).join(', ')
  const { findings } = built(two(`{ ${silences} }`))
  expect(mustStop(loud)).toBe(true)
  expect(mustStop(findings)).toBe(false)
  expect(findings).toHaveLength(loud.length)
  const quiet = findings.filter(({ silenced }) => silenced !== undefined)
  expect(quiet.map(({ silenced }) => silenced)).toEqual(quiet.map(() => 'drilled by eye'))
  expect(findings.slice(-quiet.length)).toEqual(quiet)
})

test('a reason holds in the modules that it names, and nowhere else', () => {
  const [first] = built(two('{}')).findings.filter(({ severity }) => severity === 'stop')
  const id = first?.rule ?? ''
  const found = ofRule(two(`{ ${id}: { silence: drilled by eye, in: [two] } }`), id)
  const silencedIn = (module: string) =>
    found.filter(({ panels }) => panels[0]?.startsWith(`${module}/`)).map(({ silenced }) => silenced)
  expect(new Set(silencedIn('one'))).toEqual(new Set([undefined]))
  expect(new Set(silencedIn('two'))).toEqual(new Set(['drilled by eye']))
})

test('limits are those of the definition, in its own units, and else those of the rulebook', () => {
  const project = projectOf(two('{ bores-near: { warn: 4 }, cutout-near-edge: { warn: 1/2 in } }'))
  expect(limitOf(project, 'bores-near', 'warn')).toBe(4)
  expect(limitOf(project, 'bores-near', 'stop')).toBe(3)
  expect(limitOf(project, 'cutout-near-edge', 'warn')).toBe(12.7)
})
