import { formatInch, formatMm, MM_PER_INCH } from '../length/index.ts'
import type { Project } from '../project/index.ts'

/** A length as a person would type it, no less (`up`) or no more (`down`) than asked: in tenths of a millimetre or 1/64 in. */
export function typedLength(mm: number, units: Project['units'], way: 'up' | 'down'): string {
  const steps = units === 'mm' ? 10 : 64 / MM_PER_INCH
  // Float noise does not make it a step more.
  const noise = way === 'up' ? -NOISE_STEPS : NOISE_STEPS
  const rounded = (way === 'up' ? Math.ceil(mm * steps + noise) : Math.floor(mm * steps + noise)) / steps
  return units === 'mm' ? `${formatMm(rounded)} mm` : formatInch(rounded)
}

/** Shares of a step. */
const NOISE_STEPS = 1e-4
