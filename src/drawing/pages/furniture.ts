import type { Piece, Size } from '../../templates/index.ts'
import { textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import { cutParts, placeWords } from '../words.ts'
import { mapOf, mapSize } from './map.ts'
import type { Notes } from './notes.ts'
import { rulersOn } from './rulers.ts'
import { correctionWords, type PageSetup, stretchWords } from './setup.ts'
import type { Sheet } from './sheet.ts'
import { rectangle } from './strokes.ts'
import { fitted, textAt } from './text.ts'

/** Free for the furniture inside the margins: the upright ruler on the left, title, map and ruler along the bottom. */
export function reserveFor(stamp: string | undefined): { left: number; bottom: number } {
  return { left: 11, bottom: stamp === undefined ? 39 : 46 }
}

/** Words that every sheet carries; those on dust and noise only where something is bored or cut. */
const CAUTION = 'Print at actual size (100 %). Measure both bars before drilling.'
const DUST = 'Extract at the tool and wear a fitted mask when cutting or boring sheet goods, MDF above all.'
const NOISE = 'Wear ear and eye protection whenever a saw, drill or router runs.'

/** Heights of baselines above the bottom margin, mm; the ruler takes the first 10. */
const LINES = { noise: 12.6, dust: 15.8, caution: 20, stock: 24.6, size: 28.2, title: 31.6, stamp: 38 } as const

/** Everything on the sheet that is not the panel: rulers, name, sizes, cautions, page label and map. */
export function furnitureOf(
  sheet: Sheet,
  pages: readonly Piece[],
  setup: PageSetup,
  notes: readonly Notes[],
): Entity[] {
  const { paper } = sheet.page
  const { margin, stamp } = setup
  const x = margin + reserveFor(stamp).left
  const labelWidth = textWidth(sheet.page.label, 11, true)
  const mapLeft = paper.width - margin - mapSize(sheet, pages)[0]
  const width = mapLeft - labelWidth - 6 - x
  const { bores, edgeBores, grooves, cutouts } = sheet.view
  const boring = bores.length + edgeBores.length + grooves.length + cutouts.length > 0
  const line = (text: string, above: number, most: number, bold = false): Entity => {
    const [words, height] = fitted(text, width, most, 1.9, bold)
    return textAt([x, margin + above], height, words, { bold })
  }
  return [
    ...rulersOn(paper, margin, reserveFor(stamp), stretchWords(setup, paper)),
    titleOn(sheet, [x, margin + LINES.title - 0.4], width),
    line(sizeOf(sheet), LINES.size - 1, 2.8),
    line(faceOf(sheet) + missing(notes), LINES.stock - 1, 2.8),
    line(caution(setup, width), LINES.caution - 0.6, 3, true),
    ...(boring ? [line(DUST, LINES.dust, 2.3), line(NOISE, LINES.noise, 2.3)] : []),
    textAt([mapLeft - 3, margin + 17.5], 11, sheet.page.label, { anchor: 'end', bold: true }),
    textAt([mapLeft - 3, margin + 12.6], 2.3, paperWords(sheet, pages), { anchor: 'end' }),
    ...mapOf(sheet, pages, [mapLeft, margin + 12]),
    ...stampOn(paper, x, setup),
    divider(paper, setup),
  ]
}

/** With the correction, where a narrow sheet has room for the words; the rulers say it in any case. */
function caution(setup: PageSetup, width: number): string {
  const whole = CAUTION + correctionWords(setup)
  return fitted(whole, width, 3, 1.9, true)[0].endsWith('…') ? CAUTION : whole
}

/** What the tags of a crowded sheet mean; a sheet that has no room even for those says where to read on. */
function missing(notes: readonly Notes[]): string {
  const tagged = notes.flatMap((some) => some.tagged)
  const left = notes.reduce((sum, some) => sum + some.left, 0)
  const meanings = tagged.map((tag) => `; ${tag}`).join('')
  return left === 0 ? meanings : `${meanings}; no room for ${left} of these: see the drawing of the panel`
}

/** Where module and panel do not fit, the module's name is cut: the panel's is what tells the sheets apart. */
function titleOn({ view: { panel } }: Sheet, at: Point, width: number): Entity {
  const [most, least] = [5, 1.9]
  const ending = `: ${panel.name}`
  const [words, height] = fitted(panel.moduleName + ending, width, most, least, true)
  if (!words.endsWith('…')) return textAt(at, height, words, { bold: true })
  const [name] = fitted(panel.moduleName, width - textWidth(ending, least, true), least, least, true)
  return textAt(at, least, name + ending, { bold: true })
}

function sizeOf({ view: { panel }, units }: Sheet): string {
  const [length, width, thickness] = [panel.length, panel.width, panel.thickness].map((mm) => placeWords(mm, units))
  const cut = cutParts(panel, units)
    .map((part) => `, ${part}`)
    .join('')
  return `${length} × ${width}, ${thickness} thick${units === 'mm' ? ' (mm)' : ''}, ${panel.stock.name}${cut}`
}

/** The name of the panel's files tells panels apart whose names are in a script that a reader cannot show. */
function faceOf({ view: { panel, face } }: Sheet): string {
  return `${panel.id}, face ${face}: ${panel.faces[face]}, seen from face ${face}`
}

function paperWords({ page }: Sheet, pages: readonly Piece[]): string {
  return `sheet ${pages.findIndex((other) => other.label === page.label) + 1} of ${pages.length}`
}

/** Between the panel above and the furniture below. */
function divider(paper: Size, { margin, stamp }: PageSetup): Entity {
  const y = margin + reserveFor(stamp).bottom - 1.5
  return { kind: 'line', from: [margin + reserveFor(stamp).left, y], to: [paper.width - margin, y], pen: 'hair' }
}

function stampOn(paper: Size, x: number, { margin, stamp }: PageSetup): Entity[] {
  if (stamp === undefined) return []
  const width = paper.width - margin - x
  const [words, height] = fitted(stamp, width - 4, 3.6, 2, true)
  const y = margin + LINES.stamp
  return [
    textAt([x + 2, y], height, words, { bold: true }),
    rectangle({ min: [x, y - 1.6], max: [x + width, y + 3.8] }, 'bold'),
  ]
}
