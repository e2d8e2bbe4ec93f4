import { MM_PER_INCH, type Units } from './units.ts'

/** A length in mm, or what should have been written instead. */
export type ParsedLength =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly expected: string }

export interface ParseOptions {
  /** A minus sign is allowed. */
  readonly negative?: boolean
}

const USUAL = 'a length such as 600, 600 mm, 23 7/16 in'
const COMMA = 'a length with a decimal point, such as 1.5'
const FRACTION_OF_MM = 'a decimal number such as 0.75, or a fraction of an inch such as 3/4 in'
const IMPROPER = 'a fraction smaller than one after the whole number, such as 23 7/16 in'
const NO_MINUS = 'a length of 0 or more'
const NO_ZERO_BELOW = 'a fraction with a number above 0 below the line, such as 3/4 in'

/** Longest text that is looked at; no length needs more. */
const LONGEST = 60

const WORDS: Readonly<Record<string, 'mm' | 'cm' | 'm' | 'in' | 'ft'>> = {
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  "''": 'in',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  "'": 'ft',
}

const AMOUNT = String.raw`(\d+\.?\d*|\.\d+)(?:(?:\s+|\s*-\s*)(\d+)\s*/\s*(\d+))?|(\d+)\s*/\s*(\d+)`
const UNIT = `[a-z]+|''|["']`
const ONE = new RegExp(`^(?:${AMOUNT})\\s*(${UNIT})?$`)
const FEET_AND_INCHES = new RegExp(`^(\\d+)\\s*(ft|foot|feet|')\\s*-?\\s*(?:${AMOUNT})\\s*(in|inch|inches|''|")$`)

const fail = (expected: string): ParsedLength => ({ ok: false, expected })

/**
 * Reads a length. A bare number is in `units`; a text may carry its own unit (mm, cm, m, in, ft, the inch and foot
 * marks) and inch fractions: `23 7/16"`, `23-7/16 in`, `3/4 in`, `1' 6 1/2"`. One inch is 25.4 mm exactly.
 * A bare fraction counts as inches in an inch project only: in millimetres it is more likely a forgotten inch mark.
 * Not ok: no length, an infinite one, one below zero (unless `negative`), a decimal comma; `expected` says in plain
 * words what would be right.
 */
export function parseLength(input: number | string, units: Units, options: ParseOptions = {}): ParsedLength {
  if (typeof input === 'number') return signed(finite(units === 'in' ? input * MM_PER_INCH : input), options)
  if (input.length > LONGEST) return fail(USUAL)
  const text = tidy(input)
  const minus = text.startsWith('-')
  const parsed = parseText(minus ? text.slice(1).trimStart() : text, units)
  if (!parsed.ok || !minus) return parsed
  return signed({ ok: true, mm: parsed.mm === 0 ? 0 : -parsed.mm }, options)
}

function signed(parsed: ParsedLength, options: ParseOptions): ParsedLength {
  if (parsed.ok && parsed.mm < 0 && options.negative !== true) return fail(NO_MINUS)
  return parsed.ok && parsed.mm === 0 ? { ok: true, mm: 0 } : parsed
}

function finite(mm: number): ParsedLength {
  return Number.isFinite(mm) ? { ok: true, mm } : fail(USUAL)
}

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/** The same text in lower case, with typewriter marks and fractions in place of typographic ones. */
function tidy(input: string): string {
  return input
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign] ?? ''}`)
    .replace(/[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/⁄/g, '/')
    .replace(/[−–]/g, '-')
    .trim()
    .toLowerCase()
}

function parseText(text: string, units: Units): ParsedLength {
  if (/\d\s*,\s*\d/.test(text)) return fail(COMMA)
  const both = FEET_AND_INCHES.exec(text)
  if (both) {
    const inches = amount(both.slice(3, 8))
    if (typeof inches === 'string') return fail(inches)
    return finite((Number(both[1]) * 12 + inches) * MM_PER_INCH)
  }
  const one = ONE.exec(text)
  if (!one) return fail(USUAL)
  const word = one[6] === undefined ? units : Object.hasOwn(WORDS, one[6]) ? WORDS[one[6]] : undefined
  if (word === undefined) return fail(USUAL)
  const fraction = one[3] !== undefined || one[5] !== undefined
  if (word === 'in' || word === 'ft') {
    const value = amount(one.slice(1, 6))
    if (typeof value === 'string') return fail(value)
    return finite((word === 'ft' ? value * 12 : value) * MM_PER_INCH)
  }
  if (fraction) return fail(FRACTION_OF_MM)
  // Scaling by the exponent keeps 1.1 cm at 11 mm; 1.1 * 10 is not 11 in doubles.
  const power = { mm: 'e0', cm: 'e1', m: 'e3' }[word]
  return finite(Number(`${one[1] ?? ''}${power}`))
}

/** Value of the groups of AMOUNT: decimal or whole, its fraction, or a fraction alone; a text when it cannot be. */
function amount(groups: readonly (string | undefined)[]): number | string {
  const [whole, over, under, soleOver, soleUnder] = groups
  if (soleOver !== undefined && soleUnder !== undefined) {
    return Number(soleUnder) === 0 ? NO_ZERO_BELOW : Number(soleOver) / Number(soleUnder)
  }
  if (over === undefined || under === undefined) return Number(whole)
  if (Number(under) === 0) return NO_ZERO_BELOW
  if (Number(over) >= Number(under) || whole?.includes('.')) return IMPROPER
  return Number(whole) + Number(over) / Number(under)
}
