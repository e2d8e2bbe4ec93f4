import { boardFacts } from '../boards.ts'
import type { Context, Said } from '../context.ts'
import { quoted } from '../context.ts'
import { DEFAULTS, DENSITY, STIFFNESS } from '../defaults.ts'
import { type Layer, said } from '../layers.ts'
import type { RawStock } from '../schema/definition.ts'
import type { DefinitionPath, Stock } from '../types.ts'

const THINNEST = 3
const THICKEST = 60

/** One sheet good; `undefined` when its thickness cannot be told. */
export function resolveStock(context: Context, name: string, layer: Layer<RawStock>): Stock | undefined {
  const layers = [layer]
  const readings = resolveReadings(context, said(layers, 'thickness'))
  const sheet = resolveSheet(context, said(layers, 'sheet'))
  const edgeTrim = context.lengthOr(said(layers, 'edge trim'), DEFAULTS.edgeTrim)
  const trimPath = [...layer.path, 'edge trim']
  if (2 * edgeTrim >= Math.min(sheet.length, sheet.width) && !context.troubled([...layer.path, 'sheet'])) {
    const least = context.show(Math.min(sheet.length, sheet.width))
    context.report(trimPath, `taken off two edges, this leaves nothing of a sheet ${least} wide`, {
      expected: 'a length less than half the width of the sheet',
    })
  }
  const onHand = said(layers, 'sheets')?.value
  if (readings === undefined) return undefined
  const thickness = readings.reduce((sum, reading) => sum + reading, 0) / readings.length
  const board = said(layers, 'board')?.value
  const facts = board && boardFacts(board, thickness)
  return {
    name,
    readings,
    thickness,
    thickest: Math.max(...readings),
    sheet,
    grain: said(layers, 'grain')?.value ?? 'along length',
    edgeTrim,
    ...(board !== undefined && { board }),
    density: said(layers, 'density')?.value ?? facts?.density ?? DENSITY,
    stiffness: said(layers, 'stiffness')?.value ?? facts?.stiffness ?? STIFFNESS,
    ...(onHand !== undefined && { onHand }),
    at: layer.path,
  }
}

function resolveReadings(
  context: Context,
  thickness: Said<number | string | readonly (number | string | undefined)[]> | undefined,
): number[] | undefined {
  if (thickness === undefined) return undefined
  const { value, path } = thickness
  const one = typeof value === 'number' || typeof value === 'string'
  const list = one ? [{ value, path }] : value.map((reading, i) => ({ value: reading, path: [...path, i] }))
  const readings = list.map((reading) => resolveReading(context, reading))
  const good = readings.filter((reading) => reading !== undefined)
  return good.length === readings.length && good.length > 0 ? good : undefined
}

function resolveReading(context: Context, reading: Said<number | string | undefined>): number | undefined {
  if (reading.value === undefined) return undefined
  const mm = context.length({ value: reading.value, path: reading.path })
  if (mm === undefined) return undefined
  if (mm < THINNEST || mm > THICKEST) {
    context.report(reading.path, `${context.show(mm)} is no thickness of a sheet good`, {
      expected: `what the callipers read, ${THINNEST} to ${THICKEST} mm`,
    })
    return undefined
  }
  return mm
}

function resolveSheet(
  context: Context,
  sheet: Said<readonly (number | string | undefined)[]> | undefined,
): Stock['sheet'] {
  const side = (index: 0 | 1) => {
    const value = sheet?.value[index]
    return value === undefined || sheet === undefined ? undefined : { value, path: [...sheet.path, index] }
  }
  return {
    length: context.lengthOr(side(0), DEFAULTS.sheetLength, { aboveZero: true }),
    width: context.lengthOr(side(1), DEFAULTS.sheetWidth, { aboveZero: true }),
  }
}

/**
 * The stock of that name. `undefined` when no name is said, when there is no such stock (which is reported), or when
 * the stock itself has a problem (which has been reported where it stands).
 */
export function stockNamed(context: Context, name: Said<number | string> | undefined): Stock | undefined {
  if (name === undefined) return undefined
  const written = writtenName(context, name.path, name.value)
  if (context.stocks.has(written)) return context.stocks.get(written)
  if (!context.stocksKnown) return undefined
  const known = [...context.stocks.keys()]
  context.report(name.path, `there is no stock ${quoted(written)}`, {
    expected: known.length === 0 ? 'the name of a stock; there is none yet' : someOf(known),
    nearest: context.nearest(written, known),
  })
  return undefined
}

/** A name as it was written: `01` stays `01`, though YAML has it as a number. */
export function writtenName(context: Context, path: DefinitionPath, value: number | string): string {
  if (typeof value === 'string') return value
  const written = context.source.place(path)?.written
  return written === undefined || written.startsWith('*') ? String(value) : written
}

/** Names for the words behind `expected`: all, or the first eight. */
export function someOf(names: readonly string[]): string {
  const shown = names.slice(0, 8).map(quoted)
  const rest = names.length - shown.length
  const head = shown.slice(0, -1).join(', ')
  const last = shown[shown.length - 1] ?? ''
  if (rest > 0) return `one of ${shown.join(', ')} and ${rest} more`
  return shown.length > 1 ? `${head} or ${last}` : last
}
