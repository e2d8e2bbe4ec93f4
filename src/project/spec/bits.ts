import type { DefinitionPath } from './stock.ts'

/**
 * What a bit does: `twist` bores through and blind with a pointed end; `brad point` the same with a nearly flat one;
 * `forstner` flat-bottomed holes; `countersink` sinks heads; `step` pocket holes; `straight` is a router bit for grooves
 * and openings, which also plunges holes as wide as itself; `end mill` is the same in a machine that follows a drawing, so
 * it mills wider holes in faces, too.
 */
export type BitKind = 'twist' | 'brad point' | 'forstner' | 'countersink' | 'step' | 'straight' | 'end mill'

/** A drill or router bit that is in the shop. Lengths in mm. */
export interface BitSpec {
  readonly kind: BitKind
  /** Of a step bit, the wide part; of a countersink, its rim. */
  readonly diameter: number
  /** How deep it bores or cuts; nothing when it is deep enough for all. */
  readonly depth?: number
  /** Of a countersink: included angle, degrees. */
  readonly angleDeg?: number
  readonly at: DefinitionPath
}
