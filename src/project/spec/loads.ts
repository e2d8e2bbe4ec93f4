/** What a module is to carry; kg and kg/m². */
export interface LoadsSpec {
  /** Whether the definition says any of them: what is only reckoned with never stops anything. */
  readonly said: boolean
  /** On each m² of the one shelf that is loaded most: what its sag and its pins are judged by. */
  readonly shelf: number
  /** On one shelf, at most. */
  readonly shelfMost: number
  /** On each m² of all shelves and the bottom at once: what the whole module weighs. */
  readonly allShelves: number
  /** On each m² of a drawer's bottom. */
  readonly drawer: number
  /** On the top, all in all; nothing where it is not said: then by its height, see topLoad. */
  readonly top: number | undefined
}
