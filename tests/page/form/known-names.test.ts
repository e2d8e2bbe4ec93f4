import { signal } from '@preact/signals'
import { expect, test } from 'vitest'
import { followNames, renamedBetween } from '../../../src/page/form/known-names.ts'
import type { Data, DefinitionPath } from '../../../src/project/index.ts'
import { dataOf } from './support.ts'

const withModules = (...names: readonly string[]): Data =>
  dataOf(
    `storyrod: 1\nstock: { ply: { thickness: 18 } }\nmodules:\n${names.map((name) => `  ${name}: { width: 600 }\n`).join('')}`,
  )

test.each<[string[], string[], { from: string; to: string } | undefined]>([
  [['a', 'b', 'c'], ['a', 'x', 'c'], { from: 'b', to: 'x' }],
  [['a', 'b'], ['a', 'b'], undefined],
  [['a', 'b'], ['b', 'a'], undefined],
  [['a', 'b'], ['a'], undefined],
  [['a'], ['a', 'b'], undefined],
])('%j to %j', (before, after, renamed) => {
  expect(renamedBetween(before, after)).toEqual(renamed)
})

function followed(first: Data) {
  const state = {
    data: signal<Data | undefined>(first),
    moduleShown: signal<string | undefined>(undefined),
    bay: signal<DefinitionPath | undefined>(undefined),
    folds: signal<ReadonlyMap<string, boolean>>(new Map()),
  }
  return { ...state, placeKey: followNames(state) }
}

test('a rename and its undo keep the module, its opening, what is folded and the place of each field', () => {
  const { data, moduleShown, bay, folds, placeKey } = followed(withModules('one', 'two'))
  moduleShown.value = 'two'
  bay.value = ['modules', 'two', 'inside', 'stacked', 1]
  folds.value = new Map([
    ['["modules","two","base"]', true],
    ['["saw"]', true],
  ])
  const place = placeKey(['modules', 'two', 'width'])
  expect(placeKey(['modules', 'one', 'width'])).not.toBe(place)
  data.value = withModules('one', 'book box')
  expect(moduleShown.value).toBe('book box')
  expect(bay.value).toEqual(['modules', 'book box', 'inside', 'stacked', 1])
  expect([...folds.value.keys()]).toEqual(['["modules","book box","base"]', '["saw"]'])
  expect(placeKey(['modules', 'book box', 'width'])).toBe(place)
  data.value = withModules('one', 'two')
  expect(moduleShown.value).toBe('two')
  expect(placeKey(['modules', 'two', 'width'])).toBe(place)
  // One that takes the old name of another is not that one.
  data.value = withModules('one', 'book box')
  data.value = withModules('one', 'book box', 'two')
  expect(placeKey(['modules', 'two', 'width'])).not.toBe(place)
})

test('where the module shown has gone, the one shown before it is back', () => {
  const { data, moduleShown } = followed(withModules('one', 'two', 'three'))
  moduleShown.value = 'two'
  moduleShown.value = 'three'
  data.value = withModules('one', 'two', 'three', 'new')
  moduleShown.value = 'new'
  data.value = withModules('one', 'two', 'three')
  expect(moduleShown.value).toBe('three')
  data.value = withModules('one', 'two')
  expect(moduleShown.value).toBe('two')
})

test('a module that was never there is waited for', () => {
  const { data, moduleShown } = followed(withModules('one', 'two'))
  moduleShown.value = 'three'
  expect(moduleShown.value).toBe('three')
  data.value = withModules('one', 'two', 'three')
  expect(moduleShown.value).toBe('three')
})
