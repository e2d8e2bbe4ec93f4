import type { Size, TemplatePage } from '../templates/index.ts'
import type { Notes } from './page-notes.ts'
import { rulersOn } from './page-rulers.ts'
import type { Sheet } from './page-sheet.ts'
import { rectangle } from './page-strokes.ts'
import { fitted, textAt } from './page-text.ts'
import { size } from './page-words.ts'
import { textWidth } from './text-width.ts'
import type { Entity, Point } from './types.ts'

/** Left free at each side of a sheet, mm: more than any office printer needs. */
export const MARGIN = 10

/** Free for the furniture inside the margins: the upright ruler on the left, title, map and ruler along the bottom. */
export function reserveFor(stamp: string | undefined): { left: number; bottom: number } {
  return { left: 11, bottom: stamp === undefined ? 39 : 46 }
}

/** Words that every sheet carries; those on dust and noise only where something is bored or cut. */
const CAUTION = 'Print at actual size (100 %). Measure both bars before drilling.'
const DUST = 'Extract at the tool and wear a fitted mask when cutting or boring sheet goods, MDF above all.'
const NOISE = 'Wear ear and eye protection whenever a saw, drill or router runs.'

const MAP = { width: 30, height: 21 }
/** Heights of baselines above the bottom margin, mm; the ruler takes the first 10. */
const LINES = { noise: 12.6, dust: 15.8, caution: 20, stock: 24.6, size: 28.2, title: 31.6, stamp: 38 } as const

/** Everything on the sheet that is not the panel: rulers, name, sizes, cautions, page label and map. */
export function furnitureOf(
  sheet: Sheet,
  pages: readonly TemplatePage[],
  stamp: string | undefined,
  notes: Notes,
): Entity[] {
  const { paper } = sheet.page
  const x = MARGIN + reserveFor(stamp).left
  const labelWidth = textWidth(sheet.page.label, 11, true)
  const mapLeft = paper.width - MARGIN - MAP.width
  const width = mapLeft - labelWidth - 6 - x
  const boring = sheet.view.bores.length + sheet.view.edgeBores.length + sheet.view.grooves.length > 0
  const line = (text: string, above: number, most: number, bold = false): Entity => {
    const [words, height] = fitted(text, width, most, 1.9, bold)
    return textAt([x, MARGIN + above], height, words, { bold })
  }
  return [
    ...rulersOn(paper, reserveFor(stamp)),
    line(titleOf(sheet), LINES.title - 0.4, 5, true),
    line(sizeOf(sheet), LINES.size - 1, 2.8),
    line(faceOf(sheet) + missing(notes), LINES.stock - 1, 2.8),
    line(CAUTION, LINES.caution - 0.6, 3, true),
    ...(boring ? [line(DUST, LINES.dust, 2.3), line(NOISE, LINES.noise, 2.3)] : []),
    textAt([mapLeft - 3, MARGIN + 17.5], 11, sheet.page.label, { anchor: 'end', bold: true }),
    textAt([mapLeft - 3, MARGIN + 12.6], 2.3, paperWords(sheet, pages), { anchor: 'end' }),
    ...mapOf(sheet, pages, [mapLeft, MARGIN + 12]),
    ...stampOn(paper, x, stamp),
    divider(paper, stamp),
  ]
}

/** What the tags of a crowded sheet mean; a sheet that has no room even for those says where to read on. */
function missing({ tagged, left }: Notes): string {
  const meanings = tagged.map((tag) => `; ${tag}`).join('')
  return left === 0 ? meanings : `${meanings}; no room for ${left} of these: see the drawing of the panel`
}

const titleOf = ({ view: { panel } }: Sheet): string => `${panel.moduleName}: ${panel.name}`

function sizeOf({ view: { panel }, units }: Sheet): string {
  const [length, width, thickness] = [panel.length, panel.width, panel.thickness].map((mm) => size(mm, units))
  return `${length} × ${width}, ${thickness} thick${units === 'mm' ? ' (mm)' : ''}, ${panel.stock.name}`
}

function faceOf({ view: { panel, face } }: Sheet): string {
  return `face ${face}: ${panel.faces[face]}, seen from face ${face}`
}

function paperWords({ page }: Sheet, pages: readonly TemplatePage[]): string {
  return `sheet ${pages.findIndex((other) => other.label === page.label) + 1} of ${pages.length}`
}

/** Between the panel above and the furniture below. */
function divider(paper: Size, stamp: string | undefined): Entity {
  const y = MARGIN + reserveFor(stamp).bottom - 1.5
  return { kind: 'line', from: [MARGIN + reserveFor(stamp).left, y], to: [paper.width - MARGIN, y], pen: 'hair' }
}

function stampOn(paper: Size, x: number, stamp: string | undefined): Entity[] {
  if (stamp === undefined) return []
  const width = paper.width - MARGIN - x
  const [words, height] = fitted(stamp, width - 4, 3.6, 2, true)
  const y = MARGIN + LINES.stamp
  return [
    textAt([x + 2, y], height, words, { bold: true }),
    rectangle({ min: [x, y - 1.6], max: [x + width, y + 3.8] }, 'bold'),
  ]
}

/** The pages over the panel, small; this one filled, those with nothing on them left out. */
function mapOf(sheet: Sheet, pages: readonly TemplatePage[], corner: Point): Entity[] {
  const { width, height } = sheet.view
  const scale = Math.min(MAP.width / width, MAP.height / height)
  const left = corner[0] + (MAP.width - width * scale) / 2
  const place = ([x, y]: Point): Point => [
    left + Math.min(Math.max(x, 0), width) * scale,
    corner[1] + Math.min(Math.max(y, 0), height) * scale,
  ]
  const outline = rectangle({ min: place([0, 0]), max: place([width, height]) }, 'thin')
  const cells = pages.flatMap((page): Entity[] => {
    const { min, max } = cellOf(page, pages)
    const area = { min: place(min), max: place(max) }
    const here = page.label === sheet.page.label
    const text = Math.min(2.6, (area.max[1] - area.min[1]) * 0.7, (area.max[0] - area.min[0]) / 2)
    const middle: Point = [(area.min[0] + area.max[0]) / 2, (area.min[1] + area.max[1]) / 2 - 0.36 * text]
    return here
      ? [rectangle(area, 'hair', true)]
      : [rectangle(area, 'hair'), ...(text >= 1.8 ? [textAt(middle, text, page.label, { anchor: 'middle' })] : [])]
  })
  return [outline, ...cells]
}

/** A page's window as it shows in the taped template: as far as the columns and rows that lie on top leave it. */
function cellOf(page: TemplatePage, pages: readonly TemplatePage[]): { min: Point; max: Point } {
  const right = pages.find((other) => other.column === page.column + 1)
  const below = pages.find((other) => other.row === page.row + 1)
  return {
    min: [page.window.min[0], below?.window.max[1] ?? page.window.min[1]],
    max: [right?.window.min[0] ?? page.window.max[0], page.window.max[1]],
  }
}
