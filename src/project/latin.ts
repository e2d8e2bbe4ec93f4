/**
 * Greek and Cyrillic letters in Latin ones, each by itself, much as ISO 843 and ISO 9 are written without accents (from
 * memory): for the names of files and for readers that know ASCII alone. Accented forms follow their plain letter.
 */
const SPELT = new Map(
  (
    'а:a б:b в:v г:g д:d е:e ж:zh з:z и:i й:y к:k л:l м:m н:n о:o п:p р:r с:s т:t у:u ф:f х:kh ц:ts ч:ch ш:sh щ:shch ' +
    'ъ: ы:y ь: э:e ю:yu я:ya ё:yo і:i ї:yi є:ye ґ:g ў:u ђ:dj ј:j љ:lj њ:nj ћ:c џ:dz ѓ:g ќ:k ѕ:dz ' +
    'α:a β:v γ:g δ:d ε:e ζ:z η:i θ:th ι:i κ:k λ:l μ:m ν:n ξ:x ο:o π:p ρ:r σ:s ς:s τ:t υ:y φ:f χ:ch ψ:ps ω:o'
  )
    .split(' ')
    .map((pair): [string, string] => {
      const [letter = '', latin = ''] = pair.split(':')
      return [letter, latin]
    }),
)

/** A text with its Greek and Cyrillic letters in Latin ones: `Шкаф 2` is `Shkaf 2`. All else stays as it is, composed. */
export function inLatin(text: string): string {
  // After an omicron, ypsilon is a u.
  const composed = text
    .normalize('NFC')
    .replace(/(?<=[οΟ])[υύ]/g, 'u')
    .replace(/(?<=[οΟ])[ΥΎ]/g, 'U')
  return [...composed].map(letterInLatin).join('')
}

function letterInLatin(letter: string): string {
  const lower = letter.toLowerCase()
  const latin = SPELT.get(lower) ?? SPELT.get(lower.normalize('NFD').charAt(0))
  if (latin === undefined) return letter
  return lower === letter ? latin : latin.charAt(0).toUpperCase() + latin.slice(1)
}
