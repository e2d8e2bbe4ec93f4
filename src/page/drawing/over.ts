import type { Units } from '../../length/index.ts'
import type { Scene, SceneHole, ScenePoint } from '../scene/types.ts'
import { type Camera, type ScreenPoint, type SheetSize, toScreen } from './camera.ts'
import { ringRadius } from './marks.ts'
import type { Measuring } from './sheet-state.ts'
import type { PlacedSize } from './size-room.ts'
import type { MeasurePoint } from './snap.ts'
import { lengthWords, measured } from './snap.ts'
import { Row, svgElement } from './svg.ts'
import { readableWords, wordSize } from './word-room.ts'

/** Radius of the ring about a place, px. */
const PLACE_RING_PX = 30
/** Half of a snap mark, and of the slanted stroke at the end of a size, px. */
const MARK_PX = 8
const SLANT_PX = 5
/** A size that is shorter on the screen has no line, px. */
const SHORTEST_PX = 3
const TEXT_OFF_PX = 6

/** What lies over the drawing at a constant size on the screen: words, rings, sizes of a hole, measuring. */
export class Over {
  readonly group = svgElement('g', { class: 'over' })
  readonly #wordsGroup: SVGGElement
  readonly #words: Row<'text'>
  readonly #lines: Row<'path'>
  readonly #texts: Row<'text'>

  constructor() {
    const layer = (name: string): SVGGElement => {
      const group = svgElement('g', { class: name })
      this.group.append(group)
      return group
    }
    this.#wordsGroup = layer('words')
    this.#words = new Row(this.#wordsGroup, 'text')
    this.#lines = new Row(layer('marked'), 'path')
    this.#texts = new Row(layer('readings'), 'text')
  }

  /** The words of the drawing, those that can be read. */
  drawWords(scene: Scene, camera: Camera, sheet: SheetSize): void {
    this.#wordsGroup.style.fontSize = `${wordSize(scene, camera)}px`
    this.#words.begin()
    for (const { word, at } of readableWords(scene, camera, sheet)) {
      const turn = word.turnDeg === 90 ? ' rotate(-90)' : ''
      const text = this.#words.next({
        class: `word ${word.kind}`,
        'text-anchor': word.anchor,
        transform: `translate(${at[0]} ${at[1]})${turn}`,
      })
      if (text.textContent !== word.text) text.textContent = word.text
    }
    this.#words.end()
  }

  begin(): void {
    this.#lines.begin()
    this.#texts.begin()
  }

  end(): void {
    this.#lines.end()
    this.#texts.end()
  }

  /** A ring about a hole; `partner` for its mates, `fellow` for other holes of the same hardware. */
  ring(hole: SceneHole, kind: 'chosen' | 'partner' | 'fellow', camera: Camera): void {
    const [x, y] = toScreen(camera, hole.at)
    const r = ringRadius(hole, camera.scale)
    this.#lines.next({ class: 'ring ground', d: circle(x, y, r) })
    this.#lines.next({ class: `ring ${kind}`, d: circle(x, y, r) })
  }

  /** From a hole to its partner on the same drawing, between the rings. */
  tie(from: SceneHole, to: SceneHole, camera: Camera): void {
    const [x1, y1] = toScreen(camera, from.at)
    const [x2, y2] = toScreen(camera, to.at)
    this.#lines.next({ class: 'tie', d: `M${x1} ${y1}L${x2} ${y2}` })
  }

  /** From a hole to the nearest point of the card that tells of it. */
  leader(hole: SceneHole, [left, top]: ScreenPoint, card: SheetSize | undefined, camera: Camera): void {
    if (card === undefined) return
    const [x, y] = toScreen(camera, hole.at)
    const endX = Math.max(left, Math.min(x, left + card.width))
    const endY = Math.max(top, Math.min(y, top + card.height))
    const length = Math.hypot(endX - x, endY - y)
    const start = ringRadius(hole, camera.scale)
    if (length <= start) return
    const share = start / length
    this.#lines.next({
      class: 'leader',
      d: `M${x + share * (endX - x)} ${y + share * (endY - y)}L${endX} ${endY}`,
    })
  }

  /** Sizes of the chosen hole, with their words where they were placed. */
  sizes(placed: readonly PlacedSize[]): void {
    for (const { from, to, words, at, isTurned, leader } of placed) {
      this.#sizeLine(from, to, 'hole-size')
      if (leader !== undefined)
        this.#lines.next({ class: 'leader', d: `M${leader[0].join(' ')}L${leader[1].join(' ')}` })
      this.#reading(words, 'hole-size', `translate(${at[0]} ${at[1]})${isTurned ? ' rotate(-90)' : ''}`)
    }
  }

  #sizeLine(from: ScreenPoint, to: ScreenPoint, kind: string): void {
    const slant = ([x, y]: ScreenPoint): string => `M${x - SLANT_PX} ${y + SLANT_PX}l${2 * SLANT_PX} ${-2 * SLANT_PX}`
    const d = `M${from[0]} ${from[1]}L${to[0]} ${to[1]}${slant(from)}${slant(to)}`
    this.#lines.next({ class: `size-line ${kind}`, d })
  }

  #reading(words: string, kind: string, transform: string): void {
    const text = this.#texts.next({ class: `reading ${kind}`, 'text-anchor': 'middle', transform })
    if (text.textContent !== words) text.textContent = words
  }

  #size(from: ScreenPoint, to: ScreenPoint, words: string, kind: string): void {
    const [x1, y1] = from
    const [x2, y2] = to
    const length = Math.hypot(x2 - x1, y2 - y1)
    if (length < SHORTEST_PX) return
    this.#sizeLine(from, to, kind)
    // Along the line and read from below or from the right, as on a shop drawing.
    const angle = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI
    const upright = angle >= 89.9 ? angle - 180 : angle < -90.1 ? angle + 180 : angle
    this.#reading(
      words,
      kind,
      `translate(${(x1 + x2) / 2} ${(y1 + y2) / 2}) rotate(${upright}) translate(0 ${-TEXT_OFF_PX})`,
    )
  }

  /** A place that a finding asked to be shown. */
  place(at: ScenePoint, camera: Camera): void {
    const [x, y] = toScreen(camera, at)
    const d = circle(x, y, PLACE_RING_PX)
    this.#lines.next({ class: 'ring ground', d })
    this.#lines.next({ class: 'ring place', d })
  }

  measuring({ aim, from, to }: Measuring, scene: Scene, camera: Camera, units: Units): void {
    const second = to ?? (from && aim)
    if (from !== undefined && second !== undefined) {
      const [straight] = measured(scene.look, scene.flat, from, second) ?? []
      if (straight !== undefined)
        this.#size(toScreen(camera, from.at), toScreen(camera, second.at), lengthWords(straight.mm, units), 'measure')
    }
    for (const point of [from, to ?? aim]) if (point !== undefined) this.#snapMark(point, camera)
  }

  /** Each kind of point that is snapped to has its own mark. */
  #snapMark({ at, kind }: MeasurePoint, camera: Camera): void {
    const [x, y] = toScreen(camera, at)
    const m = MARK_PX
    const shapes = {
      centre: `${circle(x, y, m)}M${x - m - 4} ${y}h${2 * m + 8}M${x} ${y - m - 4}v${2 * m + 8}`,
      corner: `M${x - m} ${y - m}h${2 * m}v${2 * m}h${-2 * m}z`,
      edge: `M${x} ${y - m}l${m} ${m}l${-m} ${m}l${-m} ${-m}z`,
      free: `M${x - m} ${y}h${2 * m}M${x} ${y - m}v${2 * m}`,
    }
    this.#lines.next({ class: 'snap ground', d: shapes[kind] })
    this.#lines.next({ class: `snap ${kind}`, d: shapes[kind] })
  }
}

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`
