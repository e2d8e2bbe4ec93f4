import type { JSX } from 'preact'
import type { Severity } from '../../rulebook/index.ts'

/** Outlines of the flags of findings, SVG paths in a box of 24 by 24: a stop has eight corners, a warning three, a note none. */
export const SEVERITY_SHAPES: Readonly<Record<Severity, string>> = {
  stop: 'M8 2h8l6 6v8l-6 6H8l-6-6V8z',
  warn: 'M12 1.5 23 21.5H1z',
  note: 'M12 2a10 10 0 1 0 0 20 10 10 0 1 0 0-20z',
}

/** Where the foot of a number stands in the box, so that it sits in the middle of the shape. */
export const SEVERITY_NUMBER_FOOT: Readonly<Record<Severity, number>> = { stop: 15.8, warn: 18.6, note: 15.8 }

/** The flag of a finding, with its number where it has one. Says nothing to screen readers: the word stands beside it. */
export function SeverityMark({
  severity,
  number,
  small = false,
}: {
  readonly severity: Severity
  readonly number?: number | undefined
  readonly small?: boolean
}): JSX.Element {
  return (
    <svg class={`severity-mark ${severity}${small ? ' small' : ''}`} viewBox="0 0 24 24" aria-hidden="true">
      <path d={SEVERITY_SHAPES[severity]} />
      {number !== undefined && (
        <text x="12" y={SEVERITY_NUMBER_FOOT[severity]}>
          {number}
        </text>
      )}
    </svg>
  )
}
