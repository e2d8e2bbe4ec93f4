import type { Point } from '../../drawing/index.ts'
import { type DxfRecord, firstOf, isReal, type Pair, recordsOf } from './pairs.ts'
import { DERIVED_PLACES, round } from './shapes.ts'

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
  let block: string | undefined
  return records.flatMap((record) => {
    const kind = record[0]?.value ?? ''
    if (kind === 'BLOCK') block = firstOf(record, 2)
    const inBlock = kind === 'BLOCK' || kind === 'ENDBLK'
    const owner = inBlock ? owners.byBlock.get(block ?? '') : owners.byHandle.get(firstOf(record, 330) ?? '')
    return reshaped(kind, record, options).map((pair) => mended(pair, kind, owner, handles, next))
  })
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
  if (marker >= 0) {
    const isCommon = (pair: Pair, i: number) => i > marker && COMMON_CODES.includes(pair.code)
    const common = record.filter(isCommon)
    const others = record.filter((pair, i) => !isCommon(pair, i))
    return [...others.slice(0, marker + 1), ...common, ...others.slice(marker + 1)]
  }
  if (kind === 'VPORT') return withView(record, options.view)
  // Explodability and scalability of blocks came with version 2007.
  if (kind === 'BLOCK_RECORD' && options.version === '2000') {
    return record.filter((pair) => pair.code !== 280 && pair.code !== 281)
  }
  return record
}

/** Centre (12, 22), height (40) and width over height (41) of the view on opening. */
function withView(record: DxfRecord, { min, max }: RepairOptions['view']): DxfRecord {
  const [width, height] = [max[0] - min[0], max[1] - min[1]]
  const real = (code: number, value: number): Pair => ({ code, value: String(value) })
  const view = [
    real(12, (min[0] + max[0]) / 2),
    real(22, (min[1] + max[1]) / 2),
    real(40, Math.max(width, height, 1) * VIEW_MARGIN),
    real(41, 1),
  ]
  return record.flatMap((pair) => (pair.code === 40 ? view : [pair]))
}

function mended(pair: Pair, kind: string, owner: string | undefined, handles: Map<string, string>, next: string): Pair {
  const { code, value } = pair
  const renamed = (handle: string): Pair => {
    const fresh = handles.get(handle)
    if (fresh === undefined) throw new Error(`${kind} refers to handle ${handle}, which does not exist`)
    return { code, value: fresh }
  }
  if (code === 5) return kind === 'SECTION' ? { code, value: next } : renamed(value)
  if (code === 330) return renamed(owner ?? value)
  if (code === 350) return renamed(value)
  // A plot style that does not exist; a value seems to be wanted, and 0 says none.
  if (code === 390) return { code, value: '0' }
  return isReal(code) ? { code, value: plainDecimal(value) } : pair
}

/** `12.5`, `0.0`: always a point, never an exponent or `-0`. */
function plainDecimal(value: string): string {
  const number = round(value.trim() === '' ? Number.NaN : Number(value), DERIVED_PLACES)
  const digits = number.toFixed(DERIVED_PLACES).replace(/0+$/, '')
  return digits.endsWith('.') ? `${digits}0` : digits
}
