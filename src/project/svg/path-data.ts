import type { Vec2 } from '../../geometry/index.ts'

/** A piece of a path as SVG draws it, in user units, y down. An ellipse's arc is in the form of its ends. */
export type Stroke =
  | { readonly kind: 'line'; readonly to: Vec2 }
  | { readonly kind: 'cubic'; readonly c1: Vec2; readonly c2: Vec2; readonly to: Vec2 }
  | {
      readonly kind: 'arc'
      readonly rx: number
      readonly ry: number
      readonly turnDeg: number
      readonly large: boolean
      readonly clockwise: boolean
      readonly to: Vec2
    }

export interface Subpath {
  readonly from: Vec2
  readonly strokes: readonly Stroke[]
  /** Closed by Z. */
  readonly closed: boolean
}

/** How many figures each command takes. */
const FIGURES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 }
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y

/** The subpaths of a path's `d` (SVG 1.1, section 8.3); the word or place that is wrong where it is none. */
export function readPathData(d: string): { readonly subpaths: Subpath[] } | { readonly wrong: string } {
  const pen = new Pen()
  let at = 0
  const skip = (): void => {
    while (at < d.length && /[\s,]/.test(d[at] ?? '')) at += 1
  }
  for (skip(); at < d.length; skip()) {
    const letter = d[at] ?? ''
    const count = FIGURES[letter.toUpperCase()]
    if (count === undefined) return { wrong: d.slice(at, at + 12) }
    at += 1
    let first = true
    for (;;) {
      skip()
      const next = d[at] ?? ''
      if (!first && (count === 0 || next === '' || /[a-zA-Z]/.test(next))) break
      const start = at
      const figures: number[] = []
      for (let k = 0; k < count; k += 1) {
        skip()
        const isFlag = count === 7 && (k === 3 || k === 4)
        NUMBER.lastIndex = at
        const word = isFlag ? /^[01]/.exec(d.slice(at, at + 1))?.[0] : NUMBER.exec(d)?.[0]
        if (word === undefined || !Number.isFinite(Number(word)))
          return { wrong: d.slice(start - 1, start + 20).trim() }
        figures.push(Number(word))
        at += word.length
      }
      // More pairs after a move are lines.
      const command = first ? letter : letter === 'M' ? 'L' : letter === 'm' ? 'l' : letter
      if (!pen.draw(command, figures)) return { wrong: d.slice(start - 1, start + 20).trim() }
      first = false
    }
  }
  return { subpaths: pen.done() }
}

class Pen {
  private readonly subpaths: Subpath[] = []
  private from: Vec2 | undefined
  private at: Vec2 = [0, 0]
  private strokes: Stroke[] = []
  /** The last drawing point of a curve, for the smooth commands. */
  private control: { readonly of: 'C' | 'Q'; readonly at: Vec2 } | undefined

  done(): Subpath[] {
    this.finish(false)
    return this.subpaths
  }

  /** False where nothing can be drawn: a path begins with a move. */
  draw(command: string, n: readonly number[]): boolean {
    const big = command.toUpperCase()
    const relative = command !== big
    const point = (k: number): Vec2 => {
      const [x, y] = [n[k] ?? 0, n[k + 1] ?? 0]
      return relative ? [this.at[0] + x, this.at[1] + y] : [x, y]
    }
    if (big === 'M') {
      const to = point(0)
      this.finish(false)
      this.from = to
      this.at = to
      this.control = undefined
      return true
    }
    if (this.from === undefined) return false
    this.stroke(big, n, point, relative)
    return true
  }

  private stroke(big: string, n: readonly number[], point: (k: number) => Vec2, relative: boolean): void {
    const [x, y] = this.at
    const [value = 0] = n
    switch (big) {
      case 'H':
        this.line([relative ? x + value : value, y])
        break
      case 'V':
        this.line([x, relative ? y + value : value])
        break
      case 'L':
        this.line(point(0))
        break
      case 'C':
        this.cubic(point(0), point(2), point(4), 'C')
        break
      case 'S':
        this.cubic(this.reflected('C'), point(0), point(2), 'C')
        break
      case 'Q':
        this.quadratic(point(0), point(2))
        break
      case 'T':
        this.quadratic(this.reflected('Q'), point(0))
        break
      case 'A': {
        const [rx = 0, ry = 0, turnDeg = 0, large = 0, sweep = 0] = n
        const to = point(5)
        const arc = { rx: Math.abs(rx), ry: Math.abs(ry), turnDeg, large: large === 1, clockwise: sweep === 1 }
        if (rx === 0 || ry === 0) this.line(to)
        else this.put({ kind: 'arc', ...arc, to })
        break
      }
      default:
        this.finish(true)
    }
  }

  private put(stroke: Stroke, control?: { of: 'C' | 'Q'; at: Vec2 }): void {
    this.strokes.push(stroke)
    this.at = stroke.to
    this.control = control
  }

  private line(to: Vec2): void {
    this.put({ kind: 'line', to })
  }

  private cubic(c1: Vec2, c2: Vec2, to: Vec2, of: 'C'): void {
    this.put({ kind: 'cubic', c1, c2, to }, { of, at: c2 })
  }

  /** A quadratic curve is the cubic whose drawing points lie two thirds of the way to its one. */
  private quadratic(q: Vec2, to: Vec2): void {
    const toward = (end: Vec2): Vec2 => [end[0] + (2 / 3) * (q[0] - end[0]), end[1] + (2 / 3) * (q[1] - end[1])]
    this.put({ kind: 'cubic', c1: toward(this.at), c2: toward(to), to }, { of: 'Q', at: q })
  }

  private reflected(of: 'C' | 'Q'): Vec2 {
    if (this.control?.of !== of) return this.at
    return [2 * this.at[0] - this.control.at[0], 2 * this.at[1] - this.control.at[1]]
  }

  /** Ends a subpath; what is drawn after Z without a move goes on from its beginning. */
  private finish(closed: boolean): void {
    if (this.from !== undefined && this.strokes.length > 0) {
      this.subpaths.push({ from: this.from, strokes: this.strokes, closed })
    }
    this.strokes = []
    if (this.from !== undefined) this.at = this.from
    this.control = undefined
  }
}
