import { MM_PER_INCH } from '../length/index.ts'
import type { Default } from './context.ts'

const inch = (inches: number): number => inches * MM_PER_INCH
const each = (mm: number, inches: number): Default => ({ mm, in: inch(inches) })

/** Defaults of lengths, in mm, for projects in mm and in inches. Sources: common practice, no source, where none is named. */
export const DEFAULTS = {
  sheetLength: each(2440, 96),
  sheetWidth: each(1220, 48),
  edgeTrim: each(10, 1 / 2),
  endDistance: each(50, 2),
  spacing: each(160, 6),
  backEndDistance: each(50, 2),
  backSpacing: each(150, 6),
  frontGap: each(2, 1 / 16),
  grooveDepth: 8,
  grooveSetback: each(10, 3 / 8),
  groovePlay: 0.2,
  rebateWidth: 9,
  rebateLeaves: 6,
  /** Backs thicker than this take the longer screw. */
  thinBack: 10,
  edgePlay: 0.5,
  housingPlay: 0.1,
  /** woodweb.com, "Bearing capacity of shelf pins": 3/32 in in all. */
  shelfClearance: 1.2,
  shelfFront: each(5, 1 / 4),
  shelfFrontBehindDoor: each(20, 3 / 4),
  rearGap: 2,
  /** davelers.com, "What all modular 32mm systems have in common". */
  pitch: each(32, 1),
  pitchOf5mm: 32,
  pinSetback: 37,
  pinSetbackQuarterInch: inch(1.5),
  /** Behind the holes of hinge plates, whose grid of 32 mm such a row cannot share. */
  pinSetbackQuarterInchBehindDoor: inch(2.75),
  keepClear: each(64, 2.5),
  reveal: each(1.5, 1 / 16),
  gap: each(3, 1 / 8),
  insetGap: each(2, 3 / 32),
  /** At most 80: services.indaux.com/eCatalog/en/20. */
  hingeEnd: 80,
  pullEdge: each(40, 1.5),
  pullEnd: each(60, 2.5),
  platformGap: each(3, 1 / 8),
  turningClearance: each(10, 3 / 8),
  lockEdge: each(50, 2),
  /** A well that is worked out is rounded up to it. */
  wellStep: each(1, 1 / 16),
  drawerGrooveDepth: each(6, 1 / 4),
  drawerGrooveHeight: each(10, 3 / 8),
  drawerAbove: each(10, 3 / 8),
  drawerBelow: each(12, 1 / 2),
  behindSlide: each(10, 3 / 8),
  footprintGap: 5,
  /** Full-kerf saw blade: trade figure (S58). */
  kerf: each(3.2, 1 / 8),
  /** ISO and ASME countersinks, from catalogue knowledge. */
  countersinkDeg: { mm: 90, in: 82 },
  /** More than any office printer needs (S66, S67, S68). */
  printMargin: 10,
  /** Marks and their arms have room in it, and tape holds on it: own choice. */
  pageOverlap: 14,
  fitStep: each(1, 1 / 16),
  fitMost: each(2400, 96),
  /** Clear of screws that go 35 mm into the ends of the bottom. */
  footInset: each(70, 2.75),
  /** Toe room: at least 2 in deep and 3 in high, S24. */
  plinthFront: each(50, 2),
  /** Room for a skirting board, and for the driver between the screws and the back. */
  plinthBehind: each(20, 3 / 4),
  stripWidth: each(100, 4),
  /** A thinner strip is lost in sanding. */
  lippingFrom: 0.6,
  /** Screws that hold a worktop from below. */
  topSpacing: each(300, 12),
  insertPlay: 0.25,
  boltEnd: each(64, 2.5),
  boltSide: each(96, 3.75),
} as const

/** kg/m³, birch plywood: vdocuments.site, birch plywood data sheet. */
export const DENSITY = 680
/** N/mm², plywood: common practice. */
export const STIFFNESS = 7000
