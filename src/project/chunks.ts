import { isMap, isScalar, type Node } from 'yaml'
import type { Kept } from '../memory/index.ts'
import { moved, type Place, type Places } from './places.ts'
import { composed, MOST_BYTES, plainEnds, Source } from './source.ts'
import { Lines, utf8Length } from './text.ts'
import { type Data, MOST_VALUES, NAME_MARK, toData } from './to-data.ts'
import type { DefinitionPath } from './types.ts'

/** One key of the definition or one module, with all that belongs to it, read by itself. */
export interface Chunk {
  readonly key: string
  readonly data: Data
  readonly places: Places
  readonly values: number
}

/** A chunk, and how far its places lie from where they were read, in characters. */
interface Standing {
  readonly chunk: Chunk
  readonly by: number
}

/** Chunks that were read, by their text; nothing for text that cannot be read by itself. */
export type ChunkMemory = Kept<Chunk | undefined>

const MODULES = 'modules:\n'

/**
 * The same as `readSource`, key by key and module by module, so that only those are read whose text is not in the memory;
 * data that comes from it is the very same thing again. Nothing where the text is not plainly made of keys in block style
 * that stand for themselves, or where anything is wrong with it: then it must be read as a whole.
 *
 * Why that is the same: YAML is read from its beginning to its end, with no more state between two entries of a block than
 * how deep it is. Where each piece is a whole document without a mistake, of one key that begins where the piece does, the
 * reader stands as at the beginning of an entry behind each of them.
 */
export function readChunks(original: string, file: string, memory: ChunkMemory): Source | undefined {
  if (utf8Length(original) > MOST_BYTES) return undefined
  const text = plainEnds(original)
  // Tabs in indents are told from the lines about them.
  if (/^ *\t/m.test(text)) return undefined
  const starts = entries(text, 0, text.length)
  if (starts === undefined || text[starts[0] ?? 0] === ' ') return undefined
  const keys = new Map<string | number, Standing>()
  let modules: Modules | undefined
  for (const [k, start] of starts.entries()) {
    const end = starts[k + 1] ?? text.length
    const body = bodyOfModules(text, start)
    if (body !== undefined) {
      if (modules !== undefined) return undefined
      modules = readModules(text, start, body, end, memory)
      if (modules === undefined) return undefined
      continue
    }
    const chunk = readChunk(text.slice(start, end), memory)
    if (chunk === undefined || keys.has(chunk.key)) return undefined
    keys.set(chunk.key, { chunk, by: start })
  }
  if (modules === undefined || keys.has('modules')) return undefined
  const values = [...keys.values(), ...modules.entries.values()].reduce((sum, { chunk }) => sum + chunk.values, 0)
  if (values > MOST_VALUES) return undefined
  return new Source(file, new Lines(text), dataOf(starts, keys, modules), placeIn(text, keys, modules))
}

interface Modules {
  readonly entries: ReadonlyMap<string | number, Standing>
  /** Its own key, and all that stands under it. */
  readonly place: Place
  /** Where its key stands. */
  readonly start: number
}

/** Where the lines begin that begin an entry: those as far in as the first; nothing where a line is not as far in. */
function entries(text: string, from: number, to: number): number[] | undefined {
  const starts: number[] = []
  let indent: number | undefined
  for (let line = from; line < to; ) {
    const next = text.indexOf('\n', line)
    let at = line
    while (text[at] === ' ') at += 1
    const empty = at >= to || text[at] === '\n' || text[at] === '\r' || text[at] === '#'
    if (!empty) {
      indent ??= at - line
      if (at - line < indent) return undefined
      if (at - line === indent) starts.push(line)
    }
    line = next === -1 ? to : next + 1
  }
  return starts
}

/** Where the entries under the key `modules` begin, where it stands at an offset. */
function bodyOfModules(text: string, start: number): number | undefined {
  if (!text.startsWith('modules:', start)) return undefined
  const end = text.indexOf('\n', start)
  if (end === -1 || !/^modules: *(?: #.*)?\r?$/.test(text.slice(start, end))) return undefined
  return end + 1
}

function readModules(text: string, start: number, body: number, end: number, memory: ChunkMemory): Modules | undefined {
  const starts = entries(text, body, end)
  const [first] = starts ?? []
  if (starts === undefined || first === undefined || text[first] !== ' ') return undefined
  const found = new Map<string, Standing>()
  for (const [k, from] of starts.entries()) {
    const chunk = readChunk(MODULES + text.slice(from, starts[k + 1] ?? end), memory)
    if (chunk === undefined || found.has(chunk.key)) return undefined
    found.set(chunk.key, { chunk, by: from - MODULES.length })
  }
  const key = [start, start + 'modules'.length] as const
  const place = { key, value: [first, end] as const, written: undefined, comment: undefined, below: true }
  return { entries: found, place, start }
}

/** A chunk by itself, or, behind the words of MODULES, a module; nothing where it is not one entry, plain and right. */
function readChunk(text: string, memory: ChunkMemory): Chunk | undefined {
  return memory.take(text, [], () => {
    const { documents } = composed(text)
    const [document, second] = documents
    if (document === undefined || second !== undefined) return undefined
    const { errors, warnings, directives, contents } = document
    if (errors.length > 0 || warnings.length > 0 || directives.yaml.explicit === true) return undefined
    const root = onlyPair(contents, 0)
    if (root === undefined) return undefined
    const inModules = text.startsWith(MODULES)
    const indent = text.slice(MODULES.length).search(/[^ ]/)
    const pair = inModules ? onlyPair(root.value, MODULES.length + indent) : root
    if (pair === undefined) return undefined
    const { data, places, mistakes, values, alone, bomb } = toData(document, text)
    if (!alone || bomb !== undefined || mistakes.length > 0) return undefined
    const [key = '', value = null] = Object.entries(inModules ? groupOf(groupOf(data).modules) : groupOf(data))[0] ?? []
    return { key: inModules ? key.slice(NAME_MARK.length) : key, data: value, places, values }
  })
}

/** The pair of a group in block style that has just one, whose plain key begins at an offset. */
function onlyPair(node: unknown, start: number): { readonly value: unknown } | undefined {
  if (!isMap(node) || node.flow === true || node.items.length !== 1 || node.tag !== undefined) return undefined
  const [pair] = node.items
  const key = pair?.key as Node | undefined
  return isScalar(key) && key.range?.[0] === start ? pair : undefined
}

function groupOf(data: Data | undefined): Readonly<Record<string, Data>> {
  return typeof data === 'object' && data !== null && !Array.isArray(data) ? (data as Record<string, Data>) : {}
}

/** All data, its keys in the order of the text. */
function dataOf(starts: readonly number[], keys: ReadonlyMap<string | number, Standing>, modules: Modules): Data {
  const byStart = new Map([...keys].map(([key, { chunk, by }]) => [by, [key, chunk.data] as const]))
  const named = Object.create(null) as Record<string, Data>
  for (const [key, { chunk }] of modules.entries) named[NAME_MARK + key] = chunk.data
  const data = Object.create(null) as Record<string, Data>
  for (const start of starts) {
    const [key, value] = byStart.get(start) ?? ['modules', named]
    data[key] = value
  }
  return data
}

function placeIn(
  text: string,
  keys: ReadonlyMap<string | number, Standing>,
  modules: Modules,
): (path: DefinitionPath) => Place | undefined {
  return (path) => {
    const [key, name] = path
    if (key === undefined) {
      return { key: undefined, value: [0, text.length], written: undefined, comment: undefined, below: true }
    }
    const inModules = key === 'modules'
    if (inModules && name === undefined) return modules.place
    const found = inModules ? modules.entries.get(name ?? '') : keys.get(key)
    const place = found?.chunk.places.at(path)
    return found && place && moved(place, found.by)
  }
}
