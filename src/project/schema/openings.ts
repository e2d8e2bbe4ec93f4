import * as z from 'zod'
import { group, kind, length, name, optional, required } from './parts.ts'

const distance = z.union([z.number(), z.string()], kind('length or centred'))

const from = z.union(
  [
    z.literal('centred', kind('from')),
    group({
      left: optional(distance, 'From the left edge to the middle of the shape, or: centred.'),
      right: optional(distance, 'From the right edge.'),
      front: optional(distance, 'From the front edge.'),
      back: optional(distance, 'From the back edge.'),
      top: optional(distance, 'From the top edge.'),
      bottom: optional(distance, 'From the bottom edge.'),
    }),
  ],
  kind('from'),
)

const openingSchema = group(
  {
    panel: required(name, 'Which panel of this module, as drawings name it: left side, back, door, shelf 1.'),
    shape: required(
      z.enum(['round', 'slot', 'rectangle', 'path'], kind('shape')),
      'round, slot (with round ends), rectangle, or path (drawn in SVG).',
    ),
    diameter: optional(length, 'Of a round opening.'),
    length: optional(length, 'Of a slot, from end to end.'),
    width: optional(length, 'Of a slot, across it; of a rectangle, from left to right (from front to back on a side).'),
    height: optional(length, 'Of a rectangle: from bottom to top, or from front to back where the panel lies level.'),
    'corner radius': optional(length, 'Of a rectangle. Default 0.'),
    svg: optional(z.string(kind('svg')).min(1, kind('svg')), 'The path: an SVG document, or the d of one path.'),
    file: optional(z.string(kind('file')).min(1, kind('file')), 'An SVG file beside this definition, in place of svg.'),
    unit: optional(
      z.enum(['mm', 'in', 'px'], kind('svg unit')),
      'Of the numbers of the path. Default: as the document says, else px, 96 to the inch.',
    ),
    scale: optional(
      z.number(kind('scale')).min(0.0001, kind('scale')).max(10_000, kind('scale')),
      'How many times larger the path is cut than drawn. Default 1.',
    ),
    from: required(from, 'Where the middle of the shape is: from two edges that meet, or: centred.'),
    turn: optional(
      z.literal([0, 90], kind('turn')),
      'A quarter turn to the left, as one looks at the panel. Default 0.',
    ),
    depth: optional(
      z.union([z.number(), z.string()], kind('length or through')),
      'How deep, or: through. Default through.',
    ),
    face: optional(
      z.enum(
        ['inside', 'outside', 'upper face', 'underside', 'hidden face', 'show face', 'left face', 'right face'],
        kind('face'),
      ),
      'The face that a recess is cut from, as drawings name it; a path is drawn as one looks at it.',
    ),
    for: optional(
      z.string(kind('text')).min(1, kind('text')).max(200, kind('short text')),
      'What for. Default opening.',
    ),
  },
  'opening',
)

export const openingsSchema = z.array(openingSchema, kind('openings')).max(200, kind('openings'))
