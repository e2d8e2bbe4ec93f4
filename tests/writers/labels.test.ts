import { expect, test } from 'vitest'
import { asciiLabel } from '../../src/writers/dxf/labels.ts'

test.each([
  ['Ø5 × 13', 'D5 x 13'],
  ['⌀ 35', 'D 35'],
  ['Sør-Øst', 'Sor-Ost'],
  ['45° ±0.1', '45 deg +/-0.1'],
  ['3–4 − 1', '3-4 - 1'],
  ['äöüß ÄÖÜ', 'aeoeuess AeOeUe'],
  ['a\u0308', 'ae'],
  ['café naïve', 'cafe naive'],
  ['23½" and ¾', '23 1/2" and 3/4'],
  ['Жук', 'Zhuk'],
  ['Ντουλάπι 5 µm', 'Ntoulapi 5 um'],
  ['柜 A', '? A'],
  ['🪵 wood', '? wood'],
  ['50%%c', '50% %c'],
  ['%%%', '% % %'],
  ['10^3', '10?3'],
  ['\\U+00D8', '/U+00D8'],
  ['a\r\nb\u2028c', 'a  b c'],
  ['lone \ud800', 'lone ?'],
  [' \u0000 ', ''],
])('%j becomes %j', (label, plain) => {
  expect(asciiLabel(label)).toBe(plain)
})

test('a label of 300 letters is cut to 250, and says so', () => {
  expect(asciiLabel('x'.repeat(300))).toBe(`${'x'.repeat(247)}...`)
})
