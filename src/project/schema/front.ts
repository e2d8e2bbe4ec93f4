import * as z from 'zod'
import { jointSchema } from './carcase.ts'
import { group, hardwareOf, kind, length, optional, required, stockName } from './parts.ts'

const edges = <T extends z.ZodType>(schema: T, what: string) =>
  group({
    left: optional(schema, `${what} the left edge.`),
    right: optional(schema, `${what} the right edge.`),
    top: optional(schema, `${what} the top edge.`),
    bottom: optional(schema, `${what} the bottom edge.`),
  })

/** Where a front lies; of doors and of drawers. */
export const laySchema = z.enum(['overlay', 'inset'], kind('lay')).meta({ id: 'lay' })

const coverWord = z.enum(['auto', 'full', 'half'], kind('cover of an edge')).meta({ id: 'cover of an edge' })

export const coverSchema = z.union(
  [
    z.enum(['auto', 'full', 'half'], kind('cover')).meta({ id: 'cover of all edges' }),
    edges(coverWord, 'How much is covered at').meta({ id: 'cover' }),
  ],
  kind('cover'),
)

export const revealSchema = z.union([length, edges(length, 'Left free at').meta({ id: 'reveal' })], kind('reveal'))

const pull = z.union(
  [
    z.literal('none', kind('pull')),
    group({
      item: required(hardwareOf(['pull']), 'The pull by name: pull 128.'),
      'edge distance': optional(
        length,
        'From the edge away from the hinges to the line of the holes. Default 40 mm, or 1 1/2 in.',
      ),
      end: optional(
        z.enum(['top', 'bottom', 'left', 'right', 'middle'], kind('end of a door')),
        'The end of the door (top, bottom) or flap (left, right) that the near hole is measured from; middle centres the pull. Default top; of a flap middle.',
      ),
      'end distance': optional(length, 'From that end to the near hole. Default 60 mm, or 2 1/2 in.'),
    }),
  ],
  kind('pull'),
)

export const frontSchema = group(
  {
    kind: required(
      z.enum(['door', 'pair', 'flap', 'fixed'], kind('kind of front')),
      'door, pair for two doors that meet in the middle, flap, or fixed for a panel that does not open.',
    ),
    hang: optional(
      z.enum(['left', 'right', 'top', 'bottom'], kind('hang')),
      'The edge with the hinges: left or right of a door, top or bottom of a flap. Default left; of a flap top.',
    ),
    lay: optional(laySchema, 'overlay: in front of the carcase; inset: inside the opening. Default overlay.'),
    cover: optional(
      coverSchema,
      'How much of the panel behind an overlay front covers: full, half, or auto (half over a panel that another overlay front covers too, else full). Default auto.',
    ),
    stock: optional(stockName, "The stock of the front. Default: the module's stock."),
    reveal: optional(
      revealSchema,
      'Overlay: what is left free at the outside of the module. Default 1.5 mm, or 1/16 in.',
    ),
    gap: optional(
      length,
      'Between the two doors of a pair, and between fronts over a shared panel. Default 3 mm, or 1/8 in.',
    ),
    'inset gap': optional(length, 'Inset: the gap all round. Default 2 mm, or 3/32 in.'),
    hinge: optional(
      hardwareOf(['cup hinge'], ['auto']),
      'The hinge by name, or auto for the one that suits the lay. Default auto.',
    ),
    plate: optional(
      hardwareOf(['hinge plate'], ['auto']),
      "The hinge plate by name, which fixes its height, its line and its holes; or auto for the height of the hinge's own that suits. Default auto.",
    ),
    hinges: optional(
      z.union(
        [
          z.literal('auto', kind('hinges')),
          z.number(kind('hinges')).int(kind('hinges')).min(2, kind('hinges')).max(6, kind('hinges')),
          z.array(length, kind('hinges')).min(2, kind('hinges')).max(6, kind('hinges')),
        ],
        kind('hinges'),
      ),
      "How many hinges a door or flap gets, or a list of distances of the cup centres from the door's lower or the flap's left end. Default auto: by height (width of a flap) and weight.",
    ),
    'hinge end': optional(length, "From the door's ends to the centres of the outermost cups, at most. Default 80 mm."),
    pull: optional(pull, 'The pull, or none. Default none.'),
    stay: optional(
      hardwareOf(['flap stay'], ['none', 'auto']),
      'What holds a flap open: none, a flap stay by name, or auto for the first that has room. Default auto.',
    ),
    stays: optional(
      z.enum(['auto', 'one', 'both'], kind('stays')),
      'On the left, on both sides, or auto: both on a flap over 600 mm wide. Default auto.',
    ),
    fix: optional(
      jointSchema,
      'How a fixed front is fastened: dowel, through screw, one-piece screw, or one of them with its distances. Default dowel.',
    ),
  },
  'front',
)
