import { isDrawnOn, mouthRadius, runLabel, textWidth } from '../../drawing/index.ts'
import type { Units } from '../../length/index.ts'
import { type Bore, type Run, runsOf } from '../../panel/index.ts'
import type { Board } from './board.ts'
import { isInEdge } from './bores.ts'
import { type Picture, wordArea } from './picture.ts'
import { seen, seenWay } from './plane.ts'
import type { SceneArea, ScenePoint, SceneWord } from './types.ts'

/** Words beside rows of holes, of the longest rows first, where there is room on the panel; few, since every hole says more when asked. */
export function drawTags(picture: Picture, board: Board, inside: SceneArea, units: Units, size: number): void {
  const { panel, face } = board
  const runs = runsOf(panel.bores.filter((bore) => bore.through || isDrawnOn(bore, face)))
    .filter(({ bores }) => bores.length >= LEAST)
    .sort((a, b) => b.bores.length - a.bores.length)
  if (runs.length === 0) return
  const taken = obstaclesOf(picture, board, size)
  const room = grown(inside, -GAP * size)
  let placed = 0
  for (const run of runs) {
    if (placed >= MOST) return
    const word = tagOf(
      board,
      run,
      units,
      size,
      (area) => fits(area, room) && !taken.some((other) => meets(area, other)),
    )
    if (word === undefined) continue
    picture.word(word, size)
    taken.push(grown(wordArea(word, size), GAP * size))
    placed += 1
  }
}

/** Rows of fewer holes get no words, and no more rows than this do. */
const LEAST = 2
const MOST = 12
/** Room between words and what is beside them, in text heights. */
const GAP = 0.4

/** The words of a row at one of its holes, on the first of their places that is free. */
function tagOf(
  board: Board,
  run: Run,
  units: Units,
  size: number,
  hasRoom: (area: SceneArea) => boolean,
): SceneWord | undefined {
  const text = runLabel(board.panel, run, units)
  const key = `${board.panel.id} ${run.bores[0].id} tag`
  const last = run.bores.length - 1
  for (const share of AT) {
    const bore = run.bores[Math.round(share * last)] ?? run.bores[0]
    for (const [at, anchor] of placesBeside(board, run, bore, size, textWidth(text, size))) {
      const word: SceneWord = { key, at, anchor, text, kind: 'tag' }
      if (hasRoom(wordArea(word, size))) return word
    }
  }
  return undefined
}

/** At which holes of a row words are tried, as shares of its length. */
const AT = [0, 0.5, 1, 0.25, 0.75]
/** From a line of words to its middle, and to the upper side of its letters, in text heights. */
const TO_MIDDLE = 0.33
const TO_TOP = 0.75
/** So much of its words may stick out beyond the first or last hole. */
const OVER_END = 0.1

type Placing = readonly [at: ScenePoint, anchor: SceneWord['anchor']]

/** Beside a hole of an upright row, over or under one of a level row, at the inner end of one in an edge. */
function placesBeside({ frame }: Board, run: Run, bore: Bore, size: number, width: number): readonly Placing[] {
  const [x, y] = seen(frame, bore.at)
  if (isInEdge(bore)) {
    const [ax, ay] = seenWay(frame, bore.axis)
    const deep = bore.depth + GAP * size
    const at: ScenePoint = [x + ax * deep, y + ay * deep + (ay > 0.5 ? TO_TOP : ay < -0.5 ? 0 : TO_MIDDLE) * size]
    if (Math.abs(ax) > 0.5) return [[at, ax > 0 ? 'start' : 'end']]
    return [
      [at, 'middle'],
      [at, 'start'],
      [at, 'end'],
    ]
  }
  const out = mouthRadius(bore) + GAP * size
  const [dx, dy] = seenWay(frame, run.along === 'x' ? [1, 0, 0] : [0, 1, 0])
  if (Math.abs(dy) > Math.abs(dx)) {
    return [
      [[x + out, y + TO_MIDDLE * size], 'start'],
      [[x - out, y + TO_MIDDLE * size], 'end'],
    ]
  }
  return [y - out, y + out + TO_TOP * size].flatMap((line): Placing[] => [
    [[x, line], 'middle'],
    [[x - width * OVER_END, line], 'start'],
    [[x + width * OVER_END, line], 'end'],
  ])
}

/** What no word may lie on: holes, grooves and cutouts, by the rectangles around them. */
export function obstaclesOf(picture: Picture, { panel, frame, face }: Board, size: number): SceneArea[] {
  const grow = (GAP / 2) * size
  const holes = panel.bores.map((bore): SceneArea => {
    const radius = mouthRadius(bore) + grow
    const at = seen(frame, bore.at)
    const [ax, ay] = isInEdge(bore) ? seenWay(frame, bore.axis) : [0, 0]
    const end: ScenePoint = [at[0] + ax * bore.depth, at[1] + ay * bore.depth]
    return grown(areaOf([at, end]), radius)
  })
  const cuts = [...panel.grooves, ...panel.cutouts.map(({ path, face: of }) => ({ ...boundsOfPath(path), face: of }))]
  const rectangles = cuts
    .filter((cut) => cut.face === face || !('id' in cut))
    .map(({ min, max }) => areaOf([seen(frame, [min[0], min[1], 0]), seen(frame, [max[0], max[1], 0])]))
  return [...holes, ...rectangles, ...picture.words.map((word) => grown(wordArea(word, size), grow))]
}

function boundsOfPath(path: readonly { readonly at: ScenePoint }[]): SceneArea {
  return areaOf(path.map(({ at }) => at))
}

export const areaOf = (points: readonly ScenePoint[]): SceneArea => ({
  min: [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))],
  max: [Math.max(...points.map(([x]) => x)), Math.max(...points.map(([, y]) => y))],
})

const grown = ({ min, max }: SceneArea, by: number): SceneArea => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
})

export const meets = (a: SceneArea, b: SceneArea): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1]

const fits = (a: SceneArea, b: SceneArea): boolean =>
  a.min[0] >= b.min[0] && a.max[0] <= b.max[0] && a.min[1] >= b.min[1] && a.max[1] <= b.max[1]
