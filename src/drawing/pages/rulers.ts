import { MM_PER_INCH } from '../../length/index.ts'
import { BAR_MM } from '../../project/index.ts'
import type { Size } from '../../templates/index.ts'
import type { Entity, Point } from '../types.ts'
import { textAt } from './text.ts'

/** Length of a ruler, mm. */
const RULER = BAR_MM
const LONG = 5
const SHORT = 1.6
const FIGURES = 2.5

/** A ruler's own directions on the sheet: along it, and to the side of its millimetres. */
interface Axis {
  readonly zero: Point
  readonly along: Point
  readonly across: Point
  readonly turnDeg: 0 | 90
  /** How the page is corrected along it, in words. */
  readonly corrected: string | undefined
}

/**
 * Two rulers, one along each axis of the sheet. Millimetres on one side: a long tick at 0, 100 and 180, short ones each
 * 10. Inches on the other: long ticks at 0 and 4, short ones between. `reserve` is what the furniture takes. Where the
 * sheet has room for no more than the ruler between its margins, it stands in the middle.
 */
export function rulersOn(
  paper: Size,
  margin: number,
  reserve: { left: number; bottom: number },
  corrected?: readonly [level: string, upright: string],
): Entity[] {
  // The spines run so far from the sheet's edges that the long ticks end at the margin.
  const spine = margin + LONG
  const begin = (wished: number, size: number): number => {
    const last = size - spine - RULER
    return last < spine ? (size - RULER) / 2 : Math.min(wished, last)
  }
  const level: Axis = {
    zero: [begin(spine + reserve.left - 2, paper.width), spine],
    along: [1, 0],
    across: [0, 1],
    turnDeg: 0,
    corrected: corrected?.[0],
  }
  const upright: Axis = {
    zero: [spine, begin(spine + reserve.bottom + 2, paper.height)],
    along: [0, 1],
    across: [-1, 0],
    turnDeg: 90,
    corrected: corrected?.[1],
  }
  return [...ruler(level), ...ruler(upright)]
}

function ruler(axis: Axis): Entity[] {
  const at = (along: number, across: number): Point => [
    axis.zero[0] + axis.along[0] * along + axis.across[0] * across,
    axis.zero[1] + axis.along[1] * along + axis.across[1] * across,
  ]
  const tick = (along: number, across: number): Entity => ({
    kind: 'line',
    from: at(along, 0),
    to: at(along, across),
    pen: 'thin',
  })
  const words = (along: number, across: number, text: string, anchor: 'start' | 'end'): Entity =>
    textAt(at(along, across), FIGURES, text, { anchor, turnDeg: axis.turnDeg })
  const millimetres = Array.from({ length: RULER / 10 + 1 }, (_, k) =>
    tick(k * 10, [0, 10, 18].includes(k) ? LONG : SHORT),
  )
  const inches = [0, 1, 2, 3, 4].map((k) => tick(k * MM_PER_INCH, -(k % 4 === 0 ? LONG : SHORT)))
  return [
    { kind: 'line', from: at(0, 0), to: at(RULER, 0), pen: 'thin' },
    ...millimetres,
    ...inches,
    words(1, 2.4, '0', 'start'),
    words(101, 2.4, '100 mm', 'start'),
    words(179, 2.4, '180 mm', 'end'),
    ...(axis.corrected === undefined ? [] : [words(20, 2.4, `corrected ${axis.corrected}`, 'start')]),
    words(1, -4.4, '0', 'start'),
    words(4 * MM_PER_INCH + 1, -4.4, '4 in', 'start'),
    words(RULER - 1, -4.4, 'check bar: 100 mm and 180 mm, 4 in', 'end'),
  ]
}
