/** The unit of every DXF file: a group code and its value, each on a line of its own. */
export interface Pair {
  readonly code: number
  readonly value: string
}

/** A pair with code 0 and all pairs that belong to it. */
export type DxfRecord = readonly Pair[]

/** Codes that hold real numbers (DXF reference, group code value types; from memory). */
export function isReal(code: number): boolean {
  return (code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239)
}

const LINE_END = /\r?\n/
const GROUP_CODE = /^ *\d{1,4}$/

/** Pairs of a text with either line end. Throws where a code is not a whole number or a value is missing. */
export function pairsOf(text: string): Pair[] {
  // Splitting at a string is several times faster than at a pattern, and what dxf-writer gives has no CR.
  const lines = text.includes('\r') ? text.split(LINE_END) : text.split('\n')
  if (lines.at(-1) === '') lines.pop()
  if (lines.length % 2 !== 0) throw new Error(`${lines.length} lines do not make pairs`)
  const pairs: Pair[] = []
  // A file has some thirty codes and ten thousand lines: each code is read once.
  const codes = new Map<string, number>()
  for (let i = 0; i < lines.length; i += 2) {
    const written = lines[i] ?? ''
    let code = codes.get(written)
    if (code === undefined) {
      if (!GROUP_CODE.test(written)) {
        throw new Error(`line ${i + 1}: ${JSON.stringify(written.trim())} is not a group code`)
      }
      code = Number(written)
      codes.set(written, code)
    }
    pairs.push({ code, value: lines[i + 1] ?? '' })
  }
  return pairs
}

/** The pairs cut before each code 0. */
export function recordsOf(pairs: readonly Pair[]): DxfRecord[] {
  const records: Pair[][] = []
  let record: Pair[] | undefined
  for (const pair of pairs) {
    if (pair.code === 0 || record === undefined) {
      record = []
      records.push(record)
    }
    record.push(pair)
  }
  return records
}

/** The first value with a code in a record. */
export function firstOf(record: DxfRecord, code: number): string | undefined {
  for (const pair of record) if (pair.code === code) return pair.value
  return undefined
}

/** Pairs as a file: a code or a value a line, CR LF after each. */
export function textOf(pairs: readonly Pair[]): string {
  let text = ''
  for (const { code, value } of pairs) text += `${code}\r\n${value}\r\n`
  return text
}
