import { type Context, quoted, type Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { layersOf, said } from '../layers.ts'
import type { RawDxf, RawOutputs } from '../schema/definition.ts'
import type { LayerPatterns, OutputSpec } from '../types.ts'

type RawLayers = NonNullable<RawDxf['layers']>

interface LayerRule {
  readonly field: keyof LayerPatterns
  readonly usual: string
  readonly placeholders: readonly string[]
}

/** Layer names by the key of the definition: the default, and what may be filled in. */
const LAYERS = {
  outline: { field: 'outline', usual: 'OUTLINE', placeholders: [] },
  bore: { field: 'bore', usual: 'BORE-D{diameter}-DEEP{depth}', placeholders: ['diameter', 'depth'] },
  'bore through': { field: 'boreThrough', usual: 'BORE-D{diameter}-THROUGH', placeholders: ['diameter'] },
  countersink: {
    field: 'countersink',
    usual: 'COUNTERSINK-D{diameter}-DEG{angle}',
    placeholders: ['diameter', 'angle'],
  },
  groove: { field: 'groove', usual: 'GROOVE-W{width}-DEEP{depth}', placeholders: ['width', 'depth'] },
  rebate: { field: 'rebate', usual: 'REBATE-W{width}-DEEP{depth}', placeholders: ['width', 'depth'] },
  cutout: { field: 'cutout', usual: 'CUTOUT', placeholders: [] },
  pocket: { field: 'pocket', usual: 'POCKET-DEEP{depth}', placeholders: ['depth'] },
  mark: { field: 'mark', usual: 'MARK', placeholders: [] },
  note: { field: 'note', usual: 'NOTE', placeholders: [] },
} as const satisfies Readonly<Record<keyof RawLayers, LayerRule>>

/** Longest layer name that every DXF reader takes, before figures are filled in. */
const LONGEST = 60

/** Paper and DXF settings, with defaults by the project's units. */
export function resolveOutputs(context: Context, outputs: Said<unknown> | undefined): OutputSpec {
  const layers = layersOf<RawOutputs>([outputs])
  const dxf = layersOf<RawDxf>([said(layers, 'dxf')])
  const version = said(dxf, 'version')?.value
  const budget = said(layers, 'page budget')?.value
  return {
    paper: said(layers, 'paper')?.value ?? (context.usual === 'in' ? 'Letter' : 'A4'),
    margin: within(context, said(layers, 'margin'), MARGIN),
    overlap: within(context, said(layers, 'overlap'), OVERLAP),
    ...(budget !== undefined && { pageBudget: budget }),
    ...barsOf(context, said(layers, 'check bars')),
    dxf: {
      units: said(dxf, 'units')?.value ?? context.units,
      version: version === undefined ? '2007' : (String(version) as '2007' | '2000'),
      contours: said(dxf, 'contours')?.value ?? 'bulges',
      notes: said(dxf, 'notes')?.value ?? true,
      layers: resolveLayers(context, said(dxf, 'layers')),
    },
  }
}

/** A length that must lie between two others. Lengths in mm. */
interface Bounds {
  readonly usual: number
  readonly least: number
  readonly most: number
  readonly not: string
}

/** Printers leave 1.8 mm at the least (S68); on every paper a page has room within the most. */
const MARGIN: Bounds = { usual: DEFAULTS.printMargin, least: 2, most: 40, not: 'is no margin of a printer' }

/** Less has no room for the marks by which pages are lined up; more leaves too little of a page. */
const OVERLAP: Bounds = { usual: DEFAULTS.pageOverlap, least: 12, most: 50, not: 'is no overlap of two pages' }

function within(context: Context, length: Said<number | string> | undefined, bounds: Bounds): number {
  const { usual, least, most, not } = bounds
  const mm = context.lengthOr(length, usual)
  if (length === undefined || (mm >= least && mm <= most)) return mm
  context.report(length.path, `${context.show(mm)} ${not}`, {
    expected: `a length from ${least} mm to ${most} mm`,
  })
  return mm
}

function barsOf(
  context: Context,
  bars: Said<readonly (number | string | undefined)[]> | undefined,
): Pick<OutputSpec, 'bars'> {
  if (bars === undefined) return {}
  const [across, down] = [0, 1].map((k) => {
    const value = bars.value[k]
    return value === undefined ? undefined : context.length({ value, path: [...bars.path, k] }, { aboveZero: true })
  })
  return across === undefined || down === undefined ? {} : { bars: { across, down } }
}

function resolveLayers(context: Context, layers: Said<unknown> | undefined): LayerPatterns {
  const given = layersOf<RawLayers>([layers])
  const pattern = (key: keyof typeof LAYERS): string => {
    const rule: LayerRule = LAYERS[key]
    const found = said(given, key)
    if (found === undefined) return rule.usual
    return checkPattern(context, found, rule) ? found.value : rule.usual
  }
  return {
    outline: pattern('outline'),
    bore: pattern('bore'),
    boreThrough: pattern('bore through'),
    countersink: pattern('countersink'),
    groove: pattern('groove'),
    rebate: pattern('rebate'),
    cutout: pattern('cutout'),
    pocket: pattern('pocket'),
    mark: pattern('mark'),
    note: pattern('note'),
  }
}

function checkPattern(context: Context, { value, path }: Said<string>, rule: LayerRule): boolean {
  const holders = rule.placeholders.map((name) => `{${name}}`)
  const allowed = holders.length === 0 ? '' : `, and ${holders.join(', ')}`
  const expected = `1 to ${LONGEST} characters of A-Z, 0-9, - and _${allowed}, such as ${rule.usual}`
  const rest = value.replace(/\{[^{}]*\}/g, (holder) => (holders.includes(holder) ? 'X' : holder))
  if (/^[A-Z0-9_-]+$/.test(rest) && value.length <= LONGEST) return true
  const unknown = /\{[^{}]*\}/.exec(rest)?.[0]
  const what =
    unknown === undefined ? `${quoted(value)} cannot be a layer name` : `${quoted(unknown)} is not known for this layer`
  context.report(path, what, { expected })
  return false
}
