import { NOISE_MM } from '../geometry/index.ts'
import { formatLength, type Units } from '../length/index.ts'
import type { Bay, Stock } from './types.ts'

/** What the sizes of a split depend on. */
export interface SplitSizes {
  readonly bays: readonly Pick<Bay, 'size' | 'share'>[]
  readonly stock: Pick<Stock, 'thickness'>
}

/**
 * Clear sizes of the bays of a split along its direction, mm, in the split's order; the one place where they are
 * worked out. From the clear size of the opening the mean thickness of each divider is taken off, then the fixed
 * sizes; what remains goes to the other bays by their shares.
 * A text instead, with lengths in `units`, when it cannot be: the sizes exceed the opening, nothing remains for a share, or a remainder has no
 * bay to take it.
 */
export function baySizes(clear: number, split: SplitSizes, units: Units = 'mm'): number[] | string {
  const show = (mm: number) => formatLength(mm, units)
  const dividers = (split.bays.length - 1) * split.stock.thickness
  const sized = split.bays.reduce((sum, bay) => sum + (bay.size ?? 0), 0)
  const shares = split.bays.reduce((sum, bay) => sum + (bay.size === undefined ? bay.share : 0), 0)
  const rest = clear - dividers - sized
  const taken =
    sized > 0
      ? `the sizes take ${show(sized)} and the dividers ${show(dividers)}`
      : `the dividers take ${show(dividers)}`
  const sum = `${taken} of an opening of ${show(clear)}`
  if (shares === 0 && rest > NOISE_MM) return `${sum}; the remaining ${show(rest)} has no bay to take it`
  if (rest < -NOISE_MM) return `${sum}; that is ${show(-rest)} too much`
  if (shares > 0 && rest <= NOISE_MM) return `${sum}; nothing remains for the bays without a size`
  return split.bays.map((bay) => bay.size ?? (rest * bay.share) / shares)
}
