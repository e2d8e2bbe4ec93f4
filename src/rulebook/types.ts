/** `stop`: wood would be spoiled; `warn`: look at it before you drill; `note`: good to know. */
export type Severity = 'stop' | 'warn' | 'note'

/** A figure of a rule that a definition can change. */
export interface Limit {
  /** The default, in its unit. */
  readonly value: number
  /** `1`: a plain number, a ratio or a count. */
  readonly unit: 'mm' | 'kg' | 'degrees' | '%' | '1'
  /** What is measured, in a few words. */
  readonly says: string
}

/** What a rule is, apart from how it is found. */
export interface RuleEntry {
  readonly meaning: string
  /** What its findings can be, worst first. */
  readonly severities: readonly Severity[]
  /** Where its limits come from: a published source by its number in the list of DEVELOPERS.md, or `common practice`. */
  readonly source: string
  /** By the words of the definition; most are `warn` or `stop`. */
  readonly limits: Readonly<Record<string, Limit>>
  /** It shows a fault of the program or of the machine, and no reason can be good enough to leave it out. */
  readonly always?: true
}

export type RuleEntries = Readonly<Record<string, RuleEntry>>

const limit =
  (unit: Limit['unit']) =>
  (value: number, says: string): Limit => ({ value, unit, says })

export const mm = limit('mm')
export const kg = limit('kg')
export const degrees = limit('degrees')
export const percent = limit('%')
export const plain = limit('1')
