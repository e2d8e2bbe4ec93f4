import { readFileSync } from 'node:fs'
import { create, type Font } from 'fontkit'
import { expect, test } from 'vitest'
import { textWidth } from '../../src/drawing/text-width.ts'

const fontAt = (name: string): Font =>
  create(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url))) as Font

const SYMBOLS = '–—‘’“”•…←↑→↓−≤≥⌀⅛⅜⅝⅞'

/** First and last: printable ASCII, Latin, Greek, Cyrillic without its loose accents. */
const BLOCKS = [
  [32, 126],
  [160, 383],
  [0x384, 0x3ce],
  [0x400, 0x481],
  [0x48a, 0x4ff],
] as const

/** All letters of the table, and the workshop's symbols. */
function tableLetters(): string[] {
  const codes = BLOCKS.flatMap(([first, last]) => Array.from({ length: last - first + 1 }, (_, k) => first + k))
  return [...codes.map((code) => String.fromCodePoint(code)), ...SYMBOLS]
}

/** What a letter that the font lacks counts as. */
const OTHER = 2300

for (const [name, bold] of [
  ['DejaVuSans', false],
  ['DejaVuSans-Bold', true],
] as const) {
  test(`the advances are those of ${name}.ttf`, () => {
    const font = fontAt(name)
    expect(font.unitsPerEm).toBe(2048)
    const wrong = tableLetters().filter((letter) => {
      const code = letter.codePointAt(0) ?? 0
      const advance = font.hasGlyphForCodePoint(code) ? font.glyphForCodePoint(code).advanceWidth : OTHER
      return textWidth(letter, 2048, bold) !== advance
    })
    expect(wrong).toEqual([])
  })
}

test('a letter beyond the table counts as a wide one: 柜 and the Georgian Ქ', () => {
  expect(textWidth('柜', 2048)).toBe(2300)
  expect(textWidth('\u10a5', 2048, true)).toBe(2300)
})

test('a width by hand: 0 and 1 are 1303 units wide, so 10 at 4 mm is 2606 / 2048 × 4', () => {
  expect(textWidth('10', 4)).toBeCloseTo(5.08984375, 12)
  expect(textWidth('', 4)).toBe(0)
})
