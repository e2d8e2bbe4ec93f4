/** A value of a TEXT may be 255 characters in older readers; from memory. */
const LONGEST = 250

const SPELT: readonly (readonly [pattern: RegExp, plain: string])[] = [
  [/[Øø](?=\s?\d)|[⌀∅]/g, 'D'],
  [/\s?°/g, ' deg'],
  [/(?<=\d)(?=[¼½¾⅓⅔⅛⅜⅝⅞])/g, ' '],
  [/×/g, 'x'],
  [/±/g, '+/-'],
  [/[‐-―−]/g, '-'],
  [/[‘’‚′]/g, "'"],
  [/[“”„″]/g, '"'],
  [/…/g, '...'],
  [/[·•]/g, '-'],
  [/µ|μ/g, 'u'],
  [/≤/g, '<='],
  [/≥/g, '>='],
  [/→/g, '->'],
  [/←/g, '<-'],
  [/ä/g, 'ae'],
  [/ö/g, 'oe'],
  [/ü/g, 'ue'],
  [/Ä/g, 'Ae'],
  [/Ö/g, 'Oe'],
  [/Ü/g, 'Ue'],
  [/ß/g, 'ss'],
  [/[Ææ]/g, 'ae'],
  [/[Œœ]/g, 'oe'],
  [/Ø/g, 'O'],
  [/ø/g, 'o'],
  [/Å/g, 'Aa'],
  [/å/g, 'aa'],
  [/[Łł]/g, 'l'],
  [/⁄/g, '/'],
]

/**
 * A label in plain ASCII that no reader can take for anything else. Signs are spelt out (Ø before a figure is D, × is
 * x, ° is deg), letters lose their accents, and what has no ASCII form becomes `?`. Readers take `%%c`, `^J` and
 * `\U+00D8` inside a text as orders, so percent signs are set apart and carets and backslashes replaced.
 */
export function asciiLabel(text: string): string {
  // Composed first, so that an a with a loose umlaut is spelt like one with its own.
  const spelt = SPELT.reduce((s, [pattern, plain]) => s.replace(pattern, plain), text.normalize('NFC'))
  const plain = spelt
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
