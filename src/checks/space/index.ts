import type { Rule } from '../types.ts'
import { fastenersCross } from './fasteners-cross.ts'
import { screwThrough } from './screw-through.ts'

/** Panels and hardware against each other in three dimensions. */
export const space: Rule = {
  ids: ['screw-through', 'fasteners-cross'],
  check: (subject) => [...screwThrough(subject), ...fastenersCross(subject)],
}
