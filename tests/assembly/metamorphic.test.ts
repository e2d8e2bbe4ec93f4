import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Panel } from '../../src/panel/index.ts'
import { built } from '../support/define.ts'
import { anyDefinition } from '../support/random.ts'
import { expectFaultless } from '../support/sought.ts'

const TIGHT = 1e-6

/** The first place at which two values differ by more than float noise; texts must be the same. */
function difference(a: unknown, b: unknown, at = ''): string | undefined {
  if (typeof a === 'number' && typeof b === 'number') {
    return Math.abs(a - b) <= TIGHT ? undefined : `${at}: ${a} and ${b}`
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return a === b ? undefined : `${at}: ${a} and ${b}`
  }
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])]
  for (const key of keys) {
    const found = difference((a as never)[key], (b as never)[key], `${at} › ${key}`)
    if (found !== undefined) return found
  }
  return undefined
}

/** Each panel that the first has must be in the second, with the same figures. */
function changed(before: readonly Panel[], after: readonly Panel[]): string[] {
  const byId = new Map(after.map((panel) => [panel.id, panel]))
  return before.flatMap((panel) => {
    const other = byId.get(panel.id)
    return difference(panel, other, panel.id) ?? []
  })
}

type Raw = Record<string, unknown>
interface Definition {
  readonly modules: Raw
  readonly 'floor plan': readonly Raw[]
}

const inInches = (text: string): string =>
  text.replaceAll(/"(-?[\d.]+) mm"/g, (_, mm: string) => `"${Number(mm) / 25.4} in"`)

/** Lengths without their unit, for a project in millimetres. */
const bare = (text: string): string =>
  text.replace('"units": "in"', '"units": "mm"').replaceAll(/"(-?[\d.]+) mm"/g, (_, mm: string) => mm)

/** Bolts go through other places when modules stand otherwise: without them. */
function apart(text: string): Definition {
  const raw: Definition = JSON.parse(text)
  return { ...raw, 'floor plan': raw['floor plan'].map((row) => ({ ...row, join: 'none' })) }
}

test('a difference in one figure is seen', () => {
  const [panel] = built(
    'storyrod: 1\nstock: { board: { thickness: 18 } }\nmodules: { box: { width: 600, depth: 400, carcase height: 500, stock: board } }\n',
  ).panels
  if (panel === undefined) throw new Error('no panel')
  expect(changed([panel], [{ ...panel, width: panel.width + 0.001 }])).toHaveLength(1)
  expect(changed([panel], [])).toHaveLength(1)
  expect(changed([panel], [panel])).toEqual([])
})

describe('over random projects', () => {
  test('a size in inches is the same as in millimetres', () => {
    expectFaultless(anyDefinition, (text) => changed(built(text).panels, built(inInches(text)).panels), { numRuns: 20 })
  })

  test('a bare number in a metric project is in millimetres', () => {
    const metric = anyDefinition.filter((text) => text.includes('"units": "mm"'))
    expectFaultless(metric, (text) => changed(built(text).panels, built(bare(text)).panels), { numRuns: 20 })
  })

  test('a module more, in no row, changes no panel of the others', () => {
    const guest = { width: '500 mm', depth: '400 mm', 'carcase height': '600 mm', inside: { 'loose shelves': 1 } }
    expectFaultless(
      anyDefinition,
      (text) => {
        const raw: Definition = JSON.parse(text)
        const { panels } = built(text)
        return [
          { guest, ...raw.modules },
          { ...raw.modules, guest },
        ].flatMap((modules) => changed(panels, built(JSON.stringify({ ...raw, modules })).panels))
      },
      { numRuns: 20 },
    )
  })

  test('a row that stands elsewhere, not joined, has the same panels', () => {
    const moved = fc.constantFrom(
      ...['left', 'right', 'front', 'back'].map((side) => ({ 'at its': side, gap: '7 mm', shift: '-31 mm' })),
    )
    const pair = fc.tuple(anyDefinition, moved).map(([text, stands]) => JSON.stringify({ stands, ...apart(text) }))
    expectFaultless(
      pair,
      (text) => {
        const { stands, ...raw }: Definition & { stands: Raw } = JSON.parse(text)
        const plan = raw['floor plan'].map(({ stands: old, ...row }) =>
          old === undefined ? row : { ...row, stands: { against: (old as Raw).against, ...stands } },
        )
        return changed(built(JSON.stringify(raw)).panels, built(JSON.stringify({ ...raw, 'floor plan': plan })).panels)
      },
      { numRuns: 20 },
    )
  })
})
