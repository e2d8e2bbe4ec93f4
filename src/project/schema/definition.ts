import * as z from 'zod'
import { BOARD_KINDS } from '../boards.ts'
import { baseSchema } from './base.ts'
import { baySchema } from './bay.ts'
import { bitsSchema } from './bits.ts'
import { carcaseSchema } from './carcase.ts'
import { findingsSchema } from './findings.ts'
import { flipSchema } from './flip.ts'
import { levelSchema, standsSchema } from './floor.ts'
import { ownHardwareSchema, type RawOwnHardware } from './hardware.ts'
import { lippingSchema } from './lipping.ts'
import { loadsSchema } from './loads.ts'
import { openingsSchema } from './openings.ts'
import { outputsSchema } from './outputs.ts'
import {
  group,
  hardwareOf,
  kind,
  length,
  lengthOrFits,
  lengthOrSameAsWidth,
  moduleName,
  optional,
  required,
  stockName,
} from './parts.ts'
import { machineTopSchema, worktopGroup, worktopSchema } from './tops.ts'

const stockSchema = group({
  thickness: required(
    z.union(
      [length, z.array(length, kind('length or list')).min(1, kind('length or list')).max(100, kind('length or list'))],
      kind('length or list'),
    ),
    'What the callipers read, or a list of readings from several points of the sheet; never the nominal name.',
  ),
  sheet: optional(
    z.array(length, kind('sheet')).length(2, kind('sheet')),
    'Length and width of the whole sheet. Default [2440, 1220], or [96, 48] in inches.',
  ),
  grain: optional(z.enum(['along length', 'none'], kind('grain')), 'Where the grain runs. Default along length.'),
  'edge trim': optional(length, 'Taken off each factory edge before use. Default 10 mm, or 1/2 in.'),
  sheets: optional(
    z.number(kind('sheets')).int(kind('sheets')).min(1, kind('sheets')).max(1000, kind('sheets')),
    'How many whole sheets there are. Default: as many as are needed.',
  ),
  board: optional(
    z.enum(BOARD_KINDS, kind('board')),
    'What it is made of: gives the density, the stiffness and how much it creeps. Default: plywood of no kind in particular.',
  ),
  density: optional(
    z.number(kind('density')).positive(kind('density')).max(10_000, kind('density')),
    'In kg/m³. Default: that of the board, else 680.',
  ),
  stiffness: optional(
    z.number(kind('stiffness')).positive(kind('stiffness')).max(1_000_000, kind('stiffness')),
    'Modulus of elasticity in N/mm². Default: that of the board, else 7000.',
  ),
})

const moduleShape = {
  width: optional(lengthOrFits, 'Outside width, or: as large as fits. Every module needs one, here or under common.'),
  depth: optional(
    lengthOrSameAsWidth,
    'Outside depth, fronts and back included, or: same as width, as large as fits. Every module needs one, here or under common.',
  ),
  'carcase height': optional(
    lengthOrFits,
    'Height of the carcase alone, or: as large as fits. A module has this or the working height, here or under common.',
  ),
  'working height': optional(
    lengthOrFits,
    'Height of the upper side of the carcase, or of the top that lies on it, above the floor; base and top are taken off.',
  ),
  stock: optional(stockName, 'The stock of the carcase. Every module needs one, here or under common.'),
  carcase: optional(carcaseSchema, 'Which panel laps which, how they are fastened, and the back.'),
  base: optional(baseSchema, 'What the module stands on: none, casters, a plinth or levelling feet. Default none.'),
  lipping: optional(lippingSchema, 'Strips on the edges of panels, inside their finished sizes.'),
  loads: optional(
    loadsSchema,
    'What it is to carry, for the findings about loads. Default: what the trade reckons with.',
  ),
  worktop: optional(
    worktopSchema,
    'A board on the carcase, or none. The working height is then its upper face. Default none.',
  ),
}

const moduleSchema = group({
  ...moduleShape,
  inside: optional(baySchema, 'What is inside: one opening, split again and again. Default: empty.'),
  'flip-over top': optional(
    flipSchema,
    'A platform that turns on an axle between the raised sides, with a machine on either face. Default: none.',
  ),
  'machine top': optional(machineTopSchema, 'A worktop with a plate, slots and a chamber for a machine.'),
  openings: optional(
    openingsSchema,
    'Openings and recesses in its panels: round, slots, rectangles, paths. Default: none.',
  ),
})

const join = z.union(
  [
    z.enum(['none', 'bolted'], kind('join')),
    group({
      bolt: required(hardwareOf(['joining bolt']), 'The bolt by name: bolt M6.'),
      'end inset': optional(
        length,
        'From the upper and lower edge of the face that two neighbours share to the bolts. Default 64 mm, or 2 1/2 in.',
      ),
      'side inset': optional(length, 'From its front and rear edge. Default 96 mm, or 3 3/4 in.'),
    }),
  ],
  kind('join'),
)

const rowSchema = group({
  row: required(z.array(moduleName, kind('row')).min(1, kind('row')), 'Names of modules, from the left.'),
  stands: optional(standsSchema, 'Against which module of an earlier row the row stands. Default: by itself.'),
  level: optional(
    levelSchema,
    'What is level: floors, or tops, of the row and of what it stands against. Default floors.',
  ),
  join: optional(
    join,
    'How modules whose outer faces meet are joined: none, bolted, or a group of keys with bolt. Default none.',
  ),
  worktop: optional(worktopGroup, 'One board over the whole row.'),
})

/**
 * The shape of a definition. Names of stock, hardware and modules carry NAME_MARK here (see to-data.ts). Lengths are checked
 * later, when the units are known, and so is all that one value alone does not show.
 */
export const definitionSchema = group({
  storyrod: required(z.literal(1, kind('format version')), 'Version of this format: 1.'),
  title: optional(z.string(kind('text')).max(200, kind('short text')), 'What the project is called on the drawings.'),
  units: optional(z.enum(['mm', 'in'], kind('units')), 'The unit of bare numbers: mm or in. Default mm.'),
  'usual sizes': optional(
    z.enum(['mm', 'in'], kind('units')),
    "What holds where nothing is said: the sizes, gaps, fittings and paper of metric work (mm) or of inch work (in). Default: as the project's units.",
  ),
  stock: required(z.record(z.string(), stockSchema, kind('names')), 'Sheet goods, each under a name of your choice.'),
  hardware: optional(
    z.record(z.string(), ownHardwareSchema, kind('names')),
    "The project's own hardware, each under a name of your choice; the name of one in the catalogue changes that one.",
  ),
  common: optional(group(moduleShape), 'Keys of a module, used by each module that does not say otherwise.'),
  modules: required(z.record(z.string(), moduleSchema, kind('names')), 'The cabinets, each under its name.'),
  'floor plan': optional(
    z.array(rowSchema, kind('floor plan')),
    'Which modules stand beside each other. A module in no row stands alone.',
  ),
  kerf: optional(length, 'Width of a saw cut. Default 3.2 mm, or 1/8 in.'),
  fit: optional(
    group({
      step: optional(length, 'Sizes that are as large as fits are whole multiples of it. Default 1 mm, or 1/16 in.'),
      'at most': optional(length, 'They are no larger than this. Default 2400 mm, or 96 in.'),
    }),
    'Limits for sizes that are as large as fits.',
  ),
  findings: optional(
    findingsSchema,
    'Limits of the checks, and findings that are all right here, by the ids of the rules.',
  ),
  bits: optional(bitsSchema, 'The drill and router bits in the shop. Default: not looked at.'),
  outputs: optional(outputsSchema, 'Paper and DXF settings.'),
})

export type RawDefinition = z.output<typeof definitionSchema>
export type RawStock = RawDefinition['stock'][string]
export type { RawOwnHardware }
export type RawModule = RawDefinition['modules'][string]
export type RawCommon = NonNullable<RawDefinition['common']>
export type RawCarcase = NonNullable<RawModule['carcase']>
export type RawBack = Exclude<NonNullable<RawCarcase['back']>, string>
export type RawStands = NonNullable<RawRow['stands']>
export type RawJoint = NonNullable<RawCarcase['joint']>
export type RawBay = NonNullable<RawModule['inside']>
export type RawLooseShelves = Exclude<NonNullable<RawBay['loose shelves']>, number>
export type RawDrawers = Exclude<NonNullable<RawBay['drawers']>, number>
export type RawDrawerBox = NonNullable<RawDrawers['box']>
export type RawDrawerFronts = Exclude<NonNullable<RawDrawers['fronts']>, string>
export type RawDrawerPull = Exclude<NonNullable<RawDrawerFronts['pull']>, string>
export type RawPins = NonNullable<RawLooseShelves['pins']>
export type RawFront = NonNullable<RawBay['front']>
export type RawPull = Exclude<NonNullable<RawFront['pull']>, string>
export type RawFlip = NonNullable<RawModule['flip-over top']>
export type RawLock = Exclude<NonNullable<RawFlip['locking bolts']>, string>
export type RawMachine = NonNullable<NonNullable<RawFlip['machines']>['upper']>
export type RawRails = NonNullable<RawCarcase['rails']>
export type RawStretcher = NonNullable<RawCarcase['stretchers']>[number]
export type RawLipping = NonNullable<RawModule['lipping']>[number]
export type RawLoads = NonNullable<RawModule['loads']>
export type RawWorktop = Exclude<NonNullable<RawModule['worktop']>, string>
export type RawTopFix = Exclude<NonNullable<RawWorktop['fix']>, string>
export type RawMachineTop = NonNullable<RawModule['machine top']>
export type RawInsert = NonNullable<RawMachineTop['insert']>
export type RawSlot = NonNullable<RawMachineTop['slots']>[number]
export type RawChamber = NonNullable<RawMachineTop['chamber']>
export type RawPort = NonNullable<RawChamber['port']>
export type RawBase = Exclude<NonNullable<RawModule['base']>, string>
export type RawPlinth = NonNullable<RawBase['plinth']>
export type RawOpening = NonNullable<RawModule['openings']>[number]
export type RawRow = NonNullable<RawDefinition['floor plan']>[number]
export type RawJoin = Exclude<NonNullable<RawRow['join']>, string>
export type RawFit = NonNullable<RawDefinition['fit']>
export type RawBit = NonNullable<RawDefinition['bits']>[number]
export type RawOutputs = NonNullable<RawDefinition['outputs']>
export type RawDxf = NonNullable<RawOutputs['dxf']>
