import { expect, test } from 'vitest'
import { checked, layOutDefinition } from '../../../src/outputs/index.ts'
import { countWords, worstOf } from '../../../src/page/findings/counts.ts'
import { limitRows } from '../../../src/page/findings/limit-rows.ts'
import { notesOf } from '../../../src/page/findings/notes.ts'
import { pageFindings } from '../../../src/page/findings/page-findings.ts'
import type { PageFinding } from '../../../src/page/protocol.ts'
import { renderProblems } from '../../../src/project/index.ts'
import { RULEBOOK } from '../../../src/rulebook/index.ts'
import { anyDefinition } from '../../support/random.ts'
import { expectFaultless } from '../../support/sought.ts'

function found(text: string): { readonly shown: readonly PageFinding[]; readonly raw: ReturnType<typeof checked> } {
  const laid = layOutDefinition(text, 'test.yaml')
  if (!laid.ok) throw new Error(renderProblems(laid.problems))
  const raw = checked(laid.laid)
  return { shown: pageFindings(raw, laid.locate), raw }
}

const TWO = `storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250] }
modules:
  low:
    width: 600
    depth: 400
    carcase height: 336
    stock: board
    carcase: { back: none }
    inside: { loose shelves: 6 }
  shallow:
    width: 600
    depth: 80
    carcase height: 336
    stock: board
    carcase: { back: none }
    inside: { loose shelves: 1 }
`

test('a stop of one module stands before the warnings of another, each with where it is asked for', () => {
  const stops = notesOf(found(TWO).shown).filter(({ severity }) => severity === 'stop')
  // Inside 336 − 2 × 18 = 300 high, so room for 5 shelves, not for 6 (tests/checks/cases/shelves.ts); 80 deep, columns of
  // pins 80 − 2 × 37 = 6 apart. The modules begin in lines 5 and 12, what is in them in lines 11 and 18.
  expect(stops.map(({ number, first }) => [number, first.module, first.rule, first.line])).toEqual([
    [1, 'low', 'pin-rows-short', 11],
    [2, 'shallow', 'pin-columns-crossed', 18],
  ])
  expect(stops[0]?.first.fix).toBe('ask for 5 loose shelves')
})

test('what the definition silences stands last, with its reason and without a number', () => {
  const { shown } = found(`${TWO}findings: { pin-rows-short: { silence: it is a model } }\n`)
  const first = shown.findIndex(({ silenced }) => silenced !== undefined)
  expect(
    shown.slice(first).map(({ rule, silenced, number, short, message }) => [rule, silenced, number, short === message]),
  ).toEqual([['pin-rows-short', 'it is a model', undefined, true]])
  expect(shown[0]).toMatchObject({ number: 1, rule: 'pin-columns-crossed' })
})

test('a rule is told with the limits that hold, and the default beside those that the definition changes', () => {
  // Two round openings of 60, centres 70 apart: 70 − 60 = 10 mm of wood between them, less than the 12.7 mm (1/2 in) asked for.
  const opening = (front: number): string =>
    `{ panel: left side, shape: round, diameter: 60, from: { front: ${front}, bottom: 150 } }`
  const openings = `    openings: [${opening(100)}, ${opening(170)}]\n`
  const { shown } = found(
    `${TWO.replace('loose shelves: 6 }\n', `loose shelves: 1 }\n${openings}`)}findings: { cutout-near: { warn: 1/2 in } }\n`,
  )
  const near = shown.find(({ rule }) => rule === 'cutout-near')
  expect(near?.severity).toBe('warn')
  expect(near?.limits).toEqual({ warn: 12.7 })
  const told = limitRows(RULEBOOK['cutout-near'].limits, near?.limits ?? {})
  expect(told.map(({ name, figure, usual }) => [name, figure, usual])).toEqual([
    ['warn', '12.7 mm', '5 mm'],
    ['stop', '3 mm', undefined],
  ])
  expect(shown.find(({ rule }) => rule === 'pin-columns-crossed')).not.toHaveProperty('limits')
})

test('over random projects each finding stands once, worst first, numbered without gaps, silenced ones last', () => {
  const seen = { shared: 0, notes: 0 }
  expectFaultless(
    anyDefinition,
    (text) => {
      const { shown, raw } = found(text)
      const faults: string[] = []
      const sentences = (list: readonly { rule: string; message: string }[]): string[] =>
        list.map(({ rule, message }) => `${rule}: ${message}`).sort()
      if (JSON.stringify(sentences(shown)) !== JSON.stringify(sentences(raw.findings)))
        faults.push('one is lost or doubled')
      const loud = shown.filter(({ silenced }) => silenced === undefined)
      if (shown.slice(0, loud.length).some(({ silenced }) => silenced !== undefined)) faults.push('silenced in between')
      let last = 0
      for (const { number = Number.NaN } of loud) {
        if (number !== last && number !== last + 1) faults.push(`number ${number} after ${last}`)
        last = number
      }
      const rank = { stop: 0, warn: 1, note: 2 }
      loud.forEach((finding, k) => {
        const before = loud[k - 1]
        if (before === undefined) return
        if (rank[before.severity] > rank[finding.severity]) faults.push(`${finding.severity} after ${before.severity}`)
        if (before.number !== finding.number) return
        seen.shared += 1
        // Equal ones: one press on the fix of the first speaks for all.
        if (before.rule !== finding.rule || before.fix !== finding.fix) faults.push(`${finding.number} is of two kinds`)
      })
      for (const { module, panelName, message, short } of loud) {
        if (!message.endsWith(short)) faults.push(`"${short}" is not the end of "${message}"`)
        if (panelName !== undefined && module === undefined) faults.push(`${panelName} without its module`)
      }
      seen.notes += last
      return faults
    },
    { numRuns: 8 },
  )
  expect(seen.notes).toBeGreaterThan(20)
  expect(seen.shared).toBeGreaterThan(10)
})

const finding = (severity: PageFinding['severity'], number: number | undefined, panel = 'p'): PageFinding => ({
  key: `${severity} ${number} ${panel}`,
  rule: 'bores-near',
  severity,
  ...(number !== undefined && { number }),
  message: 'm',
  short: 'm',
  panels: [panel],
  panelName: panel,
  places: [{ panel, face: 'A', at: [1, 2, 0], words: '2 from front and 1 from bottom' }],
  path: [],
  line: 1,
  column: 1,
})

test('counts say each note once, and nothing of what is silenced', () => {
  const three = [
    finding('stop', 1),
    finding('stop', 1),
    finding('warn', 2),
    finding('warn', 3),
    finding('stop', undefined),
  ]
  expect(countWords([], three)).toBe('1 stop, 2 warnings')
  expect(worstOf([], three)).toEqual({ severity: 'stop', count: 1 })
  expect(worstOf([], [finding('note', 1), finding('note', 2)])).toEqual({ severity: 'note', count: 2 })
  expect(countWords([], [])).toBe('nothing to mend')
  expect(worstOf([], [finding('stop', undefined)])).toBeUndefined()
})

test('mistakes of the definition come before all findings', () => {
  const problem = { file: 'a', line: 1, column: 1, message: 'm', expected: 'e', lineText: 'x', span: 1 }
  expect(countWords([problem], [finding('stop', 1)])).toBe('the definition has 1 mistake')
  expect(countWords([problem, problem], [])).toBe('the definition has 2 mistakes')
  expect(worstOf([problem, problem], [finding('stop', 1)])).toEqual({ severity: 'stop', count: 2 })
})

test('a note names further places on its panel, and the other panels once each', () => {
  const [note] = notesOf([
    finding('warn', 4, 'left'),
    finding('warn', 4, 'right'),
    finding('warn', 4, 'right'),
    finding('warn', 4, 'left'),
  ])
  expect(note?.keys).toEqual(['warn 4 left', 'warn 4 right', 'warn 4 right', 'warn 4 left'])
  expect(note?.alsoAt.map(({ panel }) => panel)).toEqual(['left'])
  expect(note?.alsoOn.map(({ name }) => name)).toEqual(['right'])
})
