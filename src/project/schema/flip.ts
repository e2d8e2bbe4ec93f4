import * as z from 'zod'
import { group, hardwareOf, kind, length, optional, required, stockName } from './parts.ts'

const offCentre = group({
  left: optional(length, 'To the left.'),
  right: optional(length, 'To the right.'),
  front: optional(length, 'To the front.'),
  rear: optional(length, 'To the rear.'),
}).meta({ id: 'off centre' })

const machine = (key: 'upper' | 'lower') =>
  group(
    {
      name: optional(z.string(kind('text')).max(200, kind('short text')), `What it is called. Default ${key} machine.`),
      width: required(length, 'Width of the box that holds all of it, handles and cables too.'),
      depth: required(length, 'Its depth, front to back, while it is on top.'),
      height: required(length, 'Its height above the platform.'),
      mass: optional(
        z.number(kind('mass')).positive(kind('mass')).max(10_000, kind('mass')),
        'In kg, as its manual says.',
      ),
      'off centre': optional(
        offCentre,
        'How far the middle of the box stands from the middle of the platform, as one sees it while it is on top. Default 0.',
      ),
    },
    'machine',
  )

export const flipSchema = group(
  {
    skin: optional(stockName, "The stock of the two skins. Default: the module's stock."),
    core: optional(
      stockName,
      "The stock of the core between them, thicker than the axle. Default: the module's stock.",
    ),
    axle: optional(
      hardwareOf(['axle'], ['auto']),
      'The axle by name, or auto: the thickest bar that the core takes. Default auto.',
    ),
    screws: optional(
      hardwareOf(['through screw', 'one-piece screw'], ['auto']),
      'The screw that holds the skins to the core, or auto: the longest that stays inside it. Default auto.',
    ),
    'locking bolts': optional(
      z.union(
        [
          hardwareOf(['locking bolt'], [], 'locking bolts'),
          group({
            item: optional(
              hardwareOf(['locking bolt']),
              'The locking bolt by name. Default locking bolt M8, or locking bolt 5/16 in.',
            ),
            'each side': optional(
              z.union([z.literal(1), z.literal(2)], kind('locking bolts each side')),
              '1: at the front; 2: front and rear. Default 2.',
            ),
            'edge distance': optional(
              length,
              "From the platform's front and rear edges to the bolts. Default 50 mm, or 2 in.",
            ),
          }),
        ],
        kind('locking bolts'),
      ),
      'The bolts that hold the platform in both of its rest positions.',
    ),
    well: optional(
      z.union([z.number(), z.string()], kind('well')),
      "How far the sides stand above the carcase's top, or auto: what the platform and the machines need to turn. Default auto.",
    ),
    surface: optional(
      length,
      "The platform's upper face above the carcase's top. Default: level with the upper ends of the sides.",
    ),
    gap: optional(length, 'Between the platform and each side: the thickness of the washers. Default 3 mm, or 1/8 in.'),
    'front clearance': optional(length, 'From the front edges of the sides to the platform. Default 0.'),
    'rear clearance': optional(length, 'From the rear edges of the sides to the platform. Default 0.'),
    'turning clearance': optional(length, 'Kept free around all that turns. Default 10 mm, or 3/8 in.'),
    machines: optional(
      group(
        {
          upper: optional(machine('upper'), 'The machine on the upper face, as drawn.'),
          lower: optional(machine('lower'), 'The machine on the lower face, as drawn.'),
        },
        'machines',
      ),
      'The machines, each as the box that holds all of it.',
    ),
  },
  'flip-over top',
)
