import type { Units } from '../../length/index.ts'

/**
 * What an empty field means, from the sentence of the schema: `Default 50 mm, or 2 in.` is `default 50 mm` in a
 * project in mm. Empty where the sentence names no default.
 */
export function defaultWords(about: string, units: Units): string {
  const said = /\bDefault(?: there)?:? (.+?)\.?$/.exec(about)?.[1]
  if (said === undefined) return ''
  return `default ${inUnits(said, units)}`
}

const INCHES = String.raw`[\d./]+(?: [\d/]+)? in`
const OR_INCHES = new RegExp(`^([\\d.]+ mm)(?:, or | \\()(${INCHES})\\)?$`)
const PAIRS = /^\[(.+)\], or \[(.+)\] in inches$/

function inUnits(said: string, units: Units): string {
  const both = OR_INCHES.exec(said) ?? PAIRS.exec(said)
  if (both !== null) return (units === 'in' ? both[2] : both[1]) ?? said
  // Within a longer sentence, the inches behind each length stand in brackets.
  return said.replace(/([\d.]+ mm) \(([^)]+ in)\)/g, units === 'in' ? '$2' : '$1')
}
