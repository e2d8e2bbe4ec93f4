import { expect, test } from 'vitest'
import { pageDocument } from '../../../src/page/state/document.ts'

const opened = (text: string) => ({ text, file: 'my.yaml', files: new Map<string, string>() })

test('a file keeps the ends of its lines, whatever was changed between them', () => {
  const document = pageDocument(opened('a: 1\r\nb: 2\r\n'))
  expect(document.text.value).toBe('a: 1\nb: 2\n')
  expect(document.fileText.value).toBe('a: 1\r\nb: 2\r\n')
  document.edit([{ path: ['a'], value: 3 }])
  expect(document.fileText.value).toBe('a: 3\r\nb: 2\r\n')
  document.open(opened('a: 1\nb: 2\n'))
  expect(document.fileText.value).toBe('a: 1\nb: 2\n')
})

test('a file keeps its byte order mark, which is no part of the text', () => {
  const document = pageDocument(opened('\ufeffa: 1\n'))
  expect(document.text.value).toBe('a: 1\n')
  document.edit([{ path: ['a'], value: 3 }])
  expect(document.fileText.value).toBe('\ufeffa: 3\n')
  document.open(opened('a: 1\n'))
  expect(document.fileText.value).toBe('a: 1\n')
})

test('no edit in a visit is the text before it, to the letter; of another visit it changes nothing', () => {
  const document = pageDocument(opened('width: "600"   # mm\n'))
  const visit = {}
  for (const value of [4, 45]) document.edit([{ path: ['width'], value }], visit)
  document.edit([], {})
  expect(document.text.value).toBe('width: 45   # mm\n')
  document.undo()
  for (const value of [4, 45]) document.edit([{ path: ['width'], value }], visit)
  document.edit([], visit)
  expect(document.text.value).toBe('width: "600"   # mm\n')
  expect(document.canUndo.value).toBe(false)
})

test('edits of one visit are one step to undo, with what was typed in the text before them another', () => {
  const document = pageDocument(opened('width: 600 # mm\n'))
  document.setText('width: 650 # mm\n')
  const visit = {}
  for (const value of [7, 70, 700]) document.edit([{ path: ['width'], value }], visit)
  expect(document.text.value).toBe('width: 700 # mm\n')
  document.undo()
  expect(document.text.value).toBe('width: 650 # mm\n')
  document.undo()
  expect(document.text.value).toBe('width: 600 # mm\n')
  expect(document.canUndo.value).toBe(false)
  document.redo()
  document.redo()
  expect(document.text.value).toBe('width: 700 # mm\n')
})

test('what a visit tried and took back leaves no step to redo, and those that were there before stay', () => {
  const document = pageDocument(opened('width: 600\ndepth: 500\n'))
  const visit = {}
  document.edit([{ path: ['width'], value: 6 }], visit)
  document.edit([], visit)
  expect(document.canRedo.value).toBe(false)
  document.redo()
  expect(document.text.value).toBe('width: 600\ndepth: 500\n')

  document.setText('width: 600\ndepth: 510\n')
  document.setText('width: 600\ndepth: 520\n')
  document.undo()
  const other = {}
  for (const value of [6, 61]) document.edit([{ path: ['width'], value }], other)
  document.edit([], other)
  expect([document.canUndo.value, document.canRedo.value]).toEqual([true, true])
  document.redo()
  expect(document.text.value).toBe('width: 600\ndepth: 520\n')
  document.undo()
  document.undo()
  expect(document.text.value).toBe('width: 600\ndepth: 500\n')
  expect(document.canUndo.value).toBe(false)
})

test('what a visit takes back is told to those who follow, step by step', () => {
  const document = pageDocument(opened('width: 600\n'))
  let text = document.state.value.doc
  document.follow(({ startState, newDoc }) => {
    expect(startState.doc.eq(text)).toBe(true)
    text = newDoc
  })
  const visit = {}
  document.edit([{ path: ['width'], value: 6 }], visit)
  document.edit([], visit)
  expect(text.toString()).toBe('width: 600\n')
})
