import { MOST_BYTES } from './source.ts'

/** Size limit of a definition and of each file that it names, bytes. */
export const DEFINITION_LIMIT = MOST_BYTES

/** Endings that a definition has by custom, dropped to name its drawings. */
const ENDINGS = /\.(?:ya?ml|json)$/i

/** The name of a definition, given without folders, without its customary ending. */
export function stemOf(name: string): string {
  const stem = name.replace(ENDINGS, '')
  return stem === '' ? name : stem
}

/** Why a definition that is larger than the limit is not read, and what to do; the first line ends a sentence. */
export function tooLargeWords(name: string): string {
  const words = `the definition ${name} is larger than 4 MiB (${DEFINITION_LIMIT} bytes), the most that is read.`
  return `${words}\n  Is it a definition? Split a very large workshop into several files.`
}

/** The text of a file, or why it has none. */
export type DecodedText = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly words: string }

/** Bytes as UTF-8, a byte order mark left out; where they are not, `words` says where and what to do. */
export function decodeText(bytes: Uint8Array, name: string, what: 'definition' | 'file'): DecodedText {
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    const words = `the ${what} ${name} is not UTF-8 text: ${firstBad(bytes)}`
    return { ok: false, words: `${words}\n  Save it as UTF-8 in your editor.` }
  }
}

/** Where and what the first byte is that no UTF-8 text has there; a byte order mark of UTF-16 is told as what it is. */
function firstBad(bytes: Uint8Array): string {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return 'it looks like UTF-16.'
  // A streaming decoder holds back an unfinished character, so the bad byte is the one at which it throws.
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let line = 1
  for (const byte of bytes) {
    try {
      decoder.decode(Uint8Array.of(byte), { stream: true })
    } catch {
      return `line ${line} has the byte ${byte.toString(16).padStart(2, '0')} where it makes no character.`
    }
    if (byte === 0x0a) line += 1
  }
  return `it ends within a character, in line ${line}.`
}
