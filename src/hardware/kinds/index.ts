import type { Figures, Item, ItemKind } from '../types.ts'
import { caster } from './caster.ts'
import { cupHinge } from './cup-hinge.ts'
import { dowel } from './dowel.ts'
import { hingePlate } from './hinge-plate.ts'
import { joiningBolt } from './joining-bolt.ts'
import type { Builder } from './kind.ts'
import { plainBuilder } from './plain.ts'
import { pull } from './pull.ts'
import { onePieceScrew, pocketScrew, throughScrew } from './screws.ts'
import { shelfPin } from './shelf-pin.ts'

export type { Builder, Fault, FigureForm, FigureSpec, Identity, Show } from './kind.ts'

/**
 * Kinds whose drillings follow from their figures, each made by one builder for the catalogue and for a project's own
 * items. A kind that is not here works too: its fields of numbers can be changed, and its holes replaced (plain.ts).
 */
export const builders: readonly Builder[] = [
  shelfPin,
  cupHinge,
  hingePlate,
  throughScrew,
  onePieceScrew,
  dowel,
  pocketScrew,
  joiningBolt,
  caster,
  pull,
]

const byKind = new Map<ItemKind, Builder>(builders.map((builder) => [builder.kind, builder]))

/** How an item is made, and what it was made of, so that one like it can be made with other figures. */
export function builderOf(item: Item): { readonly builder: Builder; readonly figures: Figures } {
  const builder = byKind.get(item.kind)
  return builder === undefined || item.figures === undefined ? plainBuilder(item) : { builder, figures: item.figures }
}
