import type { Limit } from '../../rulebook/index.ts'

/** Limits of a rule that the definition changes, by name, in the limit's unit. */
export type ChangedLimits = Readonly<Record<string, number>>

/** A limit as it is told. */
export interface LimitRow {
  readonly name: string
  /** What holds, with its unit: `7 mm`. */
  readonly figure: string
  readonly says: string
  /** The default, where another value holds. */
  readonly usual?: string
}

/** The limits of a rule as they hold, each with its default where the definition changes it. */
export function limitRows(limits: Readonly<Record<string, Limit>>, changed: ChangedLimits): LimitRow[] {
  return Object.entries(limits).map(([name, { value, unit, says }]) => {
    const holds = changed[name] ?? value
    const words = (figure: number): string => `${figure}${UNITS[unit]}`
    return { name, figure: words(holds), says, ...(holds !== value && { usual: words(value) }) }
  })
}

const UNITS = { mm: ' mm', kg: ' kg', degrees: '°', '%': ' %', '1': '' } as const
