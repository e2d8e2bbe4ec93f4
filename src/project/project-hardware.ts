import { catalogue, findItem, type Item, type ItemKind, type ItemOf, itemsOfKind } from '../hardware/index.ts'

/**
 * The hardware that a project can name: its own items first, then the catalogue's. An own item under the name of one
 * in the catalogue stands in its place, wherever that one would be used.
 */
export class ProjectHardware {
  /** By name; `undefined` where the item has a problem, which is reported. */
  private readonly own = new Map<string, Item | undefined>()

  /** Adds an own item; `undefined` for one that cannot be told. */
  add(name: string, item: Item | undefined): void {
    this.own.set(name, item)
  }

  /** True for an own item that cannot be told: its problem is reported where it stands. */
  isTroubled(name: string): boolean {
    return this.own.has(name) && this.own.get(name) === undefined
  }

  /** The item of that name; the catalogue's where the project's own has a problem. */
  find(name: string): Item | undefined {
    return this.own.get(name) ?? findItem(name)
  }

  /** All names, own ones first. */
  names(): string[] {
    return this.all().map((item) => item.id)
  }

  /** All items of some kinds, own ones first, then in catalogue order. */
  ofKinds<K extends ItemKind>(kinds: readonly K[]): ItemOf<K>[] {
    return this.all().filter((item): item is ItemOf<K> => (kinds as readonly string[]).includes(item.kind))
  }

  /**
   * The catalogue's items of a kind, as the project has them: what words and defaults choose from. An own item under
   * a new name is used only where it is named.
   */
  usual<K extends ItemKind>(kind: K): ItemOf<K>[] {
    return itemsOfKind(kind).map((item) => {
      const own = this.own.get(item.id)
      return own?.kind === kind ? (own as ItemOf<K>) : item
    })
  }

  private all(): Item[] {
    const own = [...this.own.values()].filter((item) => item !== undefined)
    return [...own, ...catalogue.filter((item) => this.own.get(item.id) === undefined)]
  }
}
