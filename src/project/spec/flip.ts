import type { Axle, JointScrew, LockingBolt } from '../../hardware/index.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/**
 * The box that holds all of a machine, standing on its face of the platform. Sizes as one sees it from in front of the
 * module while the machine is on top.
 */
export interface MachineSpec {
  readonly name: string
  readonly width: number
  readonly depth: number
  readonly height: number
  /** kg */
  readonly mass: number | undefined
  /** From the middle of the platform to the middle of the box, mm: to the right and to the rear, while it is on top. */
  readonly offCentre: { readonly right: number; readonly rear: number }
  readonly at: DefinitionPath
}

/** A platform that turns on an axle between the raised sides of a module, with a machine on either face. Lengths in mm. */
export interface FlipSpec {
  /** Of the two skins. */
  readonly skin: Stock
  /** Of the two core boards, which leave the channel for the axle between them. */
  readonly core: Stock
  readonly axle: Axle
  /** Hold the skins to the core. */
  readonly screws: JointScrew
  readonly lock: {
    readonly item: LockingBolt
    /** One, at the front, or two, front and rear. */
    readonly eachSide: 1 | 2
    /** From the platform's front or rear edge to the bolt. */
    readonly edgeDistance: number
    readonly at: DefinitionPath
  }
  /** How far the sides stand above the upper face of the carcase's top; `auto`: what must turn in it, see flipSizes. */
  readonly well: number | 'auto'
  /** Upper face of the platform above the upper face of the carcase's top; `level` with the upper ends of the sides. */
  readonly surface: number | 'level'
  /** Between the platform and each side: the thickness of the washers on the axle. */
  readonly gap: number
  /** From the front and the rear edges of the sides to the platform. */
  readonly frontClearance: number
  readonly rearClearance: number
  /** Kept free around all that turns. */
  readonly turningClearance: number
  readonly machines: { readonly upper: MachineSpec | undefined; readonly lower: MachineSpec | undefined }
  /** A well that is worked out is rounded up to this. */
  readonly step: number
  readonly at: DefinitionPath
}
