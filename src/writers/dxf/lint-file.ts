import type { Operation } from '../../drawing/index.ts'
import { operationOf } from './layers.ts'
import { type DxfRecord, firstOf, type Pair, pairsOf, recordsOf } from './pairs.ts'

export type Report = (rule: string, what: string) => void

/** A record of the file with the line on which it begins, counted from 1. */
export interface Located {
  readonly kind: string
  readonly record: DxfRecord
  readonly line: number
}

/** A DXF file taken apart as far as the linter needs it. */
export interface LintFile {
  readonly pairs: readonly Pair[]
  readonly sections: ReadonlyMap<string, readonly Located[]>
  /** Header variables by name, with `$`. */
  readonly header: ReadonlyMap<string, readonly Pair[]>
  /** Operation of each layer, by name; undefined where the colour is none of ours. */
  readonly operations: ReadonlyMap<string, Operation | undefined>
}

const SECTIONS = ['HEADER', 'CLASSES', 'TABLES', 'BLOCKS', 'ENTITIES', 'OBJECTS']

/** Checks bytes, pairs and sections, and takes the file apart; undefined where it cannot be read any further. */
export function readFile(text: string, report: Report): LintFile | undefined {
  if (!/^(?:[^\r\n]*\r\n)+$/.test(text)) report('bytes', 'a line does not end with CR LF')
  if (!/^\s*0\r?\n/.test(text)) report('bytes', 'the file does not begin with group code 0')
  if (!/\r\n {0,2}0\r\nEOF\r\n$/.test(text)) report('bytes', 'the file does not end with EOF')
  const foreign = /[^\x20-\x7e\r\n]/u.exec(text)
  if (foreign !== null) report('bytes', `character ${codePoint(foreign[0])} at ${foreign.index} is not plain ASCII`)
  let pairs: Pair[]
  try {
    pairs = pairsOf(text)
  } catch (error) {
    report('pairs', error instanceof Error ? error.message : String(error))
    return undefined
  }
  const sections = sectionsOf(pairs, report)
  return { pairs, sections, header: headerOf(sections), operations: operationsOf(sections) }
}

const codePoint = (c: string): string => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`

function sectionsOf(pairs: readonly Pair[], report: Report): Map<string, Located[]> {
  const sections = new Map<string, Located[]>()
  let line = 1
  let open: Located[] | undefined
  for (const record of recordsOf(pairs)) {
    const kind = record[0]?.value ?? ''
    if (kind === 'SECTION') {
      if (open !== undefined) report('sections', `line ${line}: a section begins inside another`)
      open = [{ kind, record, line }]
      sections.set(firstOf(record, 2) ?? '', open)
    } else if (kind === 'ENDSEC') {
      if (open === undefined) report('sections', `line ${line}: ENDSEC closes nothing`)
      open = undefined
    } else if (open !== undefined) {
      open.push({ kind, record, line })
    } else if (kind !== 'EOF') {
      report('sections', `line ${line}: ${kind} stands outside any section`)
    }
    line += 2 * record.length
  }
  if (open !== undefined) report('sections', 'the last section is not closed')
  const found = [...sections.keys()].join(', ')
  if (found !== SECTIONS.join(', ')) report('sections', `${found} instead of ${SECTIONS.join(', ')}`)
  return sections
}

function headerOf(sections: ReadonlyMap<string, readonly Located[]>): Map<string, Pair[]> {
  const header = new Map<string, Pair[]>()
  let values: Pair[] = []
  for (const pair of sections.get('HEADER')?.[0]?.record.slice(2) ?? []) {
    if (pair.code === 9) {
      values = []
      header.set(pair.value, values)
    } else values.push(pair)
  }
  return header
}

function operationsOf(sections: ReadonlyMap<string, readonly Located[]>): Map<string, Operation | undefined> {
  const layers = (sections.get('TABLES') ?? []).filter(({ kind }) => kind === 'LAYER')
  return new Map(layers.map(({ record }) => [firstOf(record, 2) ?? '', operationOf(Number(firstOf(record, 62)))]))
}
