import * as z from 'zod'
import { group, kind, optional } from './parts.ts'

const onArea = z.union([z.number(), z.string()], kind('load on an area'))
/** A number of kg, or a text with its unit. */
export const massSchema = z.union([z.number(), z.string()], kind('load'))

export const loadsSchema = group(
  {
    'on a shelf': optional(
      onArea,
      'On each m² of the shelf that is loaded most; its sag and its pins are judged by it. Default 195 kg/m2 (40 lb/ft2).',
    ),
    'shelf at most': optional(massSchema, 'What lies on one shelf, at most. Default 90.7 kg (200 lb).'),
    'on all shelves': optional(
      onArea,
      'On each m² of all shelves and the bottom at once; casters, feet and tipping are judged by it. Default 73 kg/m2 (15 lb/ft2).',
    ),
    'in a drawer': optional(onArea, "On each m² of a drawer's bottom. Default 73 kg/m2 (15 lb/ft2)."),
    'on the top': optional(
      massSchema,
      'What stands on the top, all in all. Default 40 kg, or 10 kg on a top higher than 1200 mm.',
    ),
  },
  'loads',
)
