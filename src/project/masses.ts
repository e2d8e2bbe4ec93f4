/** A pound, exactly, kg; and a pound on each square foot, kg/m² (a foot is 0.3048 m exactly). */
export const KG_PER_POUND = 0.45359237
export const KG_M2_PER_PSF = KG_PER_POUND / 0.3048 ** 2

/** Masses and loads above this are a slip of the pen, kg or kg/m². */
const MOST = 10_000
/** Longest text that is looked at. */
const LONGEST = 40

const TEXT = /^(\d+\.?\d*|\.\d+)\s*([a-z/²2]+)?$/

const MASSES: Readonly<Record<string, number>> = { kg: 1, lb: KG_PER_POUND, lbs: KG_PER_POUND }
const LOADS: Readonly<Record<string, number>> = {
  'kg/m²': 1,
  'kg/m2': 1,
  'lb/ft²': KG_M2_PER_PSF,
  'lb/ft2': KG_M2_PER_PSF,
  'lbs/ft2': KG_M2_PER_PSF,
}

/** A mass in kg: a bare number of kg in every project, or a text such as `40 kg`, `90 lb`; `undefined` for none. */
export const parseMass = (input: number | string): number | undefined => parse(input, MASSES)

/** A load in kg/m²: a bare number, or a text such as `195 kg/m2`, `40 lb/ft2`; `undefined` for none. */
export const parseAreaLoad = (input: number | string): number | undefined => parse(input, LOADS)

function parse(input: number | string, units: Readonly<Record<string, number>>): number | undefined {
  if (typeof input === 'number') return inRange(input)
  const found = input.length > LONGEST ? null : TEXT.exec(input.trim().toLowerCase())
  if (found === null) return undefined
  const [, digits, unit] = found
  if (unit === undefined) return inRange(Number(digits))
  return Object.hasOwn(units, unit) ? inRange(Number(digits) * (units[unit] ?? 1)) : undefined
}

const inRange = (value: number): number | undefined =>
  Number.isFinite(value) && value >= 0 && value <= MOST ? value : undefined
