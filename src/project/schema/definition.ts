import * as z from 'zod'
import { baySchema } from './bay.ts'
import { carcaseSchema } from './carcase.ts'
import { openingsSchema } from './openings.ts'
import { outputsSchema } from './outputs.ts'
import { group, hardware, kind, length, lengthOrAuto, lengthOrSameAsWidth, name, optional, required } from './parts.ts'

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
  density: optional(
    z.number(kind('density')).positive(kind('density')).max(10_000, kind('density')),
    'In kg/m³. Default 680.',
  ),
  stiffness: optional(
    z.number(kind('stiffness')).positive(kind('stiffness')).max(1_000_000, kind('stiffness')),
    'Modulus of elasticity in N/mm². Default 7000.',
  ),
})

const base = z.union(
  [
    z.literal('none', kind('base')),
    group({
      casters: required(hardware, 'The caster by name: caster 75.'),
      inset: optional(
        lengthOrAuto,
        'From the edges of the footprint to the king pin, or auto: swivel radius and footprint gap. Default auto.',
      ),
      'footprint gap': optional(
        length,
        'Kept between the circle that the caster swivels in and the edge of the footprint. Default 5 mm.',
      ),
    }),
  ],
  kind('base'),
)

const moduleShape = {
  width: optional(length, 'Outside width. Every module needs one, here or under common.'),
  depth: optional(
    lengthOrSameAsWidth,
    'Outside depth, fronts and back included, or: same as width. Every module needs one, here or under common.',
  ),
  'carcase height': optional(
    length,
    'Height of the carcase alone. A module has this or the working height, here or under common.',
  ),
  'working height': optional(
    length,
    'Height of the upper side of the carcase above the floor; the height of the casters is taken off.',
  ),
  stock: optional(name, 'The stock of the carcase. Every module needs one, here or under common.'),
  carcase: optional(carcaseSchema, 'Which panel laps which, how they are fastened, and the back.'),
  base: optional(base, 'What the module stands on: none, or casters. Default none.'),
}

const moduleSchema = group({
  ...moduleShape,
  inside: optional(baySchema, 'What is inside: one opening, split again and again. Default: empty.'),
  openings: optional(
    openingsSchema,
    'Openings and recesses in its panels: round, slots, rectangles, paths. Default: none.',
  ),
})

const join = z.union(
  [
    z.enum(['none', 'bolted'], kind('join')),
    group({
      bolt: required(hardware, 'The bolt by name: bolt M6.'),
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
  row: required(z.array(name, kind('row')).min(1, kind('row')), 'Names of modules, from the left.'),
  join: optional(join, 'How neighbours are joined: none, bolted, or a group of keys with bolt. Default none.'),
})

/**
 * The shape of a definition. Names of stock and modules carry NAME_MARK here (see to-data.ts). Lengths are checked
 * later, when the units are known, and so is all that one value alone does not show.
 */
export const definitionSchema = group({
  storyrod: required(z.literal(1, kind('format version')), 'Version of this format: 1.'),
  title: optional(z.string(kind('text')).max(200, kind('short text')), 'What the project is called on the drawings.'),
  units: optional(z.enum(['mm', 'in'], kind('units')), 'The unit of bare numbers: mm or in. Default mm.'),
  stock: required(z.record(z.string(), stockSchema, kind('names')), 'Sheet goods, each under a name of your choice.'),
  common: optional(group(moduleShape), 'Keys of a module, used by each module that does not say otherwise.'),
  modules: required(z.record(z.string(), moduleSchema, kind('names')), 'The cabinets, each under its name.'),
  'floor plan': optional(
    z.array(rowSchema, kind('floor plan')),
    'Which modules stand beside each other. A module in no row stands alone.',
  ),
  outputs: optional(outputsSchema, 'Paper and DXF settings.'),
})

export type RawDefinition = z.output<typeof definitionSchema>
export type RawStock = RawDefinition['stock'][string]
export type RawModule = RawDefinition['modules'][string]
export type RawCommon = NonNullable<RawDefinition['common']>
export type RawCarcase = NonNullable<RawModule['carcase']>
export type RawBack = Exclude<NonNullable<RawCarcase['back']>, string>
export type RawJoint = NonNullable<RawCarcase['joint']>
export type RawBay = NonNullable<RawModule['inside']>
export type RawLooseShelves = Exclude<NonNullable<RawBay['loose shelves']>, number>
export type RawPins = NonNullable<RawLooseShelves['pins']>
export type RawFront = NonNullable<RawBay['front']>
export type RawPull = Exclude<NonNullable<RawFront['pull']>, string>
export type RawBase = Exclude<NonNullable<RawModule['base']>, string>
export type RawOpening = NonNullable<RawModule['openings']>[number]
export type RawRow = NonNullable<RawDefinition['floor plan']>[number]
export type RawJoin = Exclude<NonNullable<RawRow['join']>, string>
export type RawOutputs = NonNullable<RawDefinition['outputs']>
export type RawDxf = NonNullable<RawOutputs['dxf']>
