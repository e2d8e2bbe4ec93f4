import { expect, test } from 'vitest'
import { discLiesIn } from '../../src/checks/in-cutout.ts'
import { circlePath, rectanglePath } from '../../src/geometry/index.ts'

test('a disc lies in a rectangle up to its sides', () => {
  const path = rectanglePath([10, 20], [110, 70], 0)
  expect(discLiesIn(path, [60, 45], 24.9)).toBe(true)
  expect(discLiesIn(path, [60, 45], 25.1)).toBe(false)
  expect(discLiesIn(path, [14.9, 45], 5)).toBe(false)
  // Beyond it, and far from its sides.
  expect(discLiesIn(path, [200, 45], 5)).toBe(false)
  expect(discLiesIn(path, [60, 200], 5)).toBe(false)
})

test('a round corner keeps it out where a square one would not', () => {
  // Corner of radius 20 about (20, 20): the point (8, 8) is 12 × √2 = 16.97 from there, so 3.03 are left to the round.
  expect(discLiesIn(rectanglePath([0, 0], [100, 100], 20), [8, 8], 3.02)).toBe(true)
  expect(discLiesIn(rectanglePath([0, 0], [100, 100], 20), [8, 8], 3.04)).toBe(false)
  expect(discLiesIn(rectanglePath([0, 0], [100, 100], 0), [8, 8], 7.9)).toBe(true)
})

test('in a circle what is left is the difference of the radii', () => {
  const circle = circlePath([50, 50], 40)
  // 40 − 10 = 30.
  expect(discLiesIn(circle, [60, 50], 29.999)).toBe(true)
  expect(discLiesIn(circle, [60, 50], 30.001)).toBe(false)
})
