import * as z from 'zod'
import { group, kind, length, optional, required } from './parts.ts'

export const BIT_KINDS = ['twist', 'brad point', 'forstner', 'countersink', 'step', 'straight', 'end mill'] as const

const bit = group(
  {
    kind: required(
      z.enum(BIT_KINDS, kind('kind of bit')),
      'twist, brad point, forstner (flat holes, hinge cups), countersink, step (pocket holes), straight (router bit), end mill (router bit of a machine, which mills wider holes, too).',
    ),
    diameter: required(length, 'Of a step bit its wide part, of a countersink its rim.'),
    depth: optional(length, 'How deep it bores or cuts. Default: deep enough for all.'),
    angle: optional(
      z.number(kind('bit angle')).min(30, kind('bit angle')).max(150, kind('bit angle')),
      'Of a countersink, in degrees. Default 90, or 82 in inches.',
    ),
  },
  'bit',
)

export const bitsSchema = z.array(bit, kind('bits')).min(1, kind('bits')).max(200, kind('bits'))
