import { same } from '../../geometry/index.ts'
import { formatMm, type Units } from '../../length/index.ts'
import type { Bore, FromEdge } from '../../panel/index.ts'
import type { HardwareHand, HardwarePlace, PieceSketch, Size, WordWays } from '../../templates/index.ts'
import { LINE_HEIGHT } from '../areas.ts'
import { textWidth } from '../text-width.ts'
import { bitWords, exactPitch, placeWords, toolWords } from '../words.ts'

/** One line of the words of a piece, set at a size in mm. */
export interface SetLine {
  readonly text: string
  readonly size: number
  readonly bold: boolean
}

/** Widths that the words of a piece are set in, mm. */
const WIDTHS = [46, 58, 74, 96, 130]
const TITLE = 3.8
const BODY = 2.6
/** Room for the piece's name on its sheet. */
const WIDEST_LABEL = 'HA00'

/** The ways to set the words of a piece, the rectangle of each. */
export function wordWays(units: Units): WordWays {
  return (piece, scarce) => {
    if (scarce) return [blockOf(titleOf(piece, 0))]
    const body = bodyOf(piece, units)
    return WIDTHS.map((_, way) => blockOf([...titleOf(piece, way), ...wrappedAll(body, way)]))
  }
}

/** The words of a piece, in one of the ways to set them. `label` is its name on the sheet: `H3`. */
export function setWords(piece: PieceSketch, units: Units, way: number, label: string): SetLine[] {
  return [...titleOf(piece, way, label), ...wrappedAll(bodyOf(piece, units), way)]
}

function wrappedAll(lines: readonly Omit<SetLine, 'size'>[], way: number): SetLine[] {
  return lines.flatMap(({ text, bold }) =>
    wrapped(text, widthOf(way), BODY, bold).map((part) => ({ text: part, size: BODY, bold })),
  )
}

const widthOf = (way: number): number => WIDTHS[way] ?? WIDTHS[0] ?? 0

/** `HA3 hinge cup`: all that there is on a piece with little room. */
export function titleOf({ pattern }: PieceSketch, way: number, label = WIDEST_LABEL): SetLine[] {
  return wrapped(`${label} ${pattern.name}`, widthOf(way), TITLE, true).map((text) => ({
    text,
    size: TITLE,
    bold: true,
  }))
}

/** All that is said below the title, a line for each thing. */
export function bodyOf(piece: PieceSketch, units: Units): Omit<SetLine, 'size'>[] {
  const { pattern, panel, face } = piece
  return [
    ...(pattern.item === undefined ? [] : [{ text: `for: ${pattern.item}`, bold: false }]),
    { text: `${panel.moduleName}: ${panel.name}, face ${face}`, bold: false },
    ...toolLines(piece, units).map((text) => ({ text, bold: true })),
    ...placeLines(piece, units).map((text) => ({ text, bold: false })),
    ...howLines(piece).map((text) => ({ text, bold: false })),
    ...piece.hands.map((hand) => ({ text: handWords(hand), bold: false })),
  ]
}

/** The rectangle that lines take, one below the other; mm. */
export function blockOf(lines: readonly SetLine[]): Size {
  return {
    width: Math.max(...lines.map(({ text, size, bold }) => textWidth(text, size, bold))),
    height: lines.reduce((sum, { size }) => sum + size * LINE_HEIGHT, 0),
  }
}

/** As many words to a line as fit in the width; one that is wider has a line of its own. */
function wrapped(text: string, width: number, size: number, bold: boolean): string[] {
  const space = textWidth(' ', size, bold)
  const lines: string[] = []
  let room = 0
  for (const word of text.split(' ')) {
    const long = textWidth(word, size, bold)
    const last = lines.length - 1
    if (lines.length > 0 && space + long <= room) {
      lines[last] = `${lines[last] ?? ''} ${word}`
      room -= space + long
    } else {
      lines.push(word)
      room = width - long
    }
  }
  return lines
}

/** `35 deep 12.5, collar at 12.5`; several holes alike together: `2 × 8 deep 11, collar at 11, hinge dowel`. */
function toolLines({ pattern, places }: PieceSketch, units: Units): string[] {
  const kinds = new Map<string, Bore[]>()
  for (const { tool, bore } of pattern.holes) kinds.set(tool, [...(kinds.get(tool) ?? []), bore])
  const holes = [...kinds.values()].map((bores): string => {
    const [bore] = bores
    if (bore === undefined) return ''
    const count = bores.length === 1 ? '' : `${bores.length} × `
    const purpose = purposeOf(bore, pattern.item)
    return `${count}${drillWords(bore, units)}${purpose === pattern.name ? '' : `, ${purpose}`}`
  })
  const cuts = pattern.cuts.map(({ depth, width }) =>
    [
      ...(width === undefined ? [] : [`${bitWords(width, units)} wide`]),
      depth === undefined ? 'through' : `${bitWords(depth, units)} deep`,
    ].join(', '),
  )
  const back = pattern.holes.some(({ bore }) => bore.through) ? ['back it up: the holes go through'] : []
  return [...holes, ...new Set(cuts), ...back, ...(places.length > 1 ? [`${places.length} times:`] : [])]
}

/** A blind hole's depth is what the stop collar is set to. */
function drillWords(bore: Bore, units: Units): string {
  const tool = toolWords(bore, units)
  return bore.through || bore.leanDeg !== undefined ? tool : `${tool}, collar at ${bitWords(bore.depth, units)}`
}

function purposeOf({ uses, purpose }: Bore, item: string | undefined): string {
  return uses.find((use) => use.item === item)?.purpose ?? purpose
}

/** Where the piece is laid on: `left edge folded: 80, 620 from top`. Places alike in words stand in one line. */
function placeLines(piece: PieceSketch, units: Units): string[] {
  const groups = new Map<string, HardwarePlace[]>()
  for (const place of piece.places) {
    const [way, ...rest] = [wayWords(piece, place), ...place.measured.slice(1).map((from) => fromWords(from, units))]
    const head = way === '' ? '' : `${way}: `
    const key = rest.length === 0 ? (way ?? '') : `${head}${rest.join(', ')} and`
    groups.set(key, [...(groups.get(key) ?? []), place])
  }
  return [...groups].map(([key, places]) => {
    const first = places.flatMap(({ measured }) => measured.slice(0, 1))
    if (first.length === 0) return key
    return `${key}${key.endsWith(' and') ? '' : ':'} ${listWords(first, units)}`
  })
}

/**
 * How the piece lies at a place, whatever is measured there. A piece with more folds than lie on edges there could be laid in the
 * corner a quarter turned as well: its arrow tells.
 */
function wayWords({ folds, anyTurn }: PieceSketch, place: HardwarePlace): string {
  if (anyTurn) return ''
  if (place.folds.length === 0) return `arrow to the ${place.toward}`
  const edges = place.folds.map(({ side, name }) => {
    const shoulder = folds.some((fold) => fold.side === side && fold.shoulder)
    return shoulder ? `the ${name} shoulder` : name
  })
  const arrow = folds.length > edges.length ? `, arrow to the ${place.toward}` : ''
  return edges.length > 1
    ? `corner ${edges.join(' and ')}${arrow}: fold over both`
    : `fold over ${edges[0] ?? ''}${arrow}`
}

const fromWords = ({ mm, edge }: FromEdge, units: Units): string => `${placeWords(mm, units)} from ${edge}`

/** More places than this, evenly spaced, are said by the first and the last of them. */
const LISTED = 4

/** `80, 620 from top`; of many evenly spaced ones `96 to 640 from bottom, every 32`. */
function listWords(from: readonly FromEdge[], units: Units): string {
  const edges = [...new Set(from.map(({ edge }) => edge))]
  return edges
    .map((edge) => {
      const places = from
        .filter((one) => one.edge === edge)
        .map(({ mm }) => mm)
        .sort((a, b) => a - b)
      const [first = 0, second = 0] = places
      const last = places.at(-1) ?? first
      const step = second - first
      const even = places.every((mm, k) => same(mm, first + k * step))
      const pitch = exactPitch(step, units)
      if (places.length > LISTED && even && pitch !== undefined)
        return `${placeWords(first, units)} to ${placeWords(last, units)} from ${edge}, every ${pitch}`
      return `${places.map((mm) => placeWords(mm, units)).join(', ')} from ${edge}`
    })
    .join('; ')
}

/** What a person does with the lines. */
function howLines({ lines, folds, pattern }: PieceSketch): string[] {
  const long = pattern.cuts.some(({ whole }) => !whole)
  const lay =
    lines.length === 0
      ? []
      : lines.length === 1
        ? ['Lay the centre line on your mark.']
        : ['Lay both long lines on your pencil lines.']
  const rebate = folds.some(({ shoulder }) => shoulder) ? ['Once the rebate is cut.'] : []
  return [...lay, ...rebate, ...(long ? ['Join its ends by a rule.'] : [])]
}

/** `door right too: turn it half round, arrow to the right`. */
function handWords({ name, turns, toward }: HardwareHand): string {
  const how = turns === 0 ? 'the same way up' : turns === 2 ? 'turn it half round' : 'turn it a quarter'
  return `${name} too: ${how}, arrow to the ${toward}.`
}

/** A figure for a depth in a leader's few words. */
export const shortTool = (bore: Bore, units: Units): string =>
  bore.leanDeg === undefined ? toolWords(bore, units) : `pocket ${formatMm(bore.leanDeg)}°`
