import type { Finding } from '../checks/index.ts'

/** How many findings forbid to cut: those of severity stop that are not silenced. */
export function stopsStanding(findings: readonly Pick<Finding, 'severity' | 'silenced'>[]): number {
  return findings.filter(({ severity, silenced }) => severity === 'stop' && silenced === undefined).length
}

/** `1 finding of severity stop stands`: why nothing is drawn. */
export function stopWords(stops: number): string {
  return stops === 1 ? '1 finding of severity stop stands' : `${stops} findings of severity stop stand`
}

/**
 * What stands on every sheet that is drawn although so many stops stand. Plain ASCII, since it goes into every format, and
 * short, since it must fit on every panel.
 */
export function stampOf(stops: number): string {
  return `DO NOT CUT: ${stops === 1 ? '1 STOP STANDS' : `${stops} STOPS STAND`}`
}
