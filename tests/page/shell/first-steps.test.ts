import { signal } from '@preact/signals'
import { beforeEach, expect, test } from 'vitest'
import { type FirstSteps, firstSteps } from '../../../src/page/first-look/steps.ts'
import { pageDocument } from '../../../src/page/state/document.ts'

const TEXT = 'modules:\n  cart: { width: 600, depth: 500 }\n'
const document = pageDocument({ text: TEXT, file: 'cart.yaml', files: new Map() })
const modulePressed = signal<{ module: string } | undefined>(undefined)
const hole = signal<{ id: string; panel: string } | undefined>(undefined)
let first: FirstSteps
let end: () => void

beforeEach(() => {
  document.open({ text: TEXT, file: 'cart.yaml', files: new Map() })
  modulePressed.value = undefined
  hole.value = undefined
  first = firstSteps({ document, modulePressed, hole })
  end = first.watch()
  return () => end()
})

const ticked = (): boolean[] => first.steps.map(({ done }) => done.value)

test('each step ticks itself off when it is done, in any order, and stays so', () => {
  expect(ticked()).toEqual([false, false, false])
  hole.value = { id: 'p#1', panel: 'p' }
  expect(ticked()).toEqual([false, false, true])
  hole.value = undefined
  expect(ticked()).toEqual([false, false, true])
  modulePressed.value = { module: 'cart' }
  expect(ticked()).toEqual([true, false, true])
  expect(first.allDone.value).toBe(false)
  document.setText(TEXT.replace('600', '640'))
  expect(ticked()).toEqual([true, true, true])
  expect(first.allDone.value).toBe(true)
})

test('another key, or another definition that is opened, is no changed width', () => {
  document.setText(TEXT.replace('500', '510'))
  document.open({ text: TEXT.replace('600', '640'), file: 'other.yaml', files: new Map() })
  expect(ticked()).toEqual([false, false, false])
})

test('nothing is watched any more once it is put away', () => {
  end()
  document.setText(TEXT.replace('600', '640'))
  expect(ticked()).toEqual([false, false, false])
})
