import type { HardwarePiece, PatternHole, PieceEdge, PieceFold } from '../../templates/index.ts'
import { type Area, grown, holds, LINE_HEIGHT } from '../areas.ts'
import type { Obstacle } from '../labels.ts'
import { TEXT_ASCENT, textWidth } from '../text-width.ts'
import type { Entity, Point } from '../types.ts'
import { across, type Sheeted } from './hardware-sheet.ts'
import { bodyOf, setWords, shortTool, titleOf } from './hardware-words.ts'
import { CROSS_ARM } from './holes.ts'
import type { Notes } from './notes.ts'
import type { Sheet } from './sheet.ts'
import { arrowHead } from './strokes.ts'
import { isClear, placeWords, textAt, type Words } from './text.ts'
import { OUTWARD } from './view.ts'

/** An arrow's length, and the size of small words, mm. */
const ARROW = 5
const SMALL = 2.2

/** Names, places and what the lines are; no word on a hole, a line or another word. */
export function hardwareNotes(drawn: Sheeted): Notes {
  const { piece, sheet, sketch, paper, label, on } = drawn
  const block: Area = { min: on(piece.words.min), max: on(piece.words.max) }
  const taken: Obstacle[] = [...sketch.obstacles, { kind: 'area', area: block }]
  const entities: Entity[] = [...blockTexts(piece, sheet, label, block)]
  const inside = grown(paper, -0.8)
  for (const fold of piece.folds) addOn(foldWords(drawn, fold), inside, entities, taken)
  if (piece.folds.length === 0 && !piece.anyTurn) addOn(upWords(drawn), inside, entities, taken)
  for (const line of piece.lines) addOn(lineWords(drawn, line), inside, entities, taken)
  addOn(cutOutWords(drawn), inside, entities, taken)
  const worded = placeWords(toolWords(drawn), taken, inside)
  const rest = bodyOf(piece, sheet.units).map(({ text }) => text)
  const tagged = piece.scarce ? [`${label}: ${rest.join('; ')}`] : []
  return { entities: [...entities, ...worded.entities], tagged, left: 0 }
}

function blockTexts(piece: HardwarePiece, sheet: Sheet, label: string, { min, max }: Area): Entity[] {
  let top = max[1]
  const lines = piece.scarce ? titleOf(piece, 0, label) : setWords(piece, sheet.units, piece.way, label)
  return lines.map(({ text, size, bold }): Entity => {
    const baseline = top - TEXT_ASCENT * size
    top -= size * LINE_HEIGHT
    return textAt([min[0], baseline], size, text, { bold })
  })
}

/** Words on a line at one of several spots, with what belongs to them. */
interface Spot {
  readonly area: Area
  readonly entities: readonly Entity[]
}

function addOn(spots: Iterable<Spot>, inside: Area, entities: Entity[], taken: Obstacle[]): void {
  for (const { area, entities: some } of spots) {
    if (!holds(inside, area) || !isClear(area, taken)) continue
    entities.push(...some)
    taken.push({ kind: 'area', area })
    return
  }
}

/** `fold here, over the front edge` beside a fold, with an arrow that points over it. */
function* foldWords(drawn: Sheeted, { side, mm, shoulder }: PieceFold): Generator<Spot> {
  const { piece } = drawn
  const names = new Set(
    piece.places.flatMap(({ folds }) => folds.filter((fold) => fold.side === side).map(({ name }) => name)),
  )
  const [name] = names
  const edge = shoulder ? 'shoulder of the rebate' : 'edge'
  const over = names.size === 1 ? `${name?.toUpperCase() ?? ''} ${edge}` : edge
  const [from, to] = across(drawn, side, mm)
  const turned = side === 'x0' || side === 'x1'
  const texts = [
    `fold here, over the ${over}`,
    `fold: ${over}`,
    names.size === 1 ? `${name?.toUpperCase() ?? ''}` : 'fold',
    'fold',
  ]
  const arrow = side === piece.arrow
  for (const text of texts) {
    for (const height of [2.8, SMALL])
      for (const outside of [true, false]) yield* besideLine(from, to, side, turned, text, height, outside, arrow)
  }
}

/** Along a line, on one side of it, from the middle outward; an arrow head in front where it is asked for. */
function* besideLine(
  from: Point,
  to: Point,
  side: PieceEdge,
  turned: boolean,
  text: string,
  height: number,
  outside: boolean,
  arrow: boolean,
): Generator<Spot> {
  const axis = turned ? 1 : 0
  const room = arrow ? ARROW + 1 : 0
  const width = textWidth(text, height, true) + room
  const depth = Math.max(height * LINE_HEIGHT, arrow ? ARROW : 0)
  const out = OUTWARD[side]
  const low = (outside ? 1 : -1) * (turned ? out[0] : out[1]) > 0 ? 0.8 : -0.8 - depth
  const line = turned ? from[0] : from[1]
  const free = to[axis] - from[axis] - width - 2
  if (free < 0) return
  const steps = Math.floor(free / 2 / 3)
  for (let k = 0; k <= 2 * steps; k += 1) {
    const start = from[axis] + 1 + free / 2 + (k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2) * 3
    const area: Area = turned
      ? { min: [line + low, start], max: [line + low + depth, start + width] }
      : { min: [start, line + low], max: [start + width, line + low + depth] }
    yield { area, entities: lineTexts(area, turned, out, text, height, arrow) }
  }
}

function lineTexts(
  { min, max }: Area,
  turned: boolean,
  out: Point,
  text: string,
  height: number,
  arrow: boolean,
): Entity[] {
  const room = arrow ? ARROW + 1 : 0
  const middle: Point = turned
    ? [(min[0] + max[0]) / 2, min[1] + ARROW / 2]
    : [min[0] + ARROW / 2, (min[1] + max[1]) / 2]
  const tip: Point = [middle[0] + (out[0] * ARROW) / 2, middle[1] + (out[1] * ARROW) / 2]
  const cap = 0.36 * height
  const at: Point = turned ? [(min[0] + max[0]) / 2 + cap, min[1] + room] : [min[0] + room, (min[1] + max[1]) / 2 - cap]
  return [
    ...(arrow ? [arrowHead(tip, out, ARROW)] : []),
    textAt(at, height, text, { bold: true, ...(turned && { turnDeg: 90 as const }) }),
  ]
}

/** Of a piece without a fold: an arrow near its end on that side. */
function* upWords(drawn: Sheeted): Generator<Spot> {
  const { piece, paper } = drawn
  const names = new Set(piece.places.map(({ toward }) => toward))
  const text = names.size === 1 ? `to the ${piece.places[0].toward.toUpperCase()}` : 'ARROW'
  const [left, right]: readonly [Point, Point] = [
    [paper.min[0], paper.max[1]],
    [paper.max[0], paper.max[1]],
  ]
  yield* besideLine(left, right, 'y1', false, text, 2.8, false, true)
  yield* besideLine(left, right, 'y1', false, '', SMALL, false, true)
}

/** What the outline is for. */
function* cutOutWords({ paper }: Sheeted): Generator<Spot> {
  for (const top of [false, true]) {
    const y = top ? paper.max[1] : paper.min[1]
    yield* besideLine([paper.min[0], y], [paper.max[0], y], 'y1', false, 'cut out', 1.9, !top, false)
  }
}

function* lineWords({ piece, on }: Sheeted, line: 0 | 1): Generator<Spot> {
  const { min, max } = piece.paper
  const [from, to]: readonly [Point, Point] =
    line === 0 ? [on([min[0], 0]), on([max[0], 0])] : [on([0, min[1]]), on([0, max[1]])]
  const side: PieceEdge = line === 0 ? 'y1' : 'x0'
  // The corner of a cutout is laid with its sides on the lines.
  const corner = piece.pattern.cuts.some(({ kind, whole }) => kind === 'cutout' && !whole)
  const name = corner ? 'its side' : 'centre line'
  for (const text of [`${name}: lay on your mark`, name])
    for (const outside of [true, false]) yield* besideLine(from, to, side, line === 1, text, SMALL, outside, false)
}

/** Where a pattern has several kinds of holes, each says what it is. */
function toolWords({ piece, sheet, on }: Sheeted): Words[] {
  const tools = [...new Set(piece.pattern.holes.map(({ tool }) => tool))]
  if (tools.length < 2) return []
  return tools.flatMap((tool): Words[] => {
    const holes = piece.pattern.holes.filter((hole) => hole.tool === tool)
    const targetOf = ({ at, radius }: PatternHole) => ({ at: on(at), radius: radius + CROSS_ARM })
    const [first, ...others] = holes.map(targetOf)
    const [hole] = holes
    if (first === undefined || hole === undefined) return []
    const text = shortTool(hole.bore, sheet.units)
    const rivals = piece.pattern.holes.filter((other) => other.tool !== tool).map(targetOf)
    return [{ ways: [[text], text.split(', ')], full: text, targets: [first, ...others], rivals, reach: 30 }]
  })
}
