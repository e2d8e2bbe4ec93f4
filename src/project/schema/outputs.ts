import * as z from 'zod'
import { PAPER_NAMES } from '../spec/outputs.ts'
import { group, kind, length, optional } from './parts.ts'

const pattern = z.string(kind('pattern'))

const layers = group({
  outline: optional(pattern, 'Outlines of panels. Default OUTLINE.'),
  bore: optional(pattern, 'Bores with a depth. Default BORE-D{diameter}-DEEP{depth}.'),
  'bore through': optional(pattern, 'Bores right through. Default BORE-D{diameter}-THROUGH.'),
  countersink: optional(pattern, 'Countersinks. Default COUNTERSINK-D{diameter}-DEG{angle}.'),
  groove: optional(pattern, 'Grooves. Default GROOVE-W{width}-DEEP{depth}.'),
  rebate: optional(pattern, 'Rebates. Default REBATE-W{width}-DEEP{depth}.'),
  cutout: optional(pattern, 'Openings right through. Default CUTOUT.'),
  pocket: optional(pattern, 'Recesses. Default POCKET-DEEP{depth}.'),
  mark: optional(pattern, 'Centres for work by hand. Default MARK.'),
  note: optional(pattern, 'Text that is never cut. Default NOTE.'),
})

const dxf = group({
  units: optional(z.enum(['mm', 'in'], kind('units')), "The unit of the DXF files. Default: the project's units."),
  version: optional(
    z.union([z.literal(2007), z.literal(2000), z.literal('2007'), z.literal('2000')], kind('dxf version')),
    '2007, or 2000 for older programs. Default 2007.',
  ),
  contours: optional(
    z.enum(['bulges', 'lines and arcs'], kind('contours')),
    'Closed polylines with bulges, or lines and arcs for programs that know no bulges. Default bulges.',
  ),
  notes: optional(z.boolean(kind('true or false')), 'Whether texts are written. Default true.'),
  layers: optional(
    layers,
    'Layer names: A-Z, 0-9, - and _, with {diameter}, {depth}, {width}, {angle} filled in where they apply.',
  ),
})

export const outputsSchema = group({
  paper: optional(
    z.enum(PAPER_NAMES, kind('paper')),
    'The paper of the full-size pages: sheets, or a roll by its width, from which pages are cut as long as they need. Default A4, or Letter.',
  ),
  margin: optional(length, 'What the printer leaves blank along each side of the sheet, 2 to 40 mm. Default 10 mm.'),
  overlap: optional(length, 'What pages that are taped together show in common, 12 to 50 mm. Default 14 mm.'),
  'page budget': optional(
    z.number(kind('page budget')).int(kind('page budget')).min(1, kind('page budget')).max(50, kind('page budget')),
    'Sheets that each panel may take at most; where its whole faces take more, strips and templates that are moved along take their place. Default: whole faces.',
  ),
  'check bars': optional(
    z.array(length, kind('check bars')).length(2, kind('check bars')),
    'How long the whole check bars of 180 mm came out, measured along the short and the long side of a sheet, or across and along the roll, that was printed without this key. Default: not corrected.',
  ),
  dxf: optional(dxf, 'How DXF files are written.'),
})
