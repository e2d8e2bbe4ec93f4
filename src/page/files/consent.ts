import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { PageFinding } from '../protocol.ts'

/** Whether a person would have the files drawn although stops stand. */
export interface Consent {
  /** Every stop that stands is one that was agreed to. True also where none stands and some was agreed to. */
  readonly given: ReadonlySignal<boolean>
  /** Agrees to the stops that stand now, or takes it back. */
  readonly set: (yes: boolean) => void
}

/**
 * Consent to the very stops that stand when it is given, in the definition that is open then: a stop that comes later, or
 * another definition (`opened` counts them), asks for it anew.
 */
export function consentTo(
  findings: ReadonlySignal<readonly Pick<PageFinding, 'key' | 'severity' | 'silenced'>[]>,
  opened: ReadonlySignal<number>,
): Consent {
  const agreed = signal<{ readonly opened: number; readonly stops: ReadonlySet<string> } | undefined>(undefined)
  const standing = computed(() =>
    findings.value.filter(({ severity, silenced }) => severity === 'stop' && silenced === undefined),
  )
  return {
    given: computed(() => {
      const now = agreed.value
      return now !== undefined && now.opened === opened.value && standing.value.every(({ key }) => now.stops.has(key))
    }),
    set: (yes) => {
      agreed.value = yes ? { opened: opened.peek(), stops: new Set(standing.peek().map(({ key }) => key)) } : undefined
    },
  }
}
