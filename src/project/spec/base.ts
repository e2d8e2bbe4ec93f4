import type { Caster } from '../../hardware/index.ts'
import type { DefinitionPath } from './stock.ts'

export type BaseSpec =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'casters'
      readonly item: Caster
      /** From the footprint's edges to the king pin; `auto`: swivel radius + `footprintGap`. */
      readonly inset: number | 'auto'
      /** Kept between the swivel circle and the edge of the footprint. */
      readonly footprintGap: number
      readonly at: DefinitionPath
    }
