import { DEFINITION_LIMIT, decodeText, filesNamed, tooLargeWords } from '../../project/index.ts'
import type { OpenedText } from '../state/document.ts'
import type { FileHandle, Picked } from './disk.ts'

/** What came of files that a person chose: a definition, files for the one that is open, or why neither. */
export type Reading =
  | { readonly kind: 'definition'; readonly opened: OpenedText; readonly handle?: FileHandle }
  | { readonly kind: 'files'; readonly files: ReadonlyMap<string, string> }
  | { readonly kind: 'refused'; readonly words: string }

const IS_DEFINITION = /\.(?:ya?ml|json)$/i
const IS_DRAWING = /\.svg$/i

/**
 * Reads files that were chosen or dropped together. One of them may be a definition; the others are files that it names, or
 * that the definition which is open names (`named`). The limits and the words are those of the command.
 */
export async function readPicked(picked: readonly Picked[], named: readonly string[]): Promise<Reading> {
  const [only] = picked
  const definitions = picked.filter(({ file }) => IS_DEFINITION.test(file.name))
  // A definition may have any name, as with the command, where it comes alone.
  const isOdd =
    definitions.length === 0 && picked.length === 1 && only !== undefined && !IS_DRAWING.test(only.file.name)
  const [definition, second] = isOdd ? picked : definitions
  if (second !== undefined) {
    const names = definitions.map(({ file }) => file.name).join(', ')
    return { kind: 'refused', words: `${definitions.length} definitions at once: ${names}. Open one of them.` }
  }
  const others = picked.filter((one) => one !== definition)
  if (definition === undefined) return asFiles(others, named)
  const { file, handle } = definition
  if (file.size > DEFINITION_LIMIT) return { kind: 'refused', words: sentence(tooLargeWords(file.name)) }
  const bytes = new Uint8Array(await file.arrayBuffer())
  const read = decodeText(bytes, file.name, 'definition')
  if (!read.ok) return { kind: 'refused', words: sentence(read.words) }
  const beside = await asFiles(others, filesNamed(read.text))
  if (beside.kind !== 'files') return beside
  const opened = { text: markOf(bytes) + read.text, file: file.name, files: beside.files }
  return { kind: 'definition', opened, ...(handle !== undefined && { handle }) }
}

async function asFiles(
  picked: readonly Picked[],
  named: readonly string[],
): Promise<Extract<Reading, { kind: 'files' | 'refused' }>> {
  const files = new Map<string, string>()
  for (const { file } of picked) {
    if (file.size > DEFINITION_LIMIT)
      return {
        kind: 'refused',
        words: `The file ${file.name} is larger than 4 MiB (${DEFINITION_LIMIT} bytes), the most that is read.`,
      }
    const read = decodeText(new Uint8Array(await file.arrayBuffer()), file.name, 'file')
    if (!read.ok) return { kind: 'refused', words: sentence(read.words) }
    files.set(nameFor(file.name, named), read.text)
  }
  return { kind: 'files', files }
}

/** A browser tells no folders, so a file `mark.svg` is the one that is named `marks/mark.svg`. */
const nameFor = (name: string, named: readonly string[]): string =>
  named.find((one) => one === name) ?? named.find((one) => one.endsWith(`/${name}`)) ?? name

const sentence = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1)

/** The byte order mark that some editors begin a file with, which decoding leaves out: it goes back into the file. */
const markOf = ([a, b, c]: Uint8Array): string => (a === 0xef && b === 0xbb && c === 0xbf ? '\ufeff' : '')
