import type { Context } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { type Loose, said } from '../layers.ts'
import type { RawFit } from '../schema/definition.ts'
import { AS_LARGE_AS_FITS } from '../schema/kinds.ts'
import type { FitSpec } from '../types.ts'

/** Sizes that are as large as fits: their limits; `undefined` when there are none. Read after all modules. */
export function resolveFit(context: Context, raw: Loose<RawFit> | undefined, kerf: number): FitSpec | undefined {
  const layers = raw === undefined ? [] : [{ raw, path: ['fit'] }]
  const step = context.lengthOr(said(layers, 'step'), DEFAULTS.fitStep, { aboveZero: true })
  const atMost = context.lengthOr(said(layers, 'at most'), DEFAULTS.fitMost, { aboveZero: true })
  const [first] = context.fits
  if (first === undefined) {
    if (raw !== undefined && context.problems().length === 0) {
      context.report(['fit'], `has no meaning, since no size is "${AS_LARGE_AS_FITS}"`, {
        expected: `a size that says ${AS_LARGE_AS_FITS}, or this key taken out`,
        on: 'key',
      })
    }
    return undefined
  }
  const limited = [...context.stocks.values()].some((stock) => stock?.onHand !== undefined)
  if (!limited && context.stocks.size > 0) {
    context.report(first, 'no stock says how many sheets there are', {
      expected: 'sheets: a number, under a stock',
    })
  }
  return { kerf, step, atMost, at: [...context.fits], size: context.fitted }
}
