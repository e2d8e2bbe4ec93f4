import { cams } from './items/cams.ts'
import { casters } from './items/casters.ts'
import { fixedCasters, levellingCasters } from './items/casters-fixed.ts'
import { connectors } from './items/connectors.ts'
import { flapStays } from './items/flap-stays.ts'
import { flipOver } from './items/flip-over.ts'
import { hingePlates } from './items/hinge-plates.ts'
import { hinges, USUAL_HINGES } from './items/hinges.ts'
import { joiningBolts } from './items/joining-bolts.ts'
import { levellingFeet } from './items/levelling-feet.ts'
import { levellingScrews } from './items/levelling-screws.ts'
import { pins } from './items/pins.ts'
import { pulls } from './items/pulls.ts'
import { slides } from './items/slides.ts'
import type { Item, ItemKind, ItemOf } from './types.ts'

/** Ids of the cup hinges that `auto` chooses from. */
export { USUAL_HINGES }

/** Every item that a definition can name. Defaults of a kind are its first item, metric or inch. */
export const catalogue: readonly Item[] = [
  ...pins,
  ...hinges,
  ...hingePlates,
  ...flapStays,
  ...connectors,
  ...cams,
  ...joiningBolts,
  ...casters,
  ...fixedCasters,
  ...levellingCasters,
  ...levellingFeet,
  ...pulls,
  ...flipOver,
  ...slides,
  ...levellingScrews,
]

const byId = new Map(catalogue.map((item) => [item.id, item]))

/** The item of that name, or `undefined`. */
export function findItem(id: string): Item | undefined {
  return byId.get(id)
}

/** All items of one kind, in catalogue order. */
export function itemsOfKind<K extends ItemKind>(kind: K): ItemOf<K>[] {
  return catalogue.filter((item): item is ItemOf<K> => item.kind === kind)
}
