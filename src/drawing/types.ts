import type { PathVertex, Vec2 } from '../geometry/index.ts'

/** A point on a drawing: mm, x right, y up. The one flip to y-down formats is in the writers. */
export type Point = Vec2

/** What a machine or a person does on a layer. Only `mark`, `note` and `finding` are never cut. */
export type Operation =
  | 'outline'
  | 'cutout'
  | 'pocket'
  | 'bore'
  | 'countersink'
  | 'groove'
  | 'mark'
  | 'note'
  | 'finding'

/** How a line is drawn for the eye; no writer for machines looks at it. */
export type Pen = 'hair' | 'thin' | 'bold' | 'dashed'

/** A full circle. `title` is what a pointer resting on it reads; `id` is unique in the drawing, /^[a-z][a-z0-9_-]*$/. */
export interface Circle {
  readonly kind: 'circle'
  readonly at: Point
  readonly radius: number
  readonly title?: string
  readonly id?: string
  readonly pen?: Pen
}

/**
 * A closed contour, counter-clockwise when it is an outer one. Each vertex has the bulge of the segment that leaves
 * it: tan(arc angle / 4), positive to the left, 0 for a straight line. The last vertex closes on the first and does
 * not repeat it.
 */
export interface ClosedPath {
  readonly kind: 'path'
  readonly vertices: readonly PathVertex[]
  readonly title?: string
  readonly id?: string
  readonly pen?: Pen
  /** Filled, as an arrow head is. Only on `mark` and `note` layers. */
  readonly filled?: boolean
}

/** A straight line; only on `mark` and `note` layers. */
export interface Line {
  readonly kind: 'line'
  readonly from: Point
  readonly to: Point
  readonly pen?: Pen
}

/** One line of text; only on `note` layers. `height` is the font size in mm (cap height is about 0.73 of it). */
export interface Text {
  readonly kind: 'text'
  /** On the baseline, at the anchor. */
  readonly at: Point
  readonly height: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly text: string
  /** Turned counter-clockwise about `at`, degrees. */
  readonly turnDeg?: 0 | 90
  readonly bold?: boolean
}

export type Entity = Circle | ClosedPath | Line | Text

export interface Layer {
  /** /^[A-Z0-9][A-Z0-9_-]{0,30}$/, unique in the drawing. */
  readonly name: string
  readonly operation: Operation
  readonly entities: readonly Entity[]
}

/** A picture in mm that every writer can write. Layers are written in the order given. */
export interface Drawing {
  readonly title: string
  /** All that is drawn lies within; mm. For a panel, (0, 0) is the panel's lower left corner. */
  readonly view: { readonly min: Point; readonly max: Point }
  /** Factors along x and y by which a page is written larger, so that a printer that errs makes it true; absent: 1. */
  readonly stretch?: Point
  /** Height of the panel, mm; writers whose y runs down put y = 0 at this height. Absent: at the top of `view`. */
  readonly flipHeight?: number
  /** How many times heavier than on a page lines are drawn, so that a large panel reads when looked at whole; 1 when absent. */
  readonly strokeScale?: number
  readonly layers: readonly Layer[]
}
