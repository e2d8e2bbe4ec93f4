import type { CupHinge, Pull } from '../../hardware/index.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** A value for each edge of a front, seen from in front of the module. */
export interface FourEdges<T> {
  readonly left: T
  readonly right: T
  readonly top: T
  readonly bottom: T
}

/** `auto`: full over an outside panel, half over a shared one. */
export type Cover = 'auto' | 'full' | 'half'

export interface PullSpec {
  readonly item: Pull
  /** From the edge away from the hinges to the line of the holes. */
  readonly edgeDistance: number
  /** Which end of the door the near hole is measured from; `middle` centres the pull. */
  readonly end: 'top' | 'bottom' | 'middle'
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

export interface FrontSpec extends FrontLay {
  readonly kind: 'door' | 'pair'
  /** Which edge of a single door has the hinges. */
  readonly hang: 'left' | 'right'
  /** What the hinges are chosen from by the overlay that is wanted: the one that is named, or the usual ones for the lay. */
  readonly hinge: readonly CupHinge[]
  /** Hinges a door: a number, heights of the cup centres above the door's lower end, or by rule. */
  readonly hinges: number | readonly number[] | 'auto'
  /** From the door's ends to the outermost cup centres, at most. */
  readonly hingeEnd: number
  readonly pull: PullSpec | undefined
}
