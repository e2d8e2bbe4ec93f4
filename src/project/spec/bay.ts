import type { PanelJoint } from './carcase.ts'
import type { DrawersSpec } from './drawers.ts'
import type { FrontSpec } from './front.ts'
import type { LooseShelvesSpec } from './shelves.ts'
import type { DefinitionPath, Stock } from './stock.ts'

/** An opening of the carcase: split again, or a leaf; with or without a front. */
export interface Bay {
  /** Clear size along the direction of the split that it belongs to; `undefined`: a share of what remains. */
  readonly size: number | undefined
  readonly share: number
  readonly split: Split | undefined
  readonly looseShelves: LooseShelvesSpec | undefined
  readonly drawers: DrawersSpec | undefined
  readonly front: FrontSpec | undefined
  readonly at: DefinitionPath
}

/** `side by side`: partitions between, bays listed from the left; `stacked`: fixed shelves between, from the top. */
export interface Split {
  readonly direction: 'side by side' | 'stacked'
  readonly bays: readonly Bay[]
  readonly stock: Stock
  readonly joint: PanelJoint
  /** Of the bay that is split. */
  readonly at: DefinitionPath
}
