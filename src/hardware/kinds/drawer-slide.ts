import type { ItemBase } from '../types.ts'

/**
 * One slide of a pair, for one side of a drawer. Parts `cabinet` (the carcase's panel or the packing) and `box` (the
 * side of the drawer box): x from the slide's front end toward the back of the module, y along the height about the
 * slide's middle line, both with the drawer shut. Lengths in mm.
 */
export interface DrawerSlide extends ItemBase {
  readonly kind: 'drawer slide'
  /** Which catalogue of lengths it belongs to: a project chooses among those of its own units. */
  readonly measure: 'mm' | 'in'
  readonly length: number
  readonly thickness: number
  /** Left free beside the box for it: its thickness and the play that it needs. */
  readonly sideSpace: number
  /** Of its body, square to its length. */
  readonly height: number
  /** From the front of the opening (the carcase's edge, or the hidden face of an inset front) to its front end. */
  readonly setback: number
  /** A pair, fully out. */
  readonly loadKg: number
}
