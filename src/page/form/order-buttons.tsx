import type { JSX } from 'preact'

/** Moves one thing among its like, or takes it out. */
export function OrderButtons(props: {
  readonly what: string
  readonly place: number
  readonly count: number
  readonly move: (to: number) => void
  readonly remove?: (() => void) | undefined
  /** Words for before and after. */
  readonly ways?: readonly [before: string, after: string]
}): JSX.Element {
  const { what, place, count, move, remove, ways = ['Up', 'Down'] } = props
  const [before, after] = ways
  return (
    <div class="presses">
      <button type="button" aria-label={`${before}: ${what}`} disabled={place === 0} onClick={() => move(place - 1)}>
        {before}
      </button>
      <button
        type="button"
        aria-label={`${after}: ${what}`}
        disabled={place >= count - 1}
        onClick={() => move(place + 1)}
      >
        {after}
      </button>
      {remove !== undefined && (
        <button type="button" aria-label={`Remove ${what}`} onClick={remove}>
          Remove
        </button>
      )}
    </div>
  )
}
