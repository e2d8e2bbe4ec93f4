import { readFileSync } from 'node:fs'
import { create, type Font } from 'fontkit'
import { expect, test } from 'vitest'
import { textWidth } from '../../src/drawing/text-width.ts'

const fontAt = (name: string): Font =>
  create(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url))) as Font

const SYMBOLS = '–—‘’“”•…←↑→↓−≤≥⌀⅛⅜⅝⅞'

/** Printable ASCII, Latin-1 from the no-break space on, and the workshop's symbols. */
function tableLetters(): string[] {
  const letters: string[] = []
  for (let code = 32; code <= 126; code++) letters.push(String.fromCodePoint(code))
  for (let code = 160; code <= 255; code++) letters.push(String.fromCodePoint(code))
  return [...letters, ...SYMBOLS]
}

for (const [name, bold] of [
  ['DejaVuSans', false],
  ['DejaVuSans-Bold', true],
] as const) {
  test(`the advances are those of ${name}.ttf`, () => {
    const font = fontAt(name)
    expect(font.unitsPerEm).toBe(2048)
    const wrong = tableLetters().filter((letter) => {
      const advance = font.glyphForCodePoint(letter.codePointAt(0) ?? 0).advanceWidth
      return textWidth(letter, 2048, bold) !== advance
    })
    expect(wrong).toEqual([])
  })

  test(`Greek and Cyrillic in ${name}.ttf are hardly ever wider than reckoned`, () => {
    const font = fontAt(name)
    const text = 'Жук и керамика Αγγειοπλαστική'
    const true2048 = [...text].reduce(
      (sum, letter) => sum + font.glyphForCodePoint(letter.codePointAt(0) ?? 0).advanceWidth,
      0,
    )
    expect(textWidth(text, 2048, bold)).toBeGreaterThanOrEqual(true2048)
  })
}

test('a width by hand: 0 and 1 are 1303 units wide, so 10 at 4 mm is 2606 / 2048 × 4', () => {
  expect(textWidth('10', 4)).toBeCloseTo(5.08984375, 12)
  expect(textWidth('', 4)).toBe(0)
})
