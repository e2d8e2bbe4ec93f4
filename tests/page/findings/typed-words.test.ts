import { expect, test } from 'vitest'
import { typedParts } from '../../../src/page/findings/typed-words.tsx'

test.each([
  [
    'set `join: none`',
    [
      ['set ', false],
      ['join: none', true],
    ],
  ],
  [
    '`a` or `b`',
    [
      ['a', true],
      [' or ', false],
      ['b', true],
    ],
  ],
  ['ask for 5 loose shelves', [['ask for 5 loose shelves', false]]],
  ['one ` alone', [['one ` alone', false]]],
])('what is to be typed in %j is told apart from the words, without its back-ticks', (words, parts) => {
  expect(typedParts(words).map(({ text, isTyped }) => [text, isTyped])).toEqual(parts)
})
