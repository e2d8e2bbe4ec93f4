import type { JSX } from 'preact'

/** Where the rod of the page is marked, in its own units: uneven, as one marks shelves and doors, not even as a rule. */
const MARKS = [
  14, 52, 64, 131, 168, 177, 236, 305, 317, 402, 431, 488, 540, 552, 633, 671, 744, 756, 811, 880, 935, 947,
]

/** The stick with its marks that the program is named for; an ornament. */
export function Rod(): JSX.Element {
  return (
    <svg class="rod" viewBox="0 0 1000 10" preserveAspectRatio="none" aria-hidden="true">
      <path d={MARKS.map((x, k) => `M${x} 10V${k % 3 === 0 ? 1 : 4}`).join('')} vector-effect="non-scaling-stroke" />
    </svg>
  )
}
