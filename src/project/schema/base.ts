import * as z from 'zod'
import { jointSchema } from './carcase.ts'
import { group, hardware, hardwareOf, kind, length, lengthOrAuto, optional, required, stockName } from './parts.ts'

const plinth = group({
  height: required(length, 'From the floor to the underside of the carcase.'),
  stock: optional(stockName, "The stock of its four boards. Default: the module's stock."),
  'front recess': optional(
    length,
    'From the front of the footprint to the plinth: room for toes. Default 50 mm, or 2 in.',
  ),
  'side recess': optional(length, 'From both sides of the footprint to the plinth. Default 0.'),
  'back recess': optional(
    length,
    'From the back of the footprint to the plinth. Default: what the back takes and 20 mm (3/4 in).',
  ),
  joint: optional(jointSchema, "How its boards are fastened to each other. Default: the carcase's joint."),
  fix: optional(jointSchema, 'How the bottom is fixed to it, from inside the carcase. Default through screw.'),
})

export const baseSchema = z.union(
  [
    z.literal('none', kind('base')),
    group({
      casters: optional(
        hardwareOf(['caster']),
        'The caster by name: caster 75; four of them, or two beside two fixed ones. Default none.',
      ),
      'fixed casters': optional(
        hardware,
        'The fixed caster of two of the four by name: fixed caster 75. Default none.',
      ),
      'fixed at': optional(
        z.enum(['left', 'right', 'back'], kind('fixed end')),
        'Where the two fixed casters stand: at the left or right end, rolling sideways, or at the back, rolling to the front.',
      ),
      plinth: optional(plinth, 'A frame of four boards under the bottom.'),
      feet: optional(
        hardwareOf(['levelling foot']),
        'The levelling foot by name: foot M8; four, and two more for each further 900 mm (36 in). Default none.',
      ),
      inset: optional(
        lengthOrAuto,
        'From the edges of the footprint to the king pin, or auto: swivel radius and footprint gap; or to the spindle of a foot, 70 mm (2 3/4 in). Default auto.',
      ),
      'footprint gap': optional(
        length,
        'Kept between the circle that the caster swivels in and the edge of the footprint. Default 5 mm.',
      ),
    }),
  ],
  kind('base'),
)
