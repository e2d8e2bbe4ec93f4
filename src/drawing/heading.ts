import { MM_PER_INCH, type Units } from '../length/index.ts'
import type { Panel } from '../panel/index.ts'
import { type Face, isHandWork } from './face.ts'
import type { Drawn, Work } from './layers.ts'
import { joinedInto } from './line-breaks.ts'
import { TEXT_ASCENT, TEXT_DESCENT, textWidth } from './text-width.ts'
import type { Entity, Text } from './types.ts'
import { cutParts, placeWords } from './words.ts'

const NOTE: Work = { kind: 'note' }

/** Font sizes in text heights. */
const TITLE = 1.8
const SIZE_LINE = 1.2
const STAMP = 1.7
/** From one line of the warning to the next, in its own font sizes. */
const STAMP_LINE = 1.2

/** Lines are never broken to less than this, in text heights, however narrow the panel. */
const LEAST_WIDTH = 30
const BETWEEN = '  ·  '

/**
 * The lines over a panel, from the top: the warning if there is one, what it is, its size, the name of its files and
 * what there is to do; each broken so that it is no wider than what it stands over.
 */
export function drawHeading(
  panel: Panel,
  face: Face,
  options: { readonly units: Units; readonly stamp?: string },
  at: { readonly left: number; readonly bottom: number; readonly size: number; readonly width: number },
): Drawn[] {
  const { left, size } = at
  const width = Math.max(at.width, LEAST_WIDTH * size)
  // The name of the files tells panels apart whose names are in a script that a reader cannot show.
  const parts = (words: readonly string[], height: number) =>
    joinedInto(words, BETWEEN, (line) => textWidth(line, height) <= width).map((text) => ({
      text,
      height,
      bold: false,
    }))
  const title = titleLines(panel, face, TITLE * size, width).map((text) => ({ text, height: TITLE * size, bold: true }))
  const lines = [
    ...title,
    ...parts(sizeParts(panel, options.units), SIZE_LINE * size),
    ...parts([panel.id, ...countParts(panel, face)], size),
  ].reverse()
  const entities: Entity[] = []
  let y = at.bottom
  for (const line of lines) {
    y += TEXT_DESCENT * line.height
    entities.push(text(left, y, line.text, line.height, line.bold))
    y += TEXT_ASCENT * line.height + 0.25 * size
  }
  if (options.stamp !== undefined && options.stamp.trim() !== '') {
    entities.push(...stampBox(options.stamp, { left, bottom: y + 0.4 * size, size, width: at.width }))
  }
  return entities.map((entity) => ({ work: NOTE, entity }))
}

function text(x: number, y: number, words: string, height: number, bold: boolean): Text {
  return { kind: 'text', at: [x, y], height, anchor: 'start', text: words, ...(bold && { bold }) }
}

/** A warning in a heavy frame, broken into lines so that it is no wider than what it stands over. */
function stampBox(
  stamp: string,
  at: { readonly left: number; readonly bottom: number; readonly size: number; readonly width: number },
): Entity[] {
  const height = STAMP * at.size
  const pad = 0.6 * at.size
  const lines = wrapped(stamp, height, Math.max(at.width, LEAST_WIDTH * at.size) - 2 * pad)
  const step = STAMP_LINE * height
  const right = at.left + 2 * pad + Math.max(...lines.map((line) => textWidth(line, height, true)))
  const top = at.bottom + 2 * pad + lines.length * step
  const frame: Entity = {
    kind: 'path',
    pen: 'bold',
    vertices: [
      { at: [at.left, at.bottom], bulge: 0 },
      { at: [right, at.bottom], bulge: 0 },
      { at: [right, top], bulge: 0 },
      { at: [at.left, top], bulge: 0 },
    ],
  }
  const words = lines.map((line, k) =>
    text(at.left + pad, top - pad - k * step - TEXT_ASCENT * height, line, height, true),
  )
  return [frame, ...words]
}

/** What the panel is; the module's name may be broken, the panel's and its face are one piece, whatever their width. */
function titleLines(panel: Panel, face: Face, height: number, width: number): string[] {
  const fits = (line: string): boolean => textWidth(line, height, true) <= width
  const name = `${panel.moduleName}:`.split(/\s+/).flatMap((word) => brokenWord(word, fits))
  return joinedInto([...name, `${panel.name}, face ${face} (${panel.faces[face]})`], ' ', fits)
}

/** Breaks bold words at spaces into lines no wider than `width` mm; a longer word gets a line of its own. */
function wrapped(words: string, height: number, width: number): string[] {
  const pieces = words.split(/\s+/).filter((one) => one !== '')
  return joinedInto(pieces, ' ', (line) => textWidth(line, height, true) <= width)
}

/** A word in pieces that fit on a line. */
function brokenWord(word: string, fits: (line: string) => boolean): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const letter of word) {
    if (piece !== '' && !fits(piece + letter)) {
      pieces.push(piece)
      piece = letter
    } else piece += letter
  }
  return [...pieces, piece]
}

/** The size, the sheet and its grain. */
function sizeParts(panel: Panel, units: Units): string[] {
  const sizes = [panel.length, panel.width, panel.thickness].map((mm) => placeWords(mm, units)).join(' × ')
  const grain = panel.stock.grain === 'none' ? 'no grain' : 'grain along the length'
  return [`${sizes}${units === 'mm' ? ' mm' : ''}`, ...cutParts(panel, units), panel.stock.name, grain]
}

/** So that nobody puts a panel aside with one face done. */
function countParts(panel: Panel, face: Face): string[] {
  const edges = panel.bores.filter((bore) => bore.surface !== 'A' && bore.surface !== 'B').length
  const words = [faceWords(panel, face) ?? 'nothing to make in this face']
  if (edges > 0)
    words.push(face === 'A' ? `${edges} in edges, by hand` : `${edges} in edges: see the drawing of face A`)
  const other: Face = face === 'A' ? 'B' : 'A'
  const elsewhere = faceWords(panel, other)
  if (elsewhere !== undefined) words.push(`face ${other} has a drawing of its own: ${elsewhere}`)
  return words
}

/** `36 holes, 1 groove`; nothing where a face has no work. */
function faceWords(panel: Panel, face: Face): string | undefined {
  const bores = panel.bores.filter((bore) => bore.surface === face)
  const slanted = bores.filter(isHandWork).length
  const cuts = (kind: 'groove' | 'rebate'): number =>
    panel.grooves.filter((groove) => groove.face === face && groove.kind === kind).length
  const own = panel.cutouts.filter((one) => one.face === face)
  const notches = own.filter((one) => one.notch === true).length
  const through = own.filter((one) => one.through).length
  const parts = [
    counted(bores.length - slanted, 'hole'),
    counted(slanted, 'slanted hole'),
    counted(cuts('groove'), 'groove'),
    counted(cuts('rebate'), 'rebate'),
    counted(through - notches, 'opening'),
    counted(own.length - through, 'recess', 'recesses'),
    counted(notches, 'notch', 'notches'),
  ].filter((part) => part !== '')
  return parts.length > 0 ? parts.join(', ') : undefined
}

function counted(count: number, noun: string, several = `${noun}s`): string {
  return count === 0 ? '' : count === 1 ? `1 ${noun}` : `${count} ${several}`
}

/** A bar of known length, to measure before a print is trusted. */
export function drawCheckBar(
  units: Units,
  at: { readonly left: number; readonly top: number; readonly size: number },
): Drawn[] {
  const long = units === 'in' ? 4 * MM_PER_INCH : 100
  const { left, size } = at
  const y = at.top - 0.5 * size
  const ends = [left, left + long].map(
    (x): Entity => ({ kind: 'line', pen: 'thin', from: [x, y - 0.5 * size], to: [x, y + 0.5 * size] }),
  )
  const bar: Entity = { kind: 'line', pen: 'thin', from: [left, y], to: [left + long, y] }
  const words = units === 'in' ? 'check bar: 4 in' : 'check bar: 100 mm  ·  all lengths in mm'
  const label = text(left + long + size, y - 0.36 * size, words, size, false)
  return [bar, ...ends, label].map((entity) => ({ work: NOTE, entity }))
}
