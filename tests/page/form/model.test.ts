import { describe, expect, test } from 'vitest'
import { pageDocument } from '../../../src/page/state/document.ts'
import { drawer } from '../../../src/page/workers/drawer.ts'
import { dataAt } from '../../../src/project/index.ts'

const TEXT = `storyrod: 1
stock: { ply: { thickness: 18 } }
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: ply }   # by the door
`
const WIDTH = ['modules', 'box', 'width'] as const

describe('what the worker tells the form', () => {
  const draw = drawer()
  let number = 0
  const formOf = (text: string) => {
    number += 1
    const answer = draw({
      kind: 'text',
      number,
      source: { text, file: 'test.yaml', files: [] },
      look: undefined,
      units: undefined,
    })
    if (answer.kind !== 'drawn') throw new Error('nothing was drawn')
    return answer
  }

  test('what the text says, and how large the cabinets came out', () => {
    const { form, problems } = formOf(TEXT)
    expect(problems).toEqual([])
    expect(dataAt(form?.data, WIDTH)).toBe(600)
    // Top and bottom stand between the sides: 600 − 2 × 18 wide, 720 − 2 × 18 high.
    expect(form?.shells).toEqual([
      { name: 'box', width: 600, height: 720, baseHeight: 0, opening: { x0: 18, x1: 582, z0: 18, z1: 702 } },
    ])
  })

  test('with a mistake of meaning the data are there, the sizes are the last good ones, and the mistake has its place', () => {
    const { form, problems } = formOf(TEXT.replace('600', '60O'))
    expect(dataAt(form?.data, WIDTH)).toBe('60O')
    expect(form?.shells.map(({ width }) => width)).toEqual([600])
    expect(problems.map(({ path }) => path)).toEqual([WIDTH])
  })

  test('a key that is missing is the place of its mistake', () => {
    const { problems } = formOf(TEXT.replace('width: 600, ', ''))
    expect(problems.map(({ path }) => path)).toEqual([WIDTH])
  })

  test('what is no YAML has no data', () => {
    const { form, problems } = formOf(`${TEXT}title: "half`)
    expect(form?.data).toBeUndefined()
    expect(problems).toHaveLength(1)
    expect(form?.shells).toHaveLength(1)
  })
})

describe('visits to a field', () => {
  const opened = () => pageDocument({ text: TEXT, file: 'test.yaml', files: new Map() })

  test('all that one visit types is one step to undo', () => {
    const { edit, text, undo, redo, canUndo } = opened()
    const visit = {}
    for (const value of [6, 61, 610]) edit([{ path: WIDTH, value }], visit)
    expect(text.value).toBe(TEXT.replace('600', '610'))
    undo()
    expect(text.value).toBe(TEXT)
    expect(canUndo.value).toBe(false)
    redo()
    expect(text.value).toBe(TEXT.replace('600', '610'))
  })

  test('another visit is another step, and so is what follows a change from elsewhere', () => {
    const { edit, text, undo, setText } = opened()
    const visit = {}
    edit([{ path: WIDTH, value: 610 }], visit)
    edit([{ path: WIDTH, value: 620 }], {})
    undo()
    expect(text.value).toBe(TEXT.replace('600', '610'))
    edit([{ path: WIDTH, value: 630 }], visit)
    setText(text.value.replace('720', '730'))
    edit([{ path: WIDTH, value: 640 }], visit)
    undo()
    expect(text.value).toBe(TEXT.replace('600', '630').replace('720', '730'))
  })

  test('a key that is emptied and typed anew keeps its place and its comment', () => {
    const { edit, text, undo, canUndo } = opened()
    const visit = {}
    edit([{ path: WIDTH, value: undefined }], visit)
    expect(text.value).not.toContain('width')
    edit([{ path: WIDTH, value: 24 }], visit)
    expect(text.value).toBe(TEXT.replace('600', '24'))
    edit([{ path: WIDTH, value: 600 }], visit)
    expect(text.value).toBe(TEXT)
    expect(canUndo.value).toBe(false)
    edit([{ path: WIDTH, value: 601 }], visit)
    undo()
    expect(text.value).toBe(TEXT)
  })
})
