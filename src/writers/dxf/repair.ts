import type { Point } from '../../drawing/index.ts'
import { type DxfRecord, firstOf, isReal, type Pair, recordsOf } from './pairs.ts'
import { DERIVED_PLACES, PLACES, round } from './shapes.ts'

export interface RepairOptions {
  readonly version: '2007' | '2000'
  /** What the view shows when the file is opened, in the file's unit. */
  readonly view: { readonly min: Point; readonly max: Point }
}

/** Codes that every entity has; they belong to AcDbEntity (DXF reference, common group codes; from memory). */
const COMMON_CODES = [8, 6, 62, 370]
/** The view is a little larger than the drawing. */
const VIEW_MARGIN = 1.05

/**
 * dxf-writer's output in one canonical form, whatever was drawn before in the same process: handles renumbered in
 * order of appearance, every owner set to the record that owns it (dxf-writer names the block, not its record), common
 * codes where they belong, reals as plain decimals, and a view that shows the whole drawing.
 */
export function repaired(pairs: readonly Pair[], options: RepairOptions): Pair[] {
  const records = recordsOf(pairs)
  const handles = handlesOf(records)
  const owners = ownersOf(records)
  const next = handles.size.toString(16).toUpperCase()
  const mendedPairs: Pair[] = []
  let block: string | undefined
  for (const record of records) {
    const kind = record[0]?.value ?? ''
    if (kind === 'BLOCK') block = firstOf(record, 2)
    const inBlock = kind === 'BLOCK' || kind === 'ENDBLK'
    const owner = inBlock ? owners.byBlock.get(block ?? '') : owners.byHandle.get(firstOf(record, 330) ?? '')
    const names: Names = { kind, owner, handles, next }
    for (const pair of reshaped(kind, record, options)) mendedPairs.push(mended(pair, names))
  }
  return mendedPairs
}

/** What handles of a record become: its owner, the new handles of all, and the next one that is free. */
interface Names {
  readonly kind: string
  readonly owner: string | undefined
  readonly handles: ReadonlyMap<string, string>
  readonly next: string
}

/** Old handle to new, in order of appearance; the header's seed is not one. */
function handlesOf(records: readonly DxfRecord[]): Map<string, string> {
  const handles = new Map<string, string>([['0', '0']])
  for (const record of records) {
    if (record[0]?.value === 'SECTION') continue
    const handle = firstOf(record, 5)
    if (handle === undefined) continue
    if (handles.has(handle)) throw new Error(`dxf-writer gave handle ${handle} twice`)
    handles.set(handle, handles.size.toString(16).toUpperCase())
  }
  return handles
}

/** The BLOCK_RECORD of each block, by the block's name and by its handle. */
function ownersOf(records: readonly DxfRecord[]) {
  const byBlock = new Map<string, string>()
  const byHandle = new Map<string, string>()
  for (const record of records) {
    const [kind, name, handle] = [record[0]?.value, firstOf(record, 2) ?? '', firstOf(record, 5) ?? '']
    if (kind === 'BLOCK_RECORD') byBlock.set(name, handle)
    if (kind === 'BLOCK') byHandle.set(handle, byBlock.get(name) ?? '')
  }
  return { byBlock, byHandle }
}

function reshaped(kind: string, record: DxfRecord, options: RepairOptions): DxfRecord {
  const marker = record.findIndex((pair) => pair.code === 100 && pair.value === 'AcDbEntity')
  if (marker >= 0) return commonFirst(record, marker)
  if (kind === 'VPORT') return withView(record, options.view)
  // Explodability and scalability of blocks came with version 2007.
  if (kind === 'BLOCK_RECORD' && options.version === '2000') {
    return record.filter((pair) => pair.code !== 280 && pair.code !== 281)
  }
  return record
}

/** The common codes directly behind the marker of AcDbEntity. */
function commonFirst(record: DxfRecord, marker: number): DxfRecord {
  const head: Pair[] = []
  const common: Pair[] = []
  const rest: Pair[] = []
  for (const [i, pair] of record.entries()) {
    if (i <= marker) head.push(pair)
    else if (COMMON_CODES.includes(pair.code)) common.push(pair)
    else rest.push(pair)
  }
  return head.concat(common, rest)
}

/** Centre (12, 22), height (40) and width over height (41) of the view on opening. */
function withView(record: DxfRecord, { min, max }: RepairOptions['view']): DxfRecord {
  const [width, height] = [max[0] - min[0], max[1] - min[1]]
  const real = (code: number, value: number): Pair => ({ code, value: String(round(value, PLACES)) })
  const view = [
    real(12, (min[0] + max[0]) / 2),
    real(22, (min[1] + max[1]) / 2),
    real(40, Math.max(width, height, 1) * VIEW_MARGIN),
    real(41, 1),
  ]
  return record.flatMap((pair) => (pair.code === 40 ? view : [pair]))
}

function mended(pair: Pair, names: Names): Pair {
  const { code, value } = pair
  switch (code) {
    case 5:
      return { code, value: names.kind === 'SECTION' ? names.next : renamed(value, names) }
    case 330:
      return { code, value: renamed(names.owner ?? value, names) }
    case 350:
      return { code, value: renamed(value, names) }
    case 390:
      // A plot style that does not exist; a value seems to be wanted, and 0 says none.
      return { code, value: '0' }
    default:
      return isReal(code) ? { code, value: plainDecimal(value) } : pair
  }
}

function renamed(handle: string, { kind, handles }: Names): string {
  const fresh = handles.get(handle)
  if (fresh === undefined) throw new Error(`${kind} refers to handle ${handle}, which does not exist`)
  return fresh
}

const WHOLE = /^(0|-?[1-9]\d*)$/
const DECIMAL = new RegExp(`^-?\\d+\\.\\d{0,${DERIVED_PLACES - 1}}[1-9]$`)

/** `12.5`, `0.0`: always a point, never an exponent or `-0`. */
function plainDecimal(value: string): string {
  // Nearly all are right as they are.
  if (DECIMAL.test(value)) return value
  if (WHOLE.test(value)) return `${value}.0`
  const number = round(value.trim() === '' ? Number.NaN : Number(value), DERIVED_PLACES)
  const digits = number.toFixed(DERIVED_PLACES).replace(/0+$/, '')
  return digits.endsWith('.') ? `${digits}0` : digits
}
