import { readFileSync } from 'node:fs'
import { create, type Font } from 'fontkit'
import { describe, expect, test } from 'vitest'
import { isOutOfOrder, lettersLacking } from '../../src/project/index.ts'

const fontAt = (name: string): Font =>
  create(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url))) as Font

describe('letters of the pages', () => {
  test('are those that both font files have, control characters apart', () => {
    const fonts = [fontAt('DejaVuSans'), fontAt('DejaVuSans-Bold')]
    const wrong: string[] = []
    for (let code = 0; code <= 0x1ffff; code++) {
      const control = code < 32 || (code >= 127 && code < 160)
      const shown = !control && fonts.every((font) => font.hasGlyphForCodePoint(code))
      if (shown === lettersLacking(String.fromCodePoint(code)).length > 0) wrong.push(code.toString(16))
    }
    expect(wrong).toEqual([])
  })

  test.each([
    ['Töpferschrank №2 ⌀5', ''],
    ['Шкаф, ξύλο, Հայերեն, ქართული, Tiếng Việt', ''],
    ['厨房柜 A 柜', '厨房柜'],
    ['kiln 👍🏽', '👍🏽'],
    ['ตู้', 'ตู้'],
    ['lone \ud800', '\ud800'],
  ])('%j lacks %j', (name, lacking) => {
    expect(lettersLacking(name).join('')).toBe(lacking)
  })
})

// As pages were seen: each word is laid by its own script, and one word stands behind the other from the left.
test.each([
  ['ארון', false],
  ['ארון A', false],
  ['خزانة', false],
  ['ארון מטבח', true],
  ['ארון12', true],
  ['خزانة ١٢', true],
  ['(ארון)', true],
  ['ארוןA', true],
  ['Шкаф 12 (A)', false],
])('%j is out of order: %s', (name, out) => {
  expect(isOutOfOrder(name)).toBe(out)
})
