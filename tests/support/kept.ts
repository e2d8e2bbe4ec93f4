/**
 * Works a thing out once for the texts that were asked for last. All property tests walk from one seed, so that those over the
 * same arbitrary see the same texts one test after another, and from file to file of a worker. What is kept is only looked at.
 */
export function kept<T>(most: number, workOut: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>()
  return (text) => {
    const one = known.has(text) ? (known.get(text) as T) : workOut(text)
    // At the end again: a map holds its keys in the order in which they came.
    known.delete(text)
    known.set(text, one)
    const [oldest] = known.keys()
    if (known.size > most && oldest !== undefined) known.delete(oldest)
    return one
  }
}
