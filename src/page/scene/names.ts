/** Words, each once, by their places. */
export class Names {
  readonly list: string[] = []
  readonly #places = new Map<string, number>()

  placeOf(name: string): number {
    const known = this.#places.get(name)
    if (known !== undefined) return known
    this.#places.set(name, this.list.length)
    this.list.push(name)
    return this.list.length - 1
  }
}
