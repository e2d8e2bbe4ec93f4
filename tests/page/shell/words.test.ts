import { describe, expect, test } from 'vitest'
import { changesWidth } from '../../../src/page/first-look/changes-width.ts'
import { titleOf } from '../../../src/page/look/announcer.tsx'
import { asksFor } from '../../../src/page/look/undo.tsx'

describe('whether a width was changed', () => {
  const block = 'modules:\n  cart:\n    width: 600\n    depth: 500\n'
  test.each([
    ['a digit', block, block.replace('600', '640'), true],
    ['a digit put in', block, block.replace('600', '6000'), true],
    ['the last digit taken out', block, block.replace('600', '60'), true],
    ['an inch fraction', block, block.replace('600', '23 7/16"'), true],
    ['another key', block, block.replace('500', '540'), false],
    ['nothing', block, block, false],
    ['a comment', block, block.replace('600', '600 # six'), false],
    ['in a flow group', 'a: { width: 600, depth: 500 }', 'a: { width: 650, depth: 500 }', true],
    ['its neighbour in a flow group', 'a: { width: 600, depth: 500 }', 'a: { width: 600, depth: 550 }', false],
    ['a name that ends alike', 'kerf width x: 6', 'kerf width x: 7', false],
  ])('%s', (_, before, after, is) => {
    expect(changesWidth(before, after)).toBe(is)
    expect(changesWidth(after, before)).toBe(is)
  })
})

describe('keys of undo and redo', () => {
  const key = (key: string, held: readonly ('ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey')[]) => ({
    key,
    ctrlKey: held.includes('ctrlKey'),
    metaKey: held.includes('metaKey'),
    shiftKey: held.includes('shiftKey'),
    altKey: held.includes('altKey'),
  })
  test.each([
    [key('z', ['ctrlKey']), 'undo'],
    [key('z', ['metaKey']), 'undo'],
    [key('Z', ['ctrlKey', 'shiftKey']), 'redo'],
    [key('y', ['ctrlKey']), 'redo'],
    [key('Y', ['ctrlKey', 'shiftKey']), undefined],
    [key('z', []), undefined],
    [key('z', ['ctrlKey', 'altKey']), undefined],
    [key('x', ['ctrlKey']), undefined],
  ])('%j', (event, asked) => {
    expect(asksFor(event)).toBe(asked)
  })
})

test('the title of the browser’s tab names the project, with a mark while work is unsaved', () => {
  expect(titleOf('pottery studio', false)).toBe('pottery studio · Storyrod')
  expect(titleOf('pottery studio', true)).toBe('* pottery studio · Storyrod')
  expect(titleOf('', false)).toBe('Storyrod')
})
