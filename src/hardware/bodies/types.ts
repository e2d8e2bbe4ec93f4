import type { Solid } from '../../geometry/index.ts'

/** What a piece of hardware is besides its holes, in the words of a message. */
export type BodyName =
  | 'shank'
  | 'head'
  | 'nut'
  | 'plate'
  | 'arm'
  | 'slide'
  | 'bracket'
  | 'grip'
  | 'screw head'
  | 'wheel'
  | 'pad'

/**
 * One convex solid that a piece of hardware takes up, in the frame of the station of `part`: origin on the contact plane,
 * z along the axis of the hardware, wood that lies ahead at z > 0. Lengths in mm.
 */
export interface Body {
  readonly part: string
  readonly name: BodyName
  readonly solid: Solid
}

/** What a body depends on besides its item: the boards that it goes through, and depths that the placing worked out. */
export interface Surroundings {
  /** Thickness of the board at a part, mm. */
  readonly thicknessOf: (part: string) => number
  /** Depth of that name, mm; see `PlacedHardware.settings`. */
  readonly setting: (name: string) => number | undefined
}
