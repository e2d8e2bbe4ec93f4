import { isDrawnOn, mouthRadius, runLabel, textWidth } from '../../drawing/index.ts'
import type { Units } from '../../length/index.ts'
import { type Run, runsOf } from '../../panel/index.ts'
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
  let placed = 0
  for (const run of runs) {
    if (placed >= MOST) return
    const word = tagOf(
      board,
      run,
      units,
      size,
      (area) => fits(area, inside) && !taken.some((other) => meets(area, other)),
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

function tagOf(
  board: Board,
  run: Run,
  units: Units,
  size: number,
  hasRoom: (area: SceneArea) => boolean,
): SceneWord | undefined {
  const { panel, frame } = board
  const text = runLabel(panel, run, units)
  const key = `${panel.id} ${run.bores[0].id} tag`
  const onDrawing = run.bores.map((bore) => ({ at: seen(frame, bore.at), bore }))
  const [dx, dy] = seenWay(frame, run.along === 'x' ? [1, 0, 0] : [0, 1, 0])
  const upright = Math.abs(dy) > Math.abs(dx)
  const picks = [0, 0.5, 1, 0.25, 0.75].map((share) => onDrawing[Math.round(share * (onDrawing.length - 1))])
  for (const pick of picks) {
    if (pick === undefined) continue
    const { at, bore } = pick
    const out = mouthRadius(bore) + GAP * size
    const [ax, ay] = isInEdge(bore) ? seenWay(frame, bore.axis) : [0, 0]
    const deep = bore.depth + GAP * size
    const [x, y] = at
    const middle = size * 0.33
    const width = textWidth(text, size)
    const beside: readonly (readonly [ScenePoint, SceneWord['anchor']])[] = isInEdge(bore)
      ? [
          [
            [x + ax * deep, y + ay * deep + (ay > 0 ? size : ay < 0 ? 0 : middle)],
            ax > 0 ? 'start' : ax < 0 ? 'end' : 'middle',
          ],
          [[x + ax * deep, y + ay * deep + (ay > 0 ? size : ay < 0 ? 0 : middle)], ax > 0 ? 'start' : 'end'],
          [[x + ax * deep, y + ay * deep + (ay > 0 ? size : ay < 0 ? 0 : middle)], ax < 0 ? 'end' : 'start'],
        ]
      : upright
        ? [
            [[x + out, y + middle], 'start'],
            [[x - out, y + middle], 'end'],
          ]
        : [
            [[x, y - out], 'middle'],
            [[x, y + out + size * 0.75], 'middle'],
            [[x - width * 0.1, y - out], 'start'],
            [[x + width * 0.1, y - out], 'end'],
            [[x - width * 0.1, y + out + size * 0.75], 'start'],
            [[x + width * 0.1, y + out + size * 0.75], 'end'],
          ]
    for (const [place, anchor] of beside) {
      const word: SceneWord = { key, at: place, anchor, text, kind: 'tag' }
      if (hasRoom(wordArea(word, size))) return word
    }
  }
  return undefined
}

/** What no word may lie on: holes, grooves and cutouts, by the rectangles around them. */
function obstaclesOf(picture: Picture, { panel, frame, face }: Board, size: number): SceneArea[] {
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

const areaOf = (points: readonly ScenePoint[]): SceneArea => ({
  min: [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))],
  max: [Math.max(...points.map(([x]) => x)), Math.max(...points.map(([, y]) => y))],
})

const grown = ({ min, max }: SceneArea, by: number): SceneArea => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
})

const meets = (a: SceneArea, b: SceneArea): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1]

const fits = (a: SceneArea, b: SceneArea): boolean =>
  a.min[0] >= b.min[0] && a.max[0] <= b.max[0] && a.min[1] >= b.min[1] && a.max[1] <= b.max[1]
