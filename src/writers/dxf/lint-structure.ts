import { isCut } from '../check-drawing.ts'
import type { LintFile, Located, Report } from './lint-file.ts'
import { firstOf, isReal, type Pair } from './pairs.ts'

const BLANK_ALLOWED = [1, 3, 4]
const MARKERS: Readonly<Record<string, string>> = {
  CIRCLE: 'AcDbEntity AcDbCircle',
  ARC: 'AcDbEntity AcDbCircle AcDbArc',
  LINE: 'AcDbEntity AcDbLine',
  LWPOLYLINE: 'AcDbEntity AcDbPolyline',
  TEXT: 'AcDbEntity AcDbText AcDbText',
}

const everything = (file: LintFile): Located[] => [...file.sections.values()].flat()

/** Rules `pairs`, `blank`, `reals`, `words`, `colours` (420), `extrusion`: what single values may be. */
export function valueFaults(file: LintFile, report: Report): void {
  for (const { kind, record, line } of everything(file)) {
    record.forEach((pair, i) => {
      valueFault(kind, pair, `line ${line + 2 * i + 1}`, report)
    })
  }
}

function valueFault(kind: string, { code, value }: Pair, where: string, report: Report): void {
  const shown = JSON.stringify(value)
  if (/[\p{Cc}\u2028\u2029]/u.test(value)) report('pairs', `${where}: control character in ${shown}`)
  const blank = value.trim() === ''
  if (blank && (kind === 'TEXT' || !BLANK_ALLOWED.includes(code)))
    report('blank', `${where}: code ${code} has no value`)
  if (isReal(code) && !blank) realFault(kind, code, value, where, report)
  if (value.includes('\\U+')) report('words', `${where}: ${shown} holds an escape`)
  if (kind === 'TEXT' && code === 1 && /%%|[\\^]/.test(value)) report('words', `${where}: ${shown} holds an order`)
  if (code === 420) report('colours', `${where}: a true colour`)
  if (code === 210 || code === 220 || code === 230) report('extrusion', `${where}: code ${code}`)
}

/** Bulges and arcs are worked out, and have more places than coordinates. */
function realFault(kind: string, code: number, value: string, where: string, report: Report): void {
  const derived = kind === 'ARC' || code === 42
  const shape = derived ? /^-?\d{1,6}\.\d{1,9}$/ : /^-?\d{1,6}\.\d{1,6}$/
  if (!shape.test(value)) report('reals', `${where}: ${JSON.stringify(value)} is not a plain decimal`)
  else if (/^-0\.0+$/.test(value)) report('reals', `${where}: -0`)
}

/** Rules `handles` and `owners`. */
export function handleFaults(file: LintFile, report: Report): void {
  const records = everything(file).filter(({ kind }) => kind !== 'SECTION')
  const handles = new Set<string>()
  let largest = 0
  for (const { record, kind, line } of records) {
    const handle = firstOf(record, 5)
    if (handle === undefined) {
      if (kind !== 'ENDTAB') report('handles', `line ${line}: ${kind} has none`)
      continue
    }
    if (!/^[0-9A-F]{1,16}$/.test(handle) || /^0+$/.test(handle))
      report('handles', `line ${line}: ${JSON.stringify(handle)}`)
    if (handles.has(handle)) report('handles', `line ${line}: ${handle} is used twice`)
    handles.add(handle)
    largest = Math.max(largest, Number.parseInt(handle, 16))
  }
  const seed = Number.parseInt(file.header.get('$HANDSEED')?.[0]?.value ?? '', 16)
  if (!(seed > largest)) report('handles', `$HANDSEED ${seed} is not above ${largest}`)
  for (const { record, line } of records) {
    for (const { code, value } of record) {
      if ((code === 330 || code === 350) && value !== '0' && !handles.has(value)) {
        report('handles', `line ${line}: refers to ${value}, which is not there`)
      }
    }
  }
  ownerFaults(file, report)
}

function ownerFaults(file: LintFile, report: Report): void {
  const isModelSpace = ({ kind, record }: Located) =>
    kind === 'BLOCK_RECORD' && firstOf(record, 2)?.toUpperCase() === '*MODEL_SPACE'
  const space = (file.sections.get('TABLES') ?? []).find(isModelSpace)
  const handle = space === undefined ? undefined : firstOf(space.record, 5)
  for (const { kind, record, line } of entitiesOf(file)) {
    if (firstOf(record, 330) !== handle) report('owners', `line ${line}: ${kind} is not owned by the model space`)
  }
}

/** Rule `header`, but for the extents. */
export function headerFaults(file: LintFile, report: Report): void {
  const value = (name: string) => file.header.get(name)?.[0]?.value
  const version = value('$ACADVER')
  if (version !== 'AC1021' && version !== 'AC1015') report('header', `$ACADVER is ${version}`)
  const units = `${value('$INSUNITS')} ${value('$MEASUREMENT')}`
  if (units !== '4 1' && units !== '1 0') report('header', `$INSUNITS and $MEASUREMENT are ${units}, not 4 1 or 1 0`)
  if (value('$DWGCODEPAGE') !== 'ANSI_1252') report('header', `$DWGCODEPAGE is ${value('$DWGCODEPAGE')}`)
}

/** Rules `linetypes`, `layers` (names) and `colours` (of layers). */
export function tableFaults(file: LintFile, report: Report): void {
  const tables = file.sections.get('TABLES') ?? []
  const order = tables.filter(({ kind }) => kind === 'TABLE').map(({ record }) => firstOf(record, 2))
  const [linetypes, layers] = [order.indexOf('LTYPE'), order.indexOf('LAYER')]
  if (linetypes < 0 || layers < linetypes) report('linetypes', 'LTYPE does not stand before LAYER')
  const named = (kind: string) => tables.filter((t) => t.kind === kind).map(({ record }) => firstOf(record, 2) ?? '')
  const known = new Set(
    named('LTYPE')
      .map((name) => name.toUpperCase())
      .concat('BYLAYER', 'BYBLOCK'),
  )
  for (const { record, line } of [...tables, ...entitiesOf(file)]) {
    const used = firstOf(record, 6)
    if (used !== undefined && !known.has(used.toUpperCase()))
      report('linetypes', `line ${line}: ${used} is not defined`)
  }
  const seen = new Set<string>()
  for (const { record, line } of tables.filter(({ kind }) => kind === 'LAYER')) {
    const name = firstOf(record, 2) ?? ''
    if (!/^[A-Z0-9][A-Z0-9_-]{0,30}$/.test(name)) report('layers', `line ${line}: name ${JSON.stringify(name)}`)
    if (seen.has(name.toUpperCase())) report('layers', `line ${line}: ${name} is there twice`)
    seen.add(name.toUpperCase())
    if (file.operations.get(name) === undefined) report('colours', `line ${line}: ${name} has ${firstOf(record, 62)}`)
  }
}

/** Rules `layers` (of entities), `kinds` and `markers`. */
export function entityFaults(file: LintFile, report: Report): void {
  const cutting = new Set<string>()
  for (const { kind, record, line } of entitiesOf(file)) {
    const layer = firstOf(record, 8) ?? ''
    if (layer === '0' || !file.operations.has(layer))
      report('layers', `line ${line}: ${kind} on layer ${JSON.stringify(layer)}`)
    const markers = record.filter((pair) => pair.code === 100).map((pair) => pair.value)
    if (!(kind in MARKERS)) report('kinds', `line ${line}: ${kind}`)
    else if (markers.join(' ') !== MARKERS[kind]) report('markers', `line ${line}: ${kind} has ${markers.join(', ')}`)
    const operation = file.operations.get(layer)
    if (kind === 'TEXT' && operation !== 'note') report('kinds', `line ${line}: TEXT on ${layer}`)
    if (operation !== undefined && isCut(operation)) cutting.add(kind)
  }
  if (cutting.has('LWPOLYLINE') && (cutting.has('LINE') || cutting.has('ARC'))) {
    report('kinds', 'cutting layers hold both LWPOLYLINE and LINE or ARC')
  }
}

const entitiesOf = (file: LintFile): readonly Located[] => file.sections.get('ENTITIES')?.slice(1) ?? []
