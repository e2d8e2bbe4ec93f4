import type { Piece, Size } from '../../templates/index.ts'
import type { Area } from '../areas.ts'
import { textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import { cutParts, placeWords } from '../words.ts'
import { mapOf, mapSize } from './map.ts'
import type { Notes } from './notes.ts'
import { BAR_LENGTH, rulersOn } from './rulers.ts'
import { type PageSetup, stretchWords } from './setup.ts'
import type { Sheet } from './sheet.ts'
import { rectangle } from './strokes.ts'
import { fitted, textAt } from './text.ts'
import type { FaceView } from './view.ts'

/** What the strip along the bottom takes, mm; more on a sheet too narrow for the bar, the label and the map side by side. */
const STRIP = { left: 9, bottom: 25.5, narrow: 36.5, stamp: 7 } as const
/** Between the margins a sheet has room for the bar, the label and the map from this width on, mm. */
const SIDE_BY_SIDE = STRIP.left + BAR_LENGTH + 62

/** Free for the furniture inside the margins, mm: the upright bar on the left, all the rest along the bottom. */
export function reserveFor(setup: PageSetup): { readonly left: number; readonly bottom: number } {
  const stamp = setup.stamp === undefined ? 0 : STRIP.stamp
  return { left: STRIP.left, bottom: (isNarrow(setup) ? STRIP.narrow : STRIP.bottom) + stamp }
}

const isNarrow = ({ paper, margin }: PageSetup): boolean => paper.width - 2 * margin < SIDE_BY_SIDE

/** What of a sheet of paper the furniture leaves free. */
export function roomOn(paper: Size, setup: PageSetup): Area {
  const { left, bottom } = reserveFor(setup)
  const { margin } = setup
  return { min: [margin + left, margin + bottom], max: [paper.width - margin, paper.height - margin] }
}

/** Heights of baselines above the bottom margin, mm; the check bar lies below them. */
interface Rows {
  readonly hints: number
  readonly size: number
  readonly face: number
  readonly name: number
  /** What does not fit beside the face has a row of its own. */
  readonly more?: number
  readonly label: number
  readonly labelSize: number
  readonly count: number
  readonly map: number
}

const ROWS: Rows = { hints: 8.55, size: 11.45, face: 14.8, name: 19.5, label: 9, labelSize: 16, count: 1.6, map: 1 }
const NARROW: Rows = {
  hints: 8.55,
  size: 13,
  more: 16.4,
  face: 20,
  name: 25,
  label: 20,
  labelSize: 16,
  count: 13,
  map: 12,
}
/** Where a wide map leaves no room beside the bar, label and count stand above the bar's end. */
const CROWDED: Rows = { ...ROWS, label: 14.2, labelSize: 11, count: 8.6 }
/** Room for the label: less than this beside the bar is too little, and what it gets above the bar, mm. */
const LABEL_LEAST = 22
const LABEL_COLUMN = 24
const SIZES = { name: 5.6, module: 3.4, face: 3.6, plain: 2.6, hints: 2.4, count: 3, least: 1.9 } as const

/** Everything on the sheet that is not the panel: check bars, names, sizes, cautions, page label and map. */
export function furnitureOf(
  sheet: Sheet,
  pages: readonly Piece[],
  setup: PageSetup,
  notes: readonly Notes[],
): Entity[] {
  const { paper } = sheet.page
  const { margin } = setup
  const reserve = reserveFor(setup)
  const x = margin + reserve.left
  const mapLeft = paper.width - margin - mapSize(sheet, pages)[0]
  const beside = mapLeft - 3 - x - BAR_LENGTH
  const rows = isNarrow(setup) ? NARROW : beside < LABEL_LEAST ? CROWDED : ROWS
  const [label, labelSize] = fitted(
    sheet.page.label,
    rows === ROWS ? beside : LABEL_COLUMN,
    rows.labelSize,
    SIZES.least,
    true,
  )
  const count = sheetCount(sheet, pages)
  const labelWidth = Math.max(textWidth(label, labelSize, true), textWidth(count, SIZES.count))
  const width = mapLeft - 3 - labelWidth - 3 - x
  return [
    ...rulersOn(paper, margin, reserve, barWords(setup, paper)),
    ...titleOn(sheet, [x, margin + rows.name], width),
    ...faceOn(sheet, notes, [x, margin], rows, width),
    row([x, margin + rows.size], sizeOf(sheet), width, SIZES.plain),
    ...hintsOn(sheet.view, [x, margin + rows.hints], isNarrow(setup) ? paper.width - margin - x : width),
    textAt([mapLeft - 3, margin + rows.label], labelSize, label, { anchor: 'end', bold: true }),
    textAt([mapLeft - 3, margin + rows.count], SIZES.count, count, { anchor: 'end' }),
    ...mapOf(sheet, pages, [mapLeft, margin + rows.map]),
    ...stampOn(paper, x, setup),
    divider(paper, setup),
  ]
}

function row(at: Point, text: string, width: number, most: number, bold = false): Entity {
  const [words, height] = fitted(text, width, most, SIZES.least, bold)
  return textAt(at, height, words, { bold })
}

function sheetCount({ page }: Sheet, pages: readonly Piece[]): string {
  const count = new Set(pages.map(({ sheet }) => sheet)).size
  return `sheet ${page.sheet + 1} of ${count}`
}

/** The caution stands on the bar that it speaks of. */
function barWords(setup: PageSetup, paper: Size): Parameters<typeof rulersOn>[3] {
  const corrected = stretchWords(setup, paper)
  return {
    level: {
      todo: 'Print at actual size (100 %). Measure both bars before drilling.',
      ...(corrected && { corrected: corrected[0] }),
    },
    upright: { todo: 'Measure this check bar, too.', ...(corrected && { corrected: corrected[1] }) },
  }
}

/** The panel's name large, since it tells the pages apart; the module's behind it, cut where there is no room. */
function titleOn({ view: { panel } }: Sheet, at: Point, width: number): Entity[] {
  const module = textWidth(panel.moduleName, SIZES.module)
  const [name, size] = fitted(panel.name, Math.max(width - module - 3, 0.7 * width), SIZES.name, SIZES.least, true)
  const long = textWidth(name, size, true) + 3
  return [
    textAt(at, size, name, { bold: true }),
    row([at[0] + long, at[1]], panel.moduleName, width - long, SIZES.module),
  ]
}

/**
 * `lay on face A: inside`, and behind it what files the panel has: these tell panels apart whose names a reader cannot show.
 * Of face B in a frame: sheets of both faces have the same labels, A1, A2, and must not be mixed up.
 */
function faceOn(
  { view: { panel, face } }: Sheet,
  notes: readonly Notes[],
  [x, y]: Point,
  rows: Rows,
  width: number,
): Entity[] {
  const pad = face === 'B' ? 1.2 : 0
  const [words, size] = fitted(
    `lay on face ${face}: ${panel.faces[face]}`,
    width - 2 * pad,
    SIZES.face,
    SIZES.least,
    true,
  )
  const long = textWidth(words, size, true) + 2 * pad + 3
  const [left, up, room] = rows.more === undefined ? [x + long, rows.face, width - long] : [x, rows.more, width]
  const [more, height] = moreOf(panel.id, notes, room)
  // Clear of the tails of the name above and of the figures below.
  const frame = { min: [x, y + rows.face - 0.9], max: [x + long - 3, y + rows.face + 2.95] } as const
  return [
    ...(pad > 0 ? [rectangle(frame, 'thin')] : []),
    textAt([x + pad, y + rows.face], size, words, { bold: true }),
    textAt([left, y + up], height, more),
  ]
}

/** What the tags of a crowded sheet mean, of as many as there is room for, and where to read on; else the panel's id. */
function moreOf(id: string, notes: readonly Notes[], room: number): [string, number] {
  const tagged = notes.flatMap((some) => some.tagged)
  const left = notes.reduce((sum, some) => sum + some.left, 0) + tagged.length
  if (left === 0) return fitted(id, room, SIZES.plain, SIZES.least)
  const fits = (tags: readonly string[]): boolean => textWidth(tagsOf(tags, left - tags.length), SIZES.least) <= room
  const said: string[] = []
  for (const tag of tagged) if (fits([...said, tag])) said.push(tag)
  return fitted(tagsOf(said, left - said.length), room, SIZES.plain, SIZES.least)
}

function tagsOf(tags: readonly string[], unsaid: number): string {
  const rest = unsaid === 0 ? [] : [`no room for ${unsaid} of these: see the drawing of the panel`]
  return [...tags, ...rest].join('; ')
}

function sizeOf({ view: { panel }, units }: Sheet): string {
  const [length, width, thickness] = [panel.length, panel.width, panel.thickness].map((mm) => placeWords(mm, units))
  const cut = cutParts(panel, units)
    .map((part) => `, ${part}`)
    .join('')
  return `${length} × ${width}, ${thickness} thick${units === 'mm' ? ' (mm)' : ''}, ${panel.stock.name}${cut}`
}

const HINTS = {
  blind: 'Collar: the bit’s point not counted.',
  through: 'Through holes: back up the far face.',
  all: 'Extract dust; wear mask, eye and ear protection.',
}
const HINTS_IN_SHORT: typeof HINTS = {
  blind: 'Collar: without the point.',
  through: 'Back up through holes.',
  all: 'Extract dust; mask, eye and ear protection.',
}

/** How holes are made, and what the work takes care of; nothing on pages of a panel without work. */
function hintsOn({ bores, edgeBores, grooves, cutouts }: FaceView, at: Point, width: number): Entity[] {
  const bored = [...bores, ...edgeBores].map(({ bore }) => bore)
  const hintsIn = ({ blind, through, all }: typeof HINTS): string =>
    [
      ...(bored.some((bore) => !bore.through) ? [blind] : []),
      ...(bored.some((bore) => bore.through) ? [through] : []),
      ...(bored.length + grooves.length + cutouts.length > 0 ? [all] : []),
    ].join(' ')
  const long = hintsIn(HINTS)
  // Cautions are never cut: where they have little room they are said in fewer words.
  const words = textWidth(long, SIZES.least) <= width ? long : hintsIn(HINTS_IN_SHORT)
  return long === '' ? [] : [row(at, words, width, SIZES.hints)]
}

/** Between the panel above and the furniture below. */
function divider(paper: Size, setup: PageSetup): Entity {
  const { left, bottom } = reserveFor(setup)
  const y = setup.margin + bottom - 0.5
  return { kind: 'line', from: [setup.margin + left, y], to: [paper.width - setup.margin, y], pen: 'hair' }
}

function stampOn(paper: Size, x: number, setup: PageSetup): Entity[] {
  const { margin, stamp } = setup
  if (stamp === undefined) return []
  const width = paper.width - margin - x
  const [words, height] = fitted(stamp, width - 4, 3.6, 2, true)
  const y = margin + reserveFor(setup).bottom - 6.2
  return [
    textAt([x + 2, y + 1.4], height, words, { bold: true }),
    rectangle({ min: [x, y], max: [x + width, y + 5.2] }, 'bold'),
  ]
}
