import * as z from 'zod'
import { group, kind, length, name, optional, required } from './parts.ts'

const edge = z.enum(['front', 'back', 'left', 'right', 'top', 'bottom'], kind('lipped edge'))

const lipping = group({
  thickness: required(length, 'Of the strip.'),
  edges: required(
    z.union(
      [z.literal('all', kind('lipped edges')), z.array(edge, kind('lipped edges')).min(1, kind('lipped edges'))],
      kind('lipped edges'),
    ),
    'Which edges, by the way they look in the module: all, or a list such as [front, top].',
  ),
  on: required(
    z.array(name, kind('lipped panels')).min(1, kind('lipped panels')),
    'Which panels: names (left side, door, shelf 1), or sides, shelves, partitions, doors, fronts, rails, stretchers, drawer boxes, plinth, carcase, all.',
  ),
  'take off from': optional(
    length,
    'From this thickness on the strip is taken off the cut size; a thinner one is lost in sanding. Default 0.6 mm.',
  ),
})

export const lippingSchema = z.array(lipping, kind('lipping')).min(1, kind('lipping')).max(50, kind('lipping'))
