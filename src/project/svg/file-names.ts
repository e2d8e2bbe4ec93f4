import { isGroup } from '../layers.ts'
import { readSource } from '../source.ts'

/** Files that one definition may name, at most. */
const MOST_FILES = 200

/** A file beside the definition, or in a folder there: never elsewhere on the disk. */
export function isPlainFileName(name: string): boolean {
  if (name.length > 200 || /[\\:\p{Cc}]/u.test(name) || name.startsWith('/')) return false
  return name.split('/').every((step) => step.trim() !== '' && step !== '.' && step !== '..')
}

/**
 * The files that a definition names, each once in the order of the text, for whoever reads them before `readDefinition`;
 * none where the text cannot be read. Opens nothing. Names that lead elsewhere are left out: `readDefinition` refuses them.
 */
export function filesNamed(text: string): string[] {
  // Reading twice takes time, and few definitions name a file.
  if (!text.includes('file')) return []
  const read = readSource(text, '')
  const modules = read.ok && isGroup(read.source.data) ? read.source.data.modules : undefined
  if (!isGroup(modules)) return []
  const names = Object.values(modules).flatMap((module) => {
    const openings = isGroup(module) ? module.openings : undefined
    return Array.isArray(openings) ? openings.map((one: unknown) => (isGroup(one) ? one.file : undefined)) : []
  })
  const plain = names.filter((name): name is string => typeof name === 'string' && isPlainFileName(name))
  return [...new Set(plain)].slice(0, MOST_FILES)
}
