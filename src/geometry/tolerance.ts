/** Two lengths nearer than this are the same length; float noise, mm. Never a workshop allowance. */
export const NOISE_MM = 1e-6

/** True when two lengths in mm differ by no more than float noise. */
export function same(a: number, b: number): boolean {
  return Math.abs(a - b) <= NOISE_MM
}

/** Rounded to 0.001 mm, the step in which every output is written; never `-0`. Throws on NaN and infinities. */
export function roundMm(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite length: ${value}`)
  const rounded = Math.round(value * 1000) / 1000
  return rounded === 0 ? 0 : rounded
}
