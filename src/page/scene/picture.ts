import { textWidth } from '../../drawing/index.ts'
import type { Vec3 } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { LaidIndex } from './laid-index.ts'
import { circle, polygon, strokes } from './lines.ts'
import { OperationBook } from './operations.ts'
import type {
  PanelToScene,
  Scene,
  SceneArea,
  SceneEdge,
  SceneHole,
  ScenePart,
  ScenePoint,
  SceneSnap,
  SceneWord,
} from './types.ts'

/** What a part is besides its lines. */
export type PartSpec = Omit<ScenePart, 'd'>

type SceneWords = Pick<Scene, 'look' | 'title' | 'facts' | 'flat' | 'textSize'>

/** A scene while it is being drawn: knows how far everything reaches. */
export class Picture {
  readonly parts: ScenePart[] = []
  readonly holes: SceneHole[] = []
  readonly words: SceneWord[] = []
  readonly snaps: SceneSnap[] = []
  readonly edges: SceneEdge[] = []
  readonly frames: Record<string, PanelToScene> = {}
  readonly operations: OperationBook
  readonly #min: [number, number] = [Infinity, Infinity]
  readonly #max: [number, number] = [-Infinity, -Infinity]

  constructor(index: LaidIndex, units: Units) {
    this.operations = new OperationBook(index, units)
  }

  /** Draws lines that reach no further than the points given. */
  part(spec: PartSpec, d: string, reach: readonly ScenePoint[]): void {
    this.parts.push({ ...spec, d })
    for (const point of reach) this.reach(point)
  }

  polygon(spec: PartSpec, points: readonly ScenePoint[]): void {
    this.part(spec, polygon(points), points)
  }

  strokes(spec: PartSpec, lines: readonly (readonly ScenePoint[])[]): void {
    this.part(spec, strokes(lines), lines.flat())
  }

  circle(spec: PartSpec, at: ScenePoint, radius: number): void {
    this.part(spec, circle(at, radius), around(at, radius))
  }

  hole(hole: SceneHole, reach: readonly ScenePoint[]): void {
    this.holes.push(hole)
    for (const point of reach) this.reach(point)
  }

  /** A word of a height, mm, all of which is within the bounds. */
  word(word: SceneWord, height: number): void {
    this.words.push(word)
    const { min, max } = wordArea(word, height)
    this.reach(min)
    this.reach(max)
  }

  /** A closed row of corners and the edges between them. */
  corners(places: readonly Vec3[], at: (place: Vec3) => ScenePoint, of?: string): void {
    const snaps = places.map(
      (place): SceneSnap => ({ at: at(place), place, kind: 'corner', ...(of !== undefined && { of }) }),
    )
    this.snaps.push(...snaps)
    snaps.forEach((from, k) => {
      this.edges.push({ from, to: snaps[(k + 1) % snaps.length] ?? from })
    })
  }

  reach([x, y]: ScenePoint): void {
    if (x < this.#min[0]) this.#min[0] = x
    if (x > this.#max[0]) this.#max[0] = x
    if (y < this.#min[1]) this.#min[1] = y
    if (y > this.#max[1]) this.#max[1] = y
  }

  /** How far all that is drawn by now reaches. */
  area(): SceneArea {
    const empty = this.#min[0] > this.#max[0]
    return empty ? { min: [0, 0], max: [0, 0] } : { min: [...this.#min], max: [...this.#max] }
  }

  /** All of it, with a little room around it. */
  scene(what: SceneWords): Scene {
    return { ...this.head(what), holes: this.holes, snaps: this.snaps, edges: this.edges }
  }

  /** The same without holes and what measuring snaps to. */
  head(what: SceneWords): Omit<Scene, 'holes' | 'snaps' | 'edges' | 'standing'> {
    const { min, max } = this.area()
    const room = what.textSize * ROOM
    return {
      ...what,
      bounds: { min: [min[0] - room, min[1] - room], max: [max[0] + room, max[1] + room] },
      parts: this.parts,
      words: this.words,
      operations: this.operations.list(),
      frames: this.frames,
    }
  }
}

/** Around everything, in text heights. */
const ROOM = 0.6
/** How far letters reach over and under their line, in text heights: those of most fonts. */
const ASCENT = 0.95
const DESCENT = 0.28

/** Corners of the square around a circle. */
export const around = ([x, y]: ScenePoint, radius: number): readonly [ScenePoint, ScenePoint] => [
  [x - radius, y - radius],
  [x + radius, y + radius],
]

/** All of a word; y down. */
export function wordArea({ at: [x, y], anchor, text, turnDeg }: SceneWord, height: number): SceneArea {
  const width = textWidth(text, height)
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width
  const [up, down] = [ASCENT * height, DESCENT * height]
  return turnDeg === 90
    ? { min: [x - up, y - (width - before)], max: [x + down, y + before] }
    : { min: [x - before, y - up], max: [x - before + width, y + down] }
}

/** Height of words for a drawing of that size, mm: such that they read when it is seen whole. */
export function textSizeFor(width: number, height: number): number {
  return Math.max(width, height * WIDER) / LETTERS_ACROSS
}

/** Of a window that is wider than high. */
const WIDER = 1.3
const LETTERS_ACROSS = 52
