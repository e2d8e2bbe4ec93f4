import * as z from 'zod'
import { jointSchema } from './carcase.ts'
import { coverSchema, laySchema, revealSchema } from './front.ts'
import { massSchema } from './loads.ts'
import { group, hardwareOf, kind, length, optional, required, stockName, stockNameOr } from './parts.ts'

/** Drawers in one stack, at most. */
const MOST_DRAWERS = 20

const count = (key: 'drawers' | 'stack') =>
  z.number(kind(key)).int(kind(key)).min(1, kind(key)).max(MOST_DRAWERS, kind(key))

const place = group({
  height: optional(
    length,
    "Height of the drawer's front; of an inner drawer's place in the opening. Leave it out for a share.",
  ),
  share: optional(
    z.number(kind('share')).min(0.001, kind('share')).max(1000, kind('share')),
    'Its share of what the drawers with a height leave. Default 1.',
  ),
})

const box = group({
  stock: optional(stockName, "The stock of the box's sides, front and back. Default: the module's stock."),
  'bottom stock': optional(stockName, "The stock of the bottom. Default: the box's stock."),
  bottom: optional(
    z.enum(['grooved', 'applied'], kind('drawer bottom')),
    'grooved: let into all four sides; applied: screwed on from below. Default grooved.',
  ),
  'groove depth': optional(
    length,
    'Grooved: depth of the groove. Default 6 mm (1/4 in), and never more than half the side.',
  ),
  'groove height': optional(
    length,
    'Grooved: from the lower edge of the sides to the groove. Default 10 mm, or 3/8 in.',
  ),
  joint: optional(jointSchema, 'How the corners are fastened. Default through screw.'),
  'clearance above': optional(
    length,
    "Between the box and the upper end of the drawer's place. Default 10 mm, or 3/8 in.",
  ),
  'clearance below': optional(length, 'Between the box and the lower end. Default 12 mm, or 1/2 in.'),
  behind: optional(length, 'Free depth behind the slide. Default 10 mm, or 3/8 in.'),
})

const pull = z.union(
  [
    z.literal('none', kind('pull')),
    group({
      item: required(hardwareOf(['pull']), 'The pull by name: pull 128.'),
      'edge distance': optional(
        length,
        'From the upper edge of the front to the line of the holes. Default: the middle of the front.',
      ),
    }),
  ],
  kind('pull'),
)

const fronts = z.union(
  [
    z.literal('none', kind('drawer fronts')),
    group({
      lay: optional(laySchema, 'overlay: in front of the carcase; inset: inside the opening. Default overlay.'),
      cover: optional(coverSchema, 'How much of the panels around the opening is covered, as a front has it.'),
      stock: optional(stockName, "The stock of the fronts. Default: the module's stock."),
      reveal: optional(revealSchema, 'Overlay: what is left free at the outside. Default 1.5 mm, or 1/16 in.'),
      gap: optional(length, 'Between two fronts, and over a shared panel. Default 3 mm, or 1/8 in.'),
      'inset gap': optional(length, 'Inset: the gap all round. Default 2 mm, or 3/32 in.'),
      pull: optional(pull, 'The pull of each drawer, in the middle of its width, or none. Default none.'),
    }),
  ],
  kind('drawer fronts'),
)

export const drawersSchema = z.union(
  [
    count('drawers'),
    group({
      stack: required(
        z.union(
          [count('stack'), z.array(place, kind('stack')).min(1, kind('stack')).max(MOST_DRAWERS, kind('stack'))],
          kind('stack'),
        ),
        'How many drawers of one height, or a list from the top down with a height or share for each.',
      ),
      slide: optional(
        hardwareOf(['drawer slide'], ['auto']),
        'The slide by name, or auto for the longest that fits. Default auto.',
      ),
      load: optional(massSchema, "What each of them carries: 15 kg. Default: by the module's loads."),
      box: optional(box, 'The drawer boxes.'),
      fronts: optional(fronts, 'The fronts of the drawers, or none for inner drawers.'),
      packing: optional(
        stockNameOr('auto', 'none'),
        "Behind a door: the stock of the strips that bring the slides clear of its hinges, auto for the module's stock, or none. Default auto.",
      ),
    }),
  ],
  kind('drawers'),
)
