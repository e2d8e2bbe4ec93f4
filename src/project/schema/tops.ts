import * as z from 'zod'
import { KINDS } from './kinds.ts'
import { group, hardwareOf, kind, length, lengthOrCentred, optional, required, stockName } from './parts.ts'

/** Kinds of hardware that hold a top. */
const TOP_FASTENERS = ['through screw', 'pocket screw'] as const

const overhang = z.union(
  [
    length,
    group({
      left: optional(length, 'Beyond the left side. Default 0.'),
      right: optional(length, 'Beyond the right side. Default 0.'),
      front: optional(length, "Beyond the module's front plane, fronts included. Default 0."),
      back: optional(length, "Beyond the module's rear. Default 0."),
    }).meta({ id: 'overhang' }),
  ],
  kind('overhang'),
)

const fix = z.union(
  [
    hardwareOf(TOP_FASTENERS, KINDS['top fix'].words, 'top fix'),
    group({
      fasten: optional(
        hardwareOf(TOP_FASTENERS, ['through screw', 'pocket screw']),
        'through screw, pocket screw, or a screw by name.',
      ),
      'end distance': optional(length, 'From the edges of the panel it goes through. Default 50 mm, or 2 in.'),
      spacing: optional(length, 'The longest distance between screws. Default 300 mm, or 12 in.'),
    }).meta({ id: 'top fix' }),
  ],
  kind('top fix'),
)

const worktopShape = {
  stock: required(stockName, 'The stock of the board.'),
  overhang: optional(overhang, 'How far it stands out: a length for all edges, or one for each. Default 0.'),
  fix: optional(
    fix,
    'through screw (from below, through top or rails; the longest that leaves 3 mm), pocket screw (through the sides), a screw by name, none, or a group of keys. Default through screw, or pocket screw where the carcase has no top.',
  ),
}

/** A worktop of a row. */
export const worktopGroup = group(worktopShape)

/** A worktop of a module. */
export const worktopSchema = z.union([z.literal('none', kind('worktop')), worktopGroup], kind('worktop'))

const insert = group({
  width: required(length, 'Of the plate, left to right.'),
  depth: required(length, 'Of the plate, front to back.'),
  'corner radius': required(length, 'Of the corners of the plate.'),
  'from front': optional(
    lengthOrCentred,
    "From the top's front edge to the plate's front edge, or centred. Default centred.",
  ),
  'from left': optional(
    lengthOrCentred,
    "From the top's left edge to the plate's left edge, or centred. Default centred.",
  ),
  play: optional(length, 'Space between the plate and the wood, each side. Default 0.25 mm.'),
  ledge: required(
    group({
      width: required(length, 'Width of the shelf of wood that the plate lies on.'),
      depth: required(length, 'How deep it lies: the thickness of the plate.'),
    }),
    'The shelf of wood that the plate lies on.',
  ),
  'levelling screws': optional(
    hardwareOf(['levelling screw'], ['none']),
    'The levelling screw by name, or none. Default levelling screw M6, or levelling screw #10-24.',
  ),
})

const slot = group({
  kind: required(z.enum(['fence', 'track'], kind('kind of slot')), 'fence, or track for a T-track.'),
  along: required(z.enum(['width', 'depth'], kind('along')), 'width: from left to right; depth: from front to back.'),
  width: required(length, 'Of the slot, across.'),
  depth: required(length, 'How deep it is cut.'),
  'from front': optional(
    length,
    "Along the width: from the top's front edge to the near wall. Along the depth: where it begins. Default there 0.",
  ),
  'from left': optional(
    length,
    "Along the depth: from the top's left edge to the near wall. Along the width: where it begins. Default there 0.",
  ),
  length: optional(length, 'From where it begins. Default: to the far edge.'),
})

const port = group({
  diameter: required(length, 'Of the hole.'),
  'from left': optional(
    lengthOrCentred,
    'From the inside of the left side to its centre, or centred. Default centred.',
  ),
  'from bottom': optional(lengthOrCentred, "From the chamber's floor to its centre, or centred. Default centred."),
})

export const machineTopSchema = group({
  ...worktopShape,
  insert: optional(insert, 'A plate let into the top flush, on a ledge.'),
  slots: optional(z.array(slot, kind('slots')).max(50, kind('slots')), 'Grooves in the upper face.'),
  chamber: optional(
    group({
      height: required(length, "From the carcase's upper side down to the chamber's floor."),
      port: optional(port, 'A round hole in the back for dust extraction.'),
    }),
    'A closed space under the top, with a floor between the sides and a strip at the front.',
  ),
})
