import { expect, test } from 'vitest'
import { readOutputs } from '../../src/project/index.ts'

test('what a definition says of paper is read in its units, whatever else is wrong in it', () => {
  // 1/4 in is 25.4 / 4 = 6.35 mm; inch projects print on Letter where nothing is said.
  const read = readOutputs('units: in\nmodules: none at all\noutputs: { margin: 1/4 }\n', 'a.yaml')
  expect(read).toMatchObject({ ok: true, outputs: { paper: 'Letter', margin: 6.35 } })
  const metric = readOutputs('units: in\nusual sizes: mm\noutputs: { margin: 1/4 }\n', 'a.yaml')
  expect(metric).toMatchObject({ ok: true, outputs: { paper: 'A4', margin: 6.35 } })
})

test('what is wrong in the group is said with its place, and nothing of what is wrong elsewhere', () => {
  const read = readOutputs('widht: 3\noutputs:\n  paper: A5\n  margin: 60\n', 'a.yaml')
  expect(read.ok ? [] : read.problems.map(({ line, column, message }) => [line, column, message])).toEqual([
    [3, 10, 'outputs › paper: "A5" is not a paper'],
    [4, 11, 'outputs › margin: 60 mm is no margin of a printer'],
  ])
  expect(readOutputs('a: [', 'a.yaml').ok).toBe(false)
})
