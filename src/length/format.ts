import { MM_PER_INCH, type Units } from './units.ts'

/** Largest part of a rounding that is not worth a word, mm: less than a scribed line is wide. */
const SILENT_MM = 0.05

/** A hyphen between two lengths would read as `to`; this is U+2212. */
const MINUS = '−'

/**
 * A number of mm for people and for text files: at most three decimals, no exponent, never `-0`; no unit behind it.
 * Throws on NaN, infinities and on values that decimals cannot write (1e21 and beyond).
 */
export function formatMm(mm: number): string {
  if (!Number.isFinite(mm) || Math.abs(mm) >= 1e21) throw new RangeError(`not a length that can be written: ${mm}`)
  return decimals(mm, 3)
}

/** A length as findings say it, to a tenth of a mm; no unit behind it. */
export const mm = (value: number): string => String(Math.round(value * 10) / 10)

/** The same to a hundredth, for what is cut finer, and so that a value just under its limit does not read like it. */
export const fineMm = (value: number): string => String(Math.round(value * 100) / 100)

/**
 * A length in inches as the nearest fraction in lowest terms: `23 7/16 in`. Where the fraction is off by more than
 * 0.05 mm, the rest is added or, behind a true minus sign, taken off: `23 7/16 in + 0.1 mm`; so what is read is never
 * off by more than that.
 */
export function formatInch(mm: number, denominator: 64 | 32 | 16 = 64): string {
  if (!Number.isFinite(mm) || Math.abs(mm) >= 1e15) throw new RangeError(`not a length that can be written: ${mm}`)
  const steps = Math.round((mm / MM_PER_INCH) * denominator)
  const restMm = mm - (steps / denominator) * MM_PER_INCH
  const minus = steps < 0 ? MINUS : ''
  const inches = `${minus}${mixed(Math.abs(steps), denominator)} in`
  if (Math.abs(restMm) <= SILENT_MM) return inches
  return `${inches} ${restMm < 0 ? MINUS : '+'} ${decimals(Math.abs(restMm), 1)} mm`
}

/** A length with its unit: `600 mm`, or inches to the nearest 1/64: `23 5/8 in`. */
export function formatLength(mm: number, units: Units): string {
  return units === 'in' ? formatInch(mm) : `${formatMm(mm)} mm`
}

function decimals(value: number, places: number): string {
  const scale = 10 ** places
  const rounded = Math.abs(value) < 1e12 ? Math.round(value * scale) / scale : value
  const text = rounded.toFixed(places).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}

function mixed(steps: number, denominator: number): string {
  const whole = Math.floor(steps / denominator)
  let over = steps % denominator
  let under = denominator
  while (over > 0 && over % 2 === 0) {
    over /= 2
    under /= 2
  }
  if (over === 0) return `${whole}`
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`
}
