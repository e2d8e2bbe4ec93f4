import * as z from 'zod'
import { jointSchema } from './carcase.ts'
import { drawersSchema } from './drawers.ts'
import { frontSchema } from './front.ts'
import { massSchema } from './loads.ts'
import { group, hardwareOf, kind, length, optional, required, stockName } from './parts.ts'

const pinsSchema = group({
  item: optional(hardwareOf(['shelf pin']), 'The shelf pin by name. Default pin 5, or pin 1/4 in.'),
  pitch: optional(
    length,
    'Distance from hole to hole. Default 32 mm; 1 in in an inch project, unless the pin is a 5 mm one.',
  ),
  datum: optional(
    length,
    "Height of the first hole above the lower end of the module's sides; the others stand whole pitches from it. Default 0.",
  ),
  'front setback': optional(
    length,
    'From the front of the opening to the front column. Default 37 mm, or 1 1/2 in for pin 1/4 in.',
  ),
  'rear setback': optional(length, 'From the inside of the back to the rear column. Default as the front setback.'),
  'keep clear': optional(
    length,
    'No hole nearer than this to the fixed panel above or below. Default 64 mm, or 2 1/2 in.',
  ),
  'both faces': optional(
    z.enum(['share', 'stagger'], kind('both faces')),
    'On a partition with pins on both faces: share one through hole, or stagger the rows by half a pitch. Default share.',
  ),
})

const count = z.number(kind('count')).int(kind('count')).min(1, kind('count')).max(100, kind('count'))

const looseShelves = z.union(
  [
    z
      .number(kind('loose shelves'))
      .int(kind('loose shelves'))
      .min(1, kind('loose shelves'))
      .max(100, kind('loose shelves')),
    group({
      count: required(count, 'How many loose shelves.'),
      stock: optional(stockName, "The stock of the shelves. Default: the module's stock."),
      clearance: optional(length, 'Space at each end of a shelf. Default 1.2 mm.'),
      'front setback': optional(
        length,
        "From the front of the opening to the shelf's front edge. Default 5 mm (1/4 in); behind a front 20 mm (3/4 in).",
      ),
      'rear gap': optional(length, 'Between the shelf and the back. Default 2 mm.'),
      load: optional(massSchema, "What each of them carries: 40 kg. Default: by the module's loads."),
      pins: optional(pinsSchema, 'The rows of holes that the shelves stand on.'),
    }),
  ],
  kind('loose shelves'),
)

const dividers = group({
  stock: optional(stockName, "The stock of the panels between the bays. Default: the module's stock."),
  joint: optional(jointSchema, "How they are fastened. Default: the carcase's joint."),
})

/** An opening, again and again: recursive by getters, as zod 4 has it. */
export const baySchema = group({
  size: optional(length, 'Clear width (side by side) or height (stacked) of this bay. Leave it out for a share.'),
  share: optional(
    z.number(kind('share')).min(0.001, kind('share')).max(1000, kind('share')),
    'Its share of what the sized bays leave, against the shares of the others. Default 1.',
  ),
  get 'side by side'() {
    return optional(bays, 'Bays from the left, with an upright partition between each two.')
  },
  get stacked() {
    return optional(bays, 'Bays from the top down, with a fixed shelf between each two.')
  },
  dividers: optional(dividers, 'The partitions or fixed shelves between the bays.'),
  'loose shelves': optional(looseShelves, 'Shelves on pins: a number, or a group of keys that says more.'),
  drawers: optional(drawersSchema, 'Drawers on side-mounted slides: a number, or a group of keys that says more.'),
  front: optional(frontSchema, 'A door, a pair of doors, a flap or a fixed panel over this opening.'),
}).meta({ id: 'bay' })

const bays: z.ZodArray<typeof baySchema> = z.lazy(() =>
  z.array(baySchema, kind('bays')).min(2, kind('bays')).max(200, kind('bays')),
) as never
