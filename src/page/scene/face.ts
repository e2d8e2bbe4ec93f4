import type { EdgeSide } from '../../assembly/index.ts'
import { bitWords, edgeWords, placeWords } from '../../drawing/index.ts'
import type { Units } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import { type Board, drawBoard } from './board.ts'
import { drawDimension } from './dimension.ts'
import type { LaidIndex } from './laid-index.ts'
import { Picture, textSizeFor } from './picture.ts'
import { seen } from './plane.ts'
import { areaOf, drawTags, meets, obstaclesOf } from './tags.ts'
import type { Face, Look, PanelToScene, Scene, ScenePoint, SceneWord } from './types.ts'

/** Takes the panel frame to a drawing of one face whose lower left corner, as seen, lies at (0, width). */
export function faceFrame({ length, width }: Panel, face: Face): PanelToScene {
  return face === 'A' ? [1, 0, 0, 0, 0, -1, 0, width] : [-1, 0, 0, length, 0, -1, 0, width]
}

/** One face of a panel, its upper left corner as seen at (0, 0); y runs down. */
export function faceScene(index: LaidIndex, panel: Panel, look: Look & { kind: 'face' }, units: Units): Scene {
  const { face } = look
  const picture = new Picture(index, units)
  const size = textSizeFor(panel.length * BESIDE, panel.width * BESIDE)
  const board: Board = { panel, face, frame: faceFrame(panel, face), own: false }
  drawBoard(picture, board, units)
  const { min, max } = picture.area()
  nameEdges(picture, board, units, size)
  drawTags(picture, board, { min: [0, 0], max: [panel.length, panel.width] }, units, size)
  drawGrain(picture, board, size)
  // Holes that reach over an edge, which a check reports, are drawn all the same.
  const low = Math.max(max[1], panel.width)
  const left = Math.min(min[0], 0)
  drawDimension(
    picture,
    {
      ...SIDE,
      key: 'length',
      to: panel.length,
      along: 'x',
      thing: low,
      line: low + SIZE_OUT * size,
      words: placeWords(panel.length, units),
    },
    size,
  )
  drawDimension(
    picture,
    {
      ...SIDE,
      key: 'width',
      to: panel.width,
      along: 'y',
      thing: left,
      line: left - (SIZE_OUT - 0.9) * size,
      words: placeWords(panel.width, units),
    },
    size,
  )
  return picture.scene({
    look,
    title: `${panel.moduleName}: ${panel.name}, face ${face}`,
    facts: factsOfFace(panel, face, units),
    flat: true,
    textSize: size,
  })
}

/** What a drawing takes more than the panel, for names and sizes around it. */
const BESIDE = 1.12
/** From an edge to its name, and to the line of a size beyond the name, in text heights. */
const EDGE_ROOM = 0.45
const SIZE_OUT = 3.1
const SIDE = { from: 0 } as const

/** What a title block says of a panel. */
export function factsOfFace(panel: Panel, face: Face, units: Units): Scene['facts'] {
  return [
    ['size', `${placeWords(panel.length, units)} × ${placeWords(panel.width, units)}`],
    ['thickness', bitWords(panel.thickness, units)],
    ['stock', panel.stock.name],
    ['grain', panel.stock.grain === 'none' ? 'none' : 'along the length'],
    ['face', `${face}, ${panel.faces[face]}`],
    ['holes', String(panel.bores.length)],
  ]
}

/** The names of the four edges, outside of them; those at the left and right turned. */
export function nameEdges(picture: Picture, board: Board, units: Units, size: number): void {
  const { panel, frame } = board
  const middles: Readonly<Record<EdgeSide, ScenePoint>> = {
    x0: seen(frame, [0, panel.width / 2, 0]),
    x1: seen(frame, [panel.length, panel.width / 2, 0]),
    y0: seen(frame, [panel.length / 2, 0, 0]),
    y1: seen(frame, [panel.length / 2, panel.width, 0]),
  }
  const centre = seen(frame, [panel.length / 2, panel.width / 2, 0])
  for (const side of ['x0', 'x1', 'y0', 'y1'] as const) {
    const [x, y] = middles[side]
    const [dx, dy] = [x - centre[0], y - centre[1]]
    const beside = Math.abs(dx) > Math.abs(dy)
    const away = EDGE_ROOM * size
    const at: ScenePoint = beside
      ? [x + (dx > 0 ? away + 0.8 * size : -away), y]
      : [x, y + (dy > 0 ? away + 0.8 * size : -away)]
    const word: SceneWord = {
      key: `${panel.id} edge ${side}`,
      at,
      anchor: 'middle',
      text: edgeWords(panel, side, units),
      kind: 'edge',
      ...(beside && { turnDeg: 90 }),
    }
    picture.word(word, size)
  }
}

/** An arrow with two heads the way of the grain, at the first of some places where nothing is drilled, cut or written. */
export function drawGrain(picture: Picture, board: Board, size: number): void {
  const { panel, frame } = board
  if (panel.stock.grain === 'none') return
  const half = Math.min(panel.length * 0.12, 5 * size)
  const head = Math.min(half / 2, 0.7 * size)
  const obstacles = obstaclesOf(picture, board, size)
  const [x, y] = GRAIN_AT.map(([u, v]): ScenePoint => [panel.length * u, panel.width * v]).find(([u, v]) => {
    // As far from words as a blank or two is wide: closer, its head would read as part of a size.
    const long = half + size
    const area = areaOf([seen(frame, [u - long, v - head, 0]), seen(frame, [u + long, v + head, 0])])
    return !obstacles.some((other) => meets(area, other))
  }) ?? [0, 0]
  if (x === 0) return
  const p = (dx: number, dy: number): ScenePoint => seen(frame, [x + dx, y + dy, 0])
  picture.strokes({ key: `${panel.id} grain`, kind: 'grain', filled: false, title: 'grain' }, [
    [p(-half, 0), p(half, 0)],
    [p(-half + head, head / 2), p(-half, 0), p(-half + head, -head / 2)],
    [p(half - head, head / 2), p(half, 0), p(half - head, -head / 2)],
  ])
}

/** Where the arrow is tried, as shares of length and width. */
const GRAIN_AT: readonly ScenePoint[] = [
  [0.5, 0.88],
  [0.5, 0.75],
  [0.35, 0.65],
  [0.65, 0.65],
  [0.5, 0.5],
  [0.3, 0.35],
  [0.7, 0.35],
  [0.5, 0.2],
]
