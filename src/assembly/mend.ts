import { NOISE_MM } from '../geometry/index.ts'

/** A length that a definition takes, rounded so that what must be at least so long is: `12.3 mm`. */
export const atLeast = (mm: number): string => `${Math.ceil((mm - NOISE_MM) * 10) / 10} mm`

/** The same of what must be at most so long. */
export const atMost = (mm: number): string => `${Math.floor((mm + NOISE_MM) * 10) / 10} mm`

/** A panel in a sentence: `the left side`, but `fixed shelf 1`, which is one by its number. */
export const inWords = ({ name }: { readonly name: string }): string => (/\d$/.test(name) ? name : `the ${name}`)
