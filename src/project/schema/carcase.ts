import * as z from 'zod'
import { BACKS, JOINT_WORDS, KINDS } from './kinds.ts'
import { group, hardwareOf, kind, length, optional, required, stockName } from './parts.ts'

/** Kinds of hardware that hold a joint. */
const FASTENERS = ['through screw', 'one-piece screw', 'dowel', 'pocket screw', 'cam fitting'] as const

const jointGroup = group({
  fasten: required(
    hardwareOf(FASTENERS, JOINT_WORDS),
    'A piece of hardware by name (dowel 8x30), or through screw, one-piece screw, dowel, pocket screw, cam and dowel for the first that suits; housing: let into a groove and glued.',
  ),
  'end distance': optional(
    length,
    'From each end of the joint to the first and the last fastener. Default 50 mm, or 2 in.',
  ),
  spacing: optional(length, 'The longest distance between fasteners. Default 160 mm, or 6 in.'),
  dowel: optional(
    hardwareOf(['dowel'], ['none']),
    'Cam fittings: the dowel beside each, 32 mm from it, or none. Default dowel 8x30.',
  ),
  depth: optional(length, 'Housing: depth of the groove. Default a third of the board that it is cut into.'),
  play: optional(length, 'Housing: width beyond the thickest reading of the board in it. Default 0.1 mm.'),
  'stop front': optional(
    length,
    'Housing: kept between the groove and the front edge; the board in it is notched there. Default 0: it runs out.',
  ),
  'stop rear': optional(length, 'Housing: the same at the rear edge. Default 0.'),
}).meta({ id: 'joint' })

const joint = (key: 'joint' | 'joint or none') =>
  z.union([hardwareOf(FASTENERS, KINDS[key].words, key), jointGroup], kind(key))

export const jointSchema = joint('joint')

const lap = z.enum(['over', 'between', 'none'], kind('lap'))
const sits = z.enum(BACKS, kind('sits'))

const backGroup = group({
  sits: optional(
    sits,
    'applied: over the rear edges; between sides: over those of top and bottom only; inset: between the panels; grooved: in a groove; rebated: in a rebate; none. Default applied.',
  ),
  stock: optional(stockName, "The stock of the back. Default: the module's stock."),
  margin: optional(length, 'Applied: kept between its edges and the outside of the carcase. Default 0.'),
  recess: optional(length, 'Inset: how far the back stands in front of the rear edges. Default 0.'),
  'groove depth': optional(
    length,
    'Grooved: depth of the groove. Default 8 mm, and never more than half the thickness of the side.',
  ),
  'groove setback': optional(
    length,
    'Grooved: from the rear edges to the near wall of the groove. Default 10 mm, or 3/8 in.',
  ),
  'groove play': optional(
    length,
    'Grooved: width of the groove beyond the thickest reading of the back. Default 0.2 mm.',
  ),
  'rebate width': optional(
    length,
    'Rebated: width of the rebate across the thickness of the side. Default: half the thickness of the side.',
  ),
  'edge play': optional(
    length,
    "Grooved and rebated: space left between the back's edges and the wood, each side. Default 0.5 mm.",
  ),
  joint: optional(
    joint('joint or none'),
    "How the back is fixed, or none. Default: applied and rebated, a small screw every 150 mm (6 in); inset, the carcase's joint; grooved, none.",
  ),
})

const railsGroup = group({
  width: optional(length, 'From front to back. Default 100 mm, or 4 in.'),
  stock: optional(stockName, "The stock of the rails. Default: the module's stock."),
  joint: optional(jointSchema, "How they are fastened to the sides. Default: the carcase's joint."),
})

const stretcher = group({
  at: required(z.enum(['front', 'back'], kind('end of a stretcher')), 'At the front edges, or at the back.'),
  height: optional(
    z.union([z.number(), z.string()], kind('length or below top')),
    'Of its lower edge above the underside of the carcase, or: below top. Default below top.',
  ),
  width: optional(length, 'From its lower to its upper edge. Default 100 mm, or 4 in.'),
  stock: optional(stockName, "The stock of the stretcher. Default: the module's stock."),
  joint: optional(jointSchema, "How it is fastened to the sides. Default: the carcase's joint."),
})

export const carcaseSchema = group({
  top: optional(
    z.enum(['over', 'between', 'rails', 'none'], kind('top')),
    'The top lies over the ends of the sides, stands between them, is two rails between them, or there is none. Default between.',
  ),
  rails: optional(railsGroup, 'The two rails in the place of a top; with top: rails.'),
  stretchers: optional(
    z.array(stretcher, kind('stretchers')).min(1, kind('stretchers')).max(20, kind('stretchers')),
    'Upright strips across between the sides, at the front edges or before the back.',
  ),
  bottom: optional(lap, 'The same for the bottom. Default between.'),
  joint: optional(
    jointSchema,
    'How top, bottom and sides are fastened: a piece of hardware by name, or through screw, one-piece screw, dowel, pocket screw. Default one-piece screw.',
  ),
  'front gap': optional(
    length,
    'Between the hidden face of an overlay front and the front edges of the carcase. Default 2 mm, or 1/16 in.',
  ),
  back: optional(
    z.union([z.enum(BACKS, kind('back')), backGroup], kind('back')),
    'applied, between sides, inset, grooved, rebated, none, or a group of keys that says more. Default applied.',
  ),
})
