import { NOISE_MM } from '../../geometry/index.ts'
import { formatMm, MM_PER_INCH } from '../../length/index.ts'
import {
  BAR_MM,
  correctionOf,
  type Edit,
  largerPaper,
  limitOf,
  type PaperName,
  paperSize,
} from '../../project/index.ts'
import { written } from '../runs.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { mm } from '../words.ts'

/** Full-size pages: whether the paper holds the check bars, and whether the readings of them can be those of a printer. */
export const printing: Rule = {
  ids: ['page-bars', 'printer-correction'],
  check: (subject) => [...barsOnPage(subject), ...readings(subject)],
}

type Project = Subject['project']

interface Room {
  readonly way: 'across' | 'down'
  /** Between the margins, mm. */
  readonly room: number
  /** Length of the bar as it is written, mm. */
  readonly bar: number
}

function roomOn(project: Project, paper: PaperName): Room[] {
  const { width, height } = paperSize(paper)
  const { margin } = project.outputs
  const { across, down } = correctionOf(project.outputs) ?? { across: 1, down: 1 }
  return [
    { way: 'across', room: width - 2 * margin, bar: BAR_MM * across },
    { way: 'down', room: height - 2 * margin, bar: BAR_MM * down },
  ]
}

const holds = ({ room, bar }: Room): boolean => room >= bar - NOISE_MM

function barsOnPage({ project }: Subject): Finding[] {
  const { paper, margin } = project.outputs
  const tight = roomOn(project, paper).filter((one) => !holds(one))
  const [worst] = tight
  if (worst === undefined) return []
  const larger = largerPaper(paper)
  const mends = larger !== paper && roomOn(project, larger).every(holds)
  const size = paperSize(paper)
  const most = Math.min(
    ...roomOn(project, paper).map(({ bar, way }) => ((way === 'across' ? size.width : size.height) - bar) / 2),
  )
  const less = `a margin of at most ${mm(Math.floor(most * 10) / 10)} mm, if the printer leaves no more blank`
  return [
    {
      rule: 'page-bars',
      severity: 'stop',
      panels: [],
      places: [],
      message: `${paper} less margins of ${mm(margin)} mm has room for ${mm(worst.room)} mm ${worst.way}; the check bar needs ${mm(worst.bar)} mm`,
      fix: mends ? `print on ${larger}, or take ${less}` : `take ${less}`,
      ...(mends && { change: [{ path: ['outputs', 'paper'], value: larger }] }),
      at: ['outputs'],
    },
  ]
}

const WAYS = {
  sheet: { across: 'along the short side of the sheet', down: 'along the long side of the sheet' },
  roll: { across: 'across the roll', down: 'along the roll' },
} as const

function readings({ project }: Subject): Finding[] {
  const { bars, paper } = project.outputs
  if (bars === undefined) return []
  const ways = WAYS[paperSize(paper).roll === true ? 'roll' : 'sheet']
  return (['across', 'down'] as const).flatMap((way, k): Finding[] => {
    const reading = bars[way]
    const off = 100 * Math.abs(reading / BAR_MM - 1)
    const [warn, stop] = [
      limitOf(project, 'printer-correction', 'warn'),
      limitOf(project, 'printer-correction', 'stop'),
    ]
    if (off <= warn + NOISE_MM) return []
    const limit = off > stop + NOISE_MM ? stop : warn
    const path = ['outputs', 'check bars', k]
    const { fix, change } = slipOf(project, reading, path, stop)
    return [
      {
        rule: 'printer-correction',
        severity: limit === stop ? 'stop' : 'warn',
        panels: [],
        places: [],
        message: `the check bar ${way} (${ways[way]}) reads ${formatMm(reading)} mm, ${percentOff(reading)} of ${BAR_MM} mm; a printer is not over ${limit} % off`,
        fix,
        ...(change !== undefined && { change }),
        at: path,
      },
    ]
  })
}

const percentOff = (reading: number): string => `${formatMm((100 * reading) / BAR_MM)} %`

/** What else the reading may be: in another unit, or of the 100 mm mark. */
function slipOf(
  project: Project,
  reading: number,
  path: Edit['path'],
  stop: number,
): { readonly fix: string; readonly change?: Edit[] } {
  const near = (length: number): boolean => 100 * Math.abs(length / BAR_MM - 1) <= stop
  const typed = project.units === 'in' ? reading / MM_PER_INCH : reading
  const units = [
    { unit: 'in', mm: typed * MM_PER_INCH },
    { unit: 'cm', mm: typed * 10 },
    { unit: 'mm', mm: typed },
  ]
  const meant = units.find((one) => near(one.mm))
  // Only where the number alone is in the project's unit: a reading that carries its own unit is what it says.
  if (meant !== undefined && Math.abs(meant.mm - reading) > NOISE_MM) {
    const value = `${formatMm(typed)} ${meant.unit}`
    return { fix: `it reads like ${value}: say so`, change: [{ path, value }] }
  }
  const scaled = (reading * BAR_MM) / 100
  if (near(scaled)) {
    const { text } = written(scaled, 'mm')
    return {
      fix: `it reads like the 100 mm mark: measure the whole bar of ${BAR_MM} mm, which comes to ${text}`,
      change: [{ path, value: text }],
    }
  }
  return {
    fix: 'print the page anew at actual size, without this key, and measure the whole bar; see that neither bar was taken for the other',
  }
}
