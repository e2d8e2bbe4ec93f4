import fc from 'fast-check'

/**
 * Looks for a definition with faults and shrinks it: throws with its text, as one would write it into a file, and with
 * what is wrong with it.
 */
export function expectFaultless(
  definitions: fc.Arbitrary<string>,
  faultsOf: (text: string) => readonly string[],
  parameters: fc.Parameters<[string]>,
): void {
  const run = fc.check(
    fc.property(definitions, (text) => {
      const faults = faultsOf(text)
      if (faults.length > 0) throw new Error(faults.slice(0, 5).join('\n'))
    }),
    // Shrinking is cut off in time to print what was found.
    { interruptAfterTimeLimit: 100_000, markInterruptAsFailure: false, ...parameters },
  )
  if (run.interrupted && !run.failed)
    throw new Error(`cut off after ${run.numRuns} definitions: nothing else was wrong`)
  if (!run.failed) return
  const { seed, counterexamplePath, counterexample, errorInstance } = run
  const why = errorInstance instanceof Error ? errorInstance.message : String(errorInstance)
  throw new Error(`${why}\nseed ${seed}, path ${counterexamplePath}\n${brief(counterexample?.[0] ?? '')}`)
}

/** JSON in which what holds no group of its own stands on one line. */
const brief = (text: string): string =>
  text.replaceAll(
    /([{[])\s+([^{}[\]]*?)\s+([}\]])/g,
    (_, open, inner: string, close) => `${open}${inner.replaceAll(/\s+/g, ' ')}${close}`,
  )
