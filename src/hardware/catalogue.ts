import { casters } from './items/casters.ts'
import { connectors } from './items/connectors.ts'
import { flapStays } from './items/flap-stays.ts'
import { hinges } from './items/hinges.ts'
import { joiningBolts } from './items/joining-bolts.ts'
import { pins } from './items/pins.ts'
import { pulls } from './items/pulls.ts'
import type { Item, ItemKind } from './types.ts'

/** Every item that a definition can name. Defaults of a kind are its first item, metric or inch. */
export const catalogue: readonly Item[] = [
  ...pins,
  ...hinges,
  ...flapStays,
  ...connectors,
  ...joiningBolts,
  ...casters,
  ...pulls,
]

const byId = new Map(catalogue.map((item) => [item.id, item]))

/** The item of that name, or `undefined`. */
export function findItem(id: string): Item | undefined {
  return byId.get(id)
}

/** All items of one kind, in catalogue order. */
export function itemsOfKind<K extends ItemKind>(kind: K): Extract<Item, { kind: K }>[] {
  return catalogue.filter((item): item is Extract<Item, { kind: K }> => item.kind === kind)
}
