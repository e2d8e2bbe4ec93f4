import { signal } from '@preact/signals'
import { beforeEach, expect, test } from 'vitest'
import { findingsState } from '../../../src/page/findings/findings-state.ts'
import type { PageFinding } from '../../../src/page/protocol.ts'
import { pageDocument } from '../../../src/page/state/document.ts'
import { type Page, pageOf } from '../../../src/page/state/page.ts'
import { keptSettings } from '../../../src/page/state/settings.ts'
import type { Workshop } from '../../../src/page/state/workshop.ts'

const TEXT = `storyrod: 1
modules:
  cart: # of ash
    inside: { loose shelves: 6 }
`

const FIXED: PageFinding = {
  key: 'shelves',
  rule: 'pin-rows-short',
  severity: 'stop',
  number: 1,
  module: 'cart',
  message: 'room for 5',
  short: 'room for 5',
  fix: 'ask for 5 loose shelves',
  change: [{ path: ['modules', 'cart', 'inside', 'loose shelves'], value: 5 }],
  panels: ['cart/left'],
  places: [
    { panel: 'cart/left', face: 'B', at: [37, 96, 0], words: '37 from front and 96 from bottom' },
    { panel: 'cart/left', face: 'A', at: [37, 128, 0], words: '37 from front and 128 from bottom' },
  ],
  path: ['modules', 'cart', 'inside'],
  line: 4,
  column: 5,
}

let page: Page
let checking: ReturnType<typeof signal<boolean>>
let findings: ReturnType<typeof signal<readonly PageFinding[]>>

beforeEach(() => {
  checking = signal(false)
  findings = signal<readonly PageFinding[]>([FIXED])
  const document = pageDocument({ text: TEXT, file: 'cart.yaml', files: new Map() })
  // Of the workshop, findings ask only these two.
  page = pageOf(document, { checking, findings } as unknown as Workshop, keptSettings(undefined))
})

test('showing a finding goes to its first place and to what asks for it', () => {
  const state = findingsState(page)
  state.show(FIXED)
  expect(page.showPlace.value).toEqual({ panel: 'cart/left', face: 'B', at: [37, 96, 0] })
  expect(page.goTo.value).toEqual({ path: ['modules', 'cart', 'inside'], line: 4, column: 5 })
  expect(page.area.value).toBe('See')
  expect(state.shown.value).toBe('shelves')
  expect(page.define.value).toBe('form')
})

test('a further place of its note is gone to in the same way', () => {
  findingsState(page).show(FIXED, FIXED.places[1])
  expect(page.showPlace.value).toEqual({ panel: 'cart/left', face: 'A', at: [37, 128, 0] })
})

test('without a place the panel as a whole is shown; without a panel the definition alone', () => {
  findingsState(page).show({ ...FIXED, places: [] })
  expect(page.showPlace.value).toEqual({ panel: 'cart/left', face: 'A' })
  page.showPlace.value = undefined
  findingsState(page).show({ ...FIXED, places: [], panels: [] })
  expect(page.showPlace.value).toBeUndefined()
  expect(page.area.value).toBe('Define')
})

test('its line is shown in the text, unfolded where it was folded away', () => {
  page.settings.define.value = 'folded'
  findingsState(page).showLine(FIXED)
  expect(page.define.value).toBe('text')
  expect(page.settings.define.value).toBe('open')
  expect(page.area.value).toBe('Define')
  expect(page.goTo.value).toEqual({ path: ['modules', 'cart', 'inside'], line: 4, column: 5 })
})

test('a fix changes the definition, says how, and one press takes it back', () => {
  const state = findingsState(page)
  state.follow()
  state.applyFix(FIXED)
  expect(page.document.text.value).toContain('    inside: { loose shelves: 5 }')
  expect(page.document.text.value).toContain('  cart: # of ash')
  expect(state.made.value?.words).toBe('modules › cart › inside › loose shelves is now 5')
  expect(page.said.value).toBe('modules › cart › inside › loose shelves is now 5; Undo takes it back')
  state.takeBack()
  expect(page.document.text.value).toBe(TEXT)
  expect(state.made.value).toBeUndefined()
})

test('once more is changed, its own Undo is no longer offered and does nothing', () => {
  const state = findingsState(page)
  state.follow()
  state.applyFix(FIXED)
  const more = `${page.document.text.value}# more\n`
  page.document.setText(more)
  expect(state.made.value).toBeUndefined()
  state.takeBack()
  expect(page.document.text.value).toBe(more)
})

test('while the checks look again a fix waits for them, and falls away with its finding', () => {
  const state = findingsState(page)
  const end = state.follow()
  checking.value = true
  state.applyFix(FIXED)
  expect(page.document.text.value).toBe(TEXT)
  findings.value = []
  checking.value = false
  expect(page.document.text.value).toBe(TEXT)

  checking.value = true
  state.applyFix(FIXED)
  // What is found anew has the same key, and may ask for something else.
  findings.value = [{ ...FIXED, change: [{ path: ['modules', 'cart', 'inside', 'loose shelves'], value: 4 }] }]
  checking.value = false
  expect(page.document.text.value).toContain('loose shelves: 4')
  end()
})

test('the flag of a finding that is pressed in the drawing marks its note', () => {
  const state = findingsState(page)
  state.follow()
  page.findingShown.value = { key: 'shelves' }
  expect(state.shown.value).toBe('shelves')
})
