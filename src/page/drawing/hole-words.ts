import type { Units } from '../../length/index.ts'
import type { BothUnits, HoleFacts } from '../scene/types.ts'

export const inUnits = ({ mm, inch }: BothUnits, units: Units): string => (units === 'in' ? inch : mm)

/** What a screen reader reads of a hole: `shelf pin 5 deep 13, 37 from front, 96 from bottom`. */
export function holeWords({ purposes, tool, from, surface, partners }: HoleFacts, units: Units): string {
  const places = from.map((distance) => `${inUnits(distance, units)} from ${distance.edge}`)
  const count = partners.filter(({ relation }) => relation === 'mate').length
  const mates = count === 0 ? [] : [count === 1 ? '1 partner' : `${count} partners`]
  return [`${purposes.join(' and ')} ${inUnits(tool, units)}`, ...places, surface, ...mates].join(', ')
}
