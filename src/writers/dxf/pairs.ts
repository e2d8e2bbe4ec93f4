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

/** Pairs of a text with either line end. Throws where a code is not a whole number or a value is missing. */
export function pairsOf(text: string): Pair[] {
  const lines = text.replace(/\r?\n$/, '').split(/\r?\n/)
  if (lines.length % 2 !== 0) throw new Error(`${lines.length} lines do not make pairs`)
  return Array.from({ length: lines.length / 2 }, (_, i) => {
    const code = (lines[2 * i] ?? '').trim()
    if (!/^\d{1,4}$/.test(code)) throw new Error(`line ${2 * i + 1}: ${JSON.stringify(code)} is not a group code`)
    return { code: Number(code), value: lines[2 * i + 1] ?? '' }
  })
}

/** The pairs cut before each code 0. */
export function recordsOf(pairs: readonly Pair[]): DxfRecord[] {
  const records: Pair[][] = []
  for (const pair of pairs) {
    if (pair.code === 0 || records.length === 0) records.push([])
    records[records.length - 1]?.push(pair)
  }
  return records
}

/** The first value with a code in a record. */
export function firstOf(record: DxfRecord, code: number): string | undefined {
  return record.find((pair) => pair.code === code)?.value
}

/** Pairs as a file: a code or a value a line, CR LF after each. */
export function textOf(pairs: readonly Pair[]): string {
  return pairs.map(({ code, value }) => `${code}\r\n${value}\r\n`).join('')
}
