import { inLatin } from './latin.ts'

const LONGEST = 40

/** Names of devices that no file may have on Windows, with or without an extension. */
const DEVICES = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/

/** Letters that do not come apart into a Latin letter and a mark. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
}

/**
 * A name as a file name: lower case ASCII letters, digits and single hyphens, beginning with a letter or digit, at
 * most 40 characters, never empty and never the name of a Windows device. `Glaze store №2` is `glaze-store-no2`, and
 * `Шкаф` is `shkaf`.
 */
export function slug(name: string): string {
  const plain = inLatin(name)
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => LETTERS[letter] ?? '')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+/, '')
    .slice(0, LONGEST)
    .replace(/-+$/, '')
  if (plain === '') return 'module'
  return DEVICES.test(plain) ? `${plain}-module` : plain
}

/** A key for each name, in order; what would stand twice gets `-2`, `-3` … behind it. */
export function uniqueKeys(names: readonly string[]): string[] {
  const taken = new Set<string>()
  const nextFor = new Map<string, number>()
  return names.map((name) => {
    const base = slug(name)
    let key = base
    for (let n = nextFor.get(base) ?? 2; taken.has(key); n++) {
      const suffix = `-${n}`
      key = `${base.slice(0, LONGEST - suffix.length).replace(/-+$/, '')}${suffix}`
      nextFor.set(base, n + 1)
    }
    taken.add(key)
    return key
  })
}
