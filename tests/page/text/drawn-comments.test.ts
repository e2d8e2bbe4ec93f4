import { expect, test } from 'vitest'
import { isDrawn } from '../../../src/page/text/drawn-comments.ts'
import { sampleText } from '../../support/samples.ts'

test('of the studio, the nine lines of the plan in characters are drawn, and no other', () => {
  const lines = sampleText('pottery-studio').split('\n')
  const drawn = lines.flatMap((line, k) => (isDrawn(line) ? [k + 1] : []))
  // The plan stands in lines 4 to 12 of the file.
  expect(drawn).toEqual([4, 5, 6, 7, 8, 9, 10, 11, 12])
})

test.each([
  ['# a sentence, with  two gaps. And more', false],
  ['  width: 600      # of the sheet      as measured', false],
  ['#', false],
  ['# ------ base ------', true],
  ['  # a    b', true],
])('%j is drawn: %j', (line, is) => {
  expect(isDrawn(line)).toBe(is)
})
