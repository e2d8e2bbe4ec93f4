import { olderIfAlike } from './alike.ts'

/** A result, and everything that it was made of. */
interface Entry<R> {
  readonly of: readonly unknown[]
  readonly result: R
}

/**
 * Results of the last round of work, each by a name and by what it was made of, so that in the next round only what
 * differs is made anew. A round that is never settled leaves those of the last one in their place. Nothing older is kept.
 */
export class Kept<R> {
  private last: ReadonlyMap<string, Entry<R>> = new Map()
  private now = new Map<string, Entry<R>>()

  /** Begins a round; what an unsettled one has made is forgotten. */
  begin(): void {
    this.now = new Map()
  }

  /** The results of this round are kept for the next, and all others forgotten. */
  settle(): void {
    this.last = this.now
  }

  /**
   * The result of that name when it was made of the very same things, else what `make` gives. `of` must hold all that the
   * result depends on: things that are never changed, and are compared by identity, or plain words and numbers.
   */
  take(name: string, of: readonly unknown[], make: () => R): R {
    const now = this.now.get(name)
    if (now !== undefined && sameItems(now.of, of)) return now.result
    const last = this.last.get(name)
    const entry = last !== undefined && sameItems(last.of, of) ? last : { of, result: make() }
    this.now.set(name, entry)
    return entry.result
  }

  /** A result of that name that is made anew in each round: the last one where they are alike, so that it stays the same thing. */
  renew(name: string, result: R): R {
    const older = olderIfAlike(this.last.get(name)?.result, result)
    this.now.set(name, { of: [], result: older })
    return older
  }
}

/** True when two lists hold the very same things in the same order. */
export function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false
  for (let k = 0; k < a.length; k += 1) if (!Object.is(a[k], b[k])) return false
  return true
}
