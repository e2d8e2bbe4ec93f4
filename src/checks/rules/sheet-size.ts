import { NOISE_MM } from '../../geometry/index.ts'
import { coreOf, type Panel } from '../../panel/index.ts'
import type { Edit, Project, Stock } from '../../project/index.ts'
import { usableSize } from '../../sheets/index.ts'
import { written } from '../runs.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { mm, panelWords } from '../words.ts'

/** Parts that no sheet of their stock gives. */
export const sheetSize: Rule = {
  ids: ['sheet-too-small'],
  check: (subject) => subject.panels.flatMap((panel) => tooLarge(subject, panel)),
}

interface Size {
  readonly length: number
  readonly width: number
}

const turned = ({ length, width }: Size): Size => ({ length: width, width: length })

const holds = (sheet: Size, part: Size): boolean =>
  part.length <= sheet.length + NOISE_MM && part.width <= sheet.width + NOISE_MM

/** Whether a part comes out of a sheet; turned round only where there is no grain. */
const comesOut = (sheet: Size, part: Size, grain: Stock['grain']): boolean =>
  holds(sheet, part) || (grain === 'none' && holds(sheet, turned(part)))

function tooLarge({ project, assembly }: Subject, panel: Panel): Finding[] {
  const { stock } = panel
  const part = coreOf(panel)
  const usable = usableSize(stock)
  if (comesOut(usable, part, stock.grain)) return []
  const grainWords = stock.grain === 'none' ? '' : ', its length along the grain'
  const row = assembly.modules.some((module) => module.key === panel.module && module.liesOver !== undefined)
  const mend = mendOf(project, stock, part)
  return [
    {
      rule: 'sheet-too-small',
      severity: 'stop',
      panels: [panel.id],
      places: [],
      message: `${panelWords(panel)} is ${mm(part.length)} × ${mm(part.width)} mm${grainWords}; a sheet of ${stock.name} gives ${mm(usable.length)} × ${mm(usable.width)} mm${mend.why}`,
      fix:
        mend.trim === undefined
          ? `${row ? ROW_FIX : FIX}${mend.sheet ?? ''}`
          : `${mend.trim}, or ${row ? SPLIT : 'use a larger sheet'}`,
      ...(mend.change !== undefined && { change: mend.change }),
      at: panel.at,
    },
  ]
}

const FIX = 'make the module smaller, or use a larger sheet'
const SPLIT = 'lay two worktops: split the row where modules meet'
const ROW_FIX = `${SPLIT}, or use a larger sheet`

interface Mend {
  /** What is in the way, where it is more than the size. */
  readonly why: string
  readonly trim?: string
  readonly sheet?: string
  readonly change?: readonly Edit[]
}

/** What would let the part come out: a narrower trim of the edges, else a sheet that is sold. */
function mendOf(project: Project, stock: Stock, part: Size): Mend {
  const { sheet, edgeTrim, grain, at } = stock
  if (comesOut(sheet, part, grain)) {
    const most = holds(sheet, part) ? trimFor(sheet, part) : trimFor(sheet, turned(part))
    const trim = written(roundedDown(most, project.units), project.units).text
    return {
      why: `; only the edge trim of ${mm(edgeTrim)} mm is in the way`,
      trim: `trim no more than ${trim} off each edge, if the factory edges are sound`,
      change: [{ path: [...at, 'edge trim'], value: trim }],
    }
  }
  const why = holds(usableSize(stock), turned(part)) ? '; it would fit only with its grain across' : ''
  const sold = SOLD.find(
    (one) =>
      holds(one, sheet) &&
      comesOut({ length: one.length - 2 * edgeTrim, width: one.width - 2 * edgeTrim }, part, grain),
  )
  if (sold === undefined) return { why }
  return {
    why,
    sheet: `, such as ${sold.length} × ${sold.width} mm`,
    change: [{ path: [...at, 'sheet'], value: [`${sold.length} mm`, `${sold.width} mm`] }],
  }
}

/** The widest trim that leaves room for the part, mm. */
const trimFor = (sheet: Size, part: Size): number =>
  Math.max(0, Math.min(sheet.length - part.length, sheet.width - part.width) / 2)

/** To what a person types, never more: tenths of a millimetre, or 1/64 in. */
function roundedDown(value: number, units: Project['units']): number {
  const step = units === 'mm' ? 0.1 : 25.4 / 64
  return Math.floor(value / step + NOISE_MM) * step
}

/** Sheets as they are sold (S48, S49, S50, S51; 3660 × 1830: common practice), mm, the smallest first. */
const SOLD: readonly Size[] = [
  { length: 2440, width: 1220 },
  { length: 2500, width: 1250 },
  { length: 3050, width: 1525 },
  { length: 2800, width: 2070 },
  { length: 3660, width: 1830 },
]
