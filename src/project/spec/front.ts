import type { CupHinge, FlapStay, Pull } from '../../hardware/index.ts'
import type { JointSpec } from './carcase.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** A value for each edge of a front, seen from in front of the module. */
export interface FourEdges<T> {
  readonly left: T
  readonly right: T
  readonly top: T
  readonly bottom: T
}

/** `auto`: half over a panel that another overlay front covers from its other side, else full. */
export type Cover = 'auto' | 'full' | 'half'

export interface PullSpec {
  readonly item: Pull
  /** From the edge away from the hinges to the line of the holes. */
  readonly edgeDistance: number
  /** Which end of the door (top, bottom) or flap (left, right) the near hole is measured from; `middle` centres the pull. */
  readonly end: 'top' | 'bottom' | 'left' | 'right' | 'middle'
  readonly endDistance: number
}

/** How a front lies over or in its opening; what doors, flaps, fixed panels and drawer fronts have in common. */
export interface FrontLay {
  readonly lay: 'overlay' | 'inset'
  readonly cover: FourEdges<Cover>
  readonly stock: Stock
  /** Overlay: left free at the outside of the module, each edge. */
  readonly reveal: FourEdges<number>
  /** Between the leaves of one front, and between fronts over a shared panel. */
  readonly gap: number
  /** Inset: all round. */
  readonly insetGap: number
  readonly at: DefinitionPath
}

/** What hangs on cup hinges. */
export interface HungFront extends FrontLay {
  /** What the hinges are chosen from by the overlay that is wanted: the one that is named, or the usual ones for the lay. */
  readonly hinge: readonly CupHinge[]
  /**
   * Hinges a door or flap: a number, distances of the cup centres from its lower (door) or left (flap) end, or by rule.
   */
  readonly hinges: number | readonly number[] | 'auto'
  /** From the ends of the hinge edge to the outermost cup centres, at most. */
  readonly hingeEnd: number
  readonly pull: PullSpec | undefined
}

export interface DoorSpec extends HungFront {
  readonly kind: 'door' | 'pair'
  /** Which edge of a single door has the hinges. */
  readonly hang: 'left' | 'right'
}

export interface FlapSpec extends HungFront {
  readonly kind: 'flap'
  /** Which edge has the hinges: a flap that is lifted, or one that is let down. */
  readonly hang: 'top' | 'bottom'
  /** `auto`: the first that has room. */
  readonly stay: FlapStay | 'auto' | 'none'
  /** `auto`: both on a wide flap, see the item. */
  readonly stays: 'auto' | 'one' | 'both'
}

/** A panel that closes an opening for good. */
export interface FixedFrontSpec extends FrontLay {
  readonly kind: 'fixed'
  /** Overlay: into the front edges behind it; inset: between it and the panels on its left and right. */
  readonly fix: JointSpec
}

export type FrontSpec = DoorSpec | FlapSpec | FixedFrontSpec
