import { MM_PER_INCH } from '../../length/index.ts'
import type { Size } from '../../templates/index.ts'
import type { Entity, Point } from '../types.ts'
import { fitted, textAt } from './text.ts'

/** Both check lengths of a page stand on one bar along each axis, mm. */
const PAGE_BAR = { mm: 100, inches: 4 } as const
/** Of the long ticks, that a steel rule is laid on, and of those each 10 mm or inch between; mm. */
const TICK = { long: 3.2, short: 1.2 } as const
const END_SIZE = 2.4
const CAUTION_SIZE = 2.4
const LEAST_SIZE = 1.7
const CORRECTED_SIZE = 1.9

/** What a bar takes to the side of its millimetres and to the side of its inches, mm from its line. */
export const BAR_ROOM = { millimetres: 4.6, inches: 3.6 } as const

/** From where a page's bar begins to the end of its words, mm. */
export const BAR_LENGTH = PAGE_BAR.inches * MM_PER_INCH + 12

/** What is printed along a bar: above it what to do with it, below it how the page is corrected: `0.503 %`. */
export interface BarWords {
  readonly todo: string
  readonly corrected?: string
}

/** A bar's own directions on the sheet: along it, and to the side of its millimetres. */
export interface Axis {
  readonly zero: Point
  readonly along: Point
  readonly across: Point
  readonly turnDeg: 0 | 90
}

/**
 * The check bars of a page: 100 mm, and on the other side of the same line 4 in, along both axes. `reserve` is what the
 * furniture takes inside the margins. Where a sheet lies so low that the upright bar has no room above the furniture at
 * the bottom, it begins beside that.
 */
export function rulersOn(
  paper: Size,
  margin: number,
  reserve: { readonly left: number; readonly bottom: number },
  words: { readonly level: BarWords; readonly upright: BarWords },
): Entity[] {
  const last = paper.height - margin - BAR_LENGTH
  const level: Axis = {
    zero: [margin + reserve.left, margin + BAR_ROOM.inches],
    along: [1, 0],
    across: [0, 1],
    turnDeg: 0,
  }
  const upright: Axis = {
    zero: [margin + BAR_ROOM.millimetres, Math.max(margin, Math.min(margin + reserve.bottom + 1, last))],
    along: [0, 1],
    across: [-1, 0],
    turnDeg: 90,
  }
  return [...bar(level, words.level), ...bar(upright, words.upright)]
}

function bar(axis: Axis, words: BarWords): Entity[] {
  const inch = PAGE_BAR.inches * MM_PER_INCH
  const [todo, size] = fitted(words.todo, PAGE_BAR.mm - 2, CAUTION_SIZE, LEAST_SIZE, true)
  return [
    ...scaleOn(axis, {
      length: inch,
      millimetres: { upTo: PAGE_BAR.mm, long: [0, PAGE_BAR.mm] },
      inches: { upTo: PAGE_BAR.inches, long: [0, PAGE_BAR.inches] },
    }),
    wordsOn(axis, [1, TICK.short + 0.9], size, todo, true),
    wordsOn(axis, [inch + 1, 0.6], END_SIZE, `${PAGE_BAR.mm} mm`, true),
    wordsOn(axis, [inch + 1, -2.4], END_SIZE, `${PAGE_BAR.inches} in`, true),
    ...(words.corrected === undefined ? [] : [wordsOn(axis, [1, -3], CORRECTED_SIZE, `corrected ${words.corrected}`)]),
  ]
}

/** Ticks from 0 up to a figure, long ones where a rule is read off. */
interface Ticks {
  readonly upTo: number
  readonly long: readonly number[]
}

/** A line with ticks each 10 mm on one side, and each inch on the other; `length` in mm. */
export interface Scale {
  readonly length: number
  readonly millimetres: Ticks
  readonly inches: Ticks
  /** Lengths of the ticks, mm; those of a page's bar where nothing is said. */
  readonly tick?: { readonly long: number; readonly short: number }
}

export function scaleOn(axis: Axis, { length, millimetres, inches, tick = TICK }: Scale): Entity[] {
  const ticks = ({ upTo, long }: Ticks, step: number, unit: number, side: 1 | -1): Entity[] =>
    Array.from({ length: Math.floor(upTo / step) + 1 }, (_, k): Entity => {
      const by = side * (long.includes(k * step) ? tick.long : tick.short)
      const place = k * step * unit
      return { kind: 'line', from: onAxis(axis, place, 0), to: onAxis(axis, place, by), pen: 'thin' }
    })
  return [
    { kind: 'line', from: onAxis(axis, 0, 0), to: onAxis(axis, length, 0), pen: 'thin' },
    ...ticks(millimetres, 10, 1, 1),
    ...ticks(inches, 1, MM_PER_INCH, -1),
  ]
}

/** A line of text along an axis, its start so far along it and across it, mm. */
export function wordsOn(axis: Axis, [x, y]: Point, size: number, text: string, bold = false): Entity {
  return textAt(onAxis(axis, x, y), size, text, { turnDeg: axis.turnDeg, bold })
}

function onAxis({ zero, along: [ax, ay], across: [cx, cy] }: Axis, x: number, y: number): Point {
  return [zero[0] + ax * x + cx * y, zero[1] + ay * x + cy * y]
}
