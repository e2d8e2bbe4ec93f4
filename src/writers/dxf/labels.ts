import { inLatin } from '../../project/index.ts'

/** A value of a TEXT may be 255 characters in older readers; from memory. */
const LONGEST = 250

/** Signs that are spelt by what stands beside them. */
const BY_NEIGHBOUR: readonly (readonly [pattern: RegExp, plain: string])[] = [
  [/[Øø](?=\s?\d)|[⌀∅]/g, 'D'],
  [/\s?°/g, ' deg'],
  [/(?<=\d)(?=[¼½¾⅓⅔⅛⅜⅝⅞])/g, ' '],
]

const SPELT: Readonly<Record<string, string>> = {
  '×': 'x',
  '±': '+/-',
  '−': '-',
  '…': '...',
  '·': '-',
  '•': '-',
  µ: 'u',
  μ: 'u',
  '≤': '<=',
  '≥': '>=',
  '→': '->',
  '←': '<-',
  ä: 'ae',
  ö: 'oe',
  ü: 'ue',
  Ä: 'Ae',
  Ö: 'Oe',
  Ü: 'Ue',
  ß: 'ss',
  Æ: 'ae',
  æ: 'ae',
  Œ: 'oe',
  œ: 'oe',
  Ø: 'O',
  ø: 'o',
  Å: 'Aa',
  å: 'aa',
  Ł: 'l',
  ł: 'l',
  '⁄': '/',
  ...Object.fromEntries([...'‐‑‒–—―'].map((dash) => [dash, '-'])),
  ...Object.fromEntries([...'‘’‚′'].map((quote) => [quote, "'"])),
  ...Object.fromEntries([...'“”„″'].map((quote) => [quote, '"'])),
}

const BEYOND_ASCII = /[^\x20-\x7e]/gu

/**
 * A label in plain ASCII that no reader can take for anything else. Signs are spelt out (Ø before a figure is D, × is
 * x, ° is deg), Greek and Cyrillic are written in Latin letters, letters lose their accents, and what has no ASCII form
 * becomes `?`. Readers take `%%c`, `^J` and `\U+00D8` inside a text as orders, so percent signs are set apart and carets and backslashes replaced.
 */
export function asciiLabel(text: string): string {
  // Composed first, so that an a with a loose umlaut is spelt like one with its own.
  const composed = BY_NEIGHBOUR.reduce((s, [pattern, plain]) => s.replace(pattern, plain), text.normalize('NFC'))
  const spelt = composed.replace(BEYOND_ASCII, (sign) => SPELT[sign] ?? sign)
  const plain = inLatin(spelt)
    .normalize('NFKD')
    .replaceAll('⁄', '/')
    .replace(/\p{M}/gu, '')
    .replace(/[\p{Cc}\u2028\u2029]/gu, ' ')
    .replace(/[^\x20-\x7e]/gu, '?')
    .replace(/\^/g, '?')
    .replace(/\\/g, '/')
    .replace(/%(?=%)/g, '% ')
    .trim()
  return plain.length <= LONGEST ? plain : `${plain.slice(0, LONGEST - 3)}...`
}
