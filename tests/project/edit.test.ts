import { expect, test } from 'vitest'
import { applyEdits, readDefinition } from '../../src/project/index.ts'

const TEXT = `# our studio
storyrod: 1
stock:
  board: { thickness: 18 } # measured in June
common:
  stock: board
  depth: 400
  base: { casters: caster 75, inset: 90 }
  carcase: { joint: { fasten: dowel, spacing: 128 } }
modules:
  box:
    width: 600 # as the wall allows
    carcase height: 720
    inside: { loose shelves: 3 }
  other: { width: 500, carcase height: 720 }
`
const MODULE = ['modules', 'box'] as const

test('a value is set where it stands, and all comments stay', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'width'], value: '610 mm' }])
  expect(text).toBe(TEXT.replace('width: 600 #', 'width: 610 mm #'))
})

test('a short form is written out when a part of it is set', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'inside', 'loose shelves', 'pins', 'datum'], value: '7.5 mm' }])
  expect(text).toContain('inside: { loose shelves: { count: 3, pins: { datum: 7.5 mm } } }')
  expect(readDefinition(text, 'test.yaml').ok).toBe(true)
})

test('what a module has from common is copied before a part of it is changed, and common stays', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'base', 'inset'], value: 110 }])
  expect(text).toContain('  base: { casters: caster 75, inset: 90 }\n')
  expect(text).toContain('    base: { casters: caster 75, inset: 110 }\n')
})

test('of a group that is merged key by key, only the part that is changed is copied', () => {
  const text = applyEdits(TEXT, [{ path: [...MODULE, 'carcase', 'joint', 'spacing'], value: 96 }])
  expect(text).toContain('    carcase: { joint: { fasten: dowel, spacing: 96 } }\n')
})

test('what is taken out is gone, and the rest of its group stays', () => {
  const text = applyEdits(TEXT, [{ path: ['modules', 'other'], value: undefined }])
  expect(text).not.toContain('other')
  expect(text).toContain('loose shelves: 3')
})

test('what stands behind an alias is copied, so that nothing else changes', () => {
  const shared = TEXT.replace('inside: { loose shelves: 3 }', 'inside: &shelves { loose shelves: 3 }').replace(
    'other: { width: 500,',
    'other: { width: 500, inside: *shelves,',
  )
  const text = applyEdits(shared, [{ path: ['modules', 'other', 'inside', 'loose shelves'], value: 2 }])
  expect(text).toContain('inside: &shelves { loose shelves: 3 }')
  expect(text).toContain('inside: { loose shelves: 2 }')
  expect(readDefinition(text, 'test.yaml').ok).toBe(true)
})

test('a list keeps its order, and an entry of it can be changed', () => {
  const split = TEXT.replace('{ loose shelves: 3 }', '{ side by side: [{}, { size: 200 }] }')
  const text = applyEdits(split, [{ path: [...MODULE, 'inside', 'side by side', 1, 'size'], value: 210 }])
  expect(text).toContain('inside: { side by side: [ {}, { size: 210 } ] }')
})
