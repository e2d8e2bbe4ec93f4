import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useRef } from 'preact/hooks'

/**
 * A press that opens a slip of paper over the page. It closes on Escape (the focus then goes back to the press), on a press
 * elsewhere, and when the focus leaves it. `side`: on which side of the press it hangs; `upward`: above it.
 */
export function Popover({
  label,
  side = 'end',
  upward = false,
  children,
}: {
  readonly label: ComponentChildren
  readonly side?: 'start' | 'end'
  readonly upward?: boolean
  readonly children: ComponentChildren
}): JSX.Element {
  const root = useRef<HTMLDetailsElement>(null)
  const summary = useRef<HTMLElement>(null)
  useEffect(() => {
    const closeOutside = ({ target }: PointerEvent): void => {
      if (root.current !== null && target instanceof Node && !root.current.contains(target)) root.current.open = false
    }
    document.addEventListener('pointerdown', closeOutside)
    return () => document.removeEventListener('pointerdown', closeOutside)
  }, [])
  return (
    <details
      ref={root}
      class={`popover${side === 'start' ? ' from-start' : ''}${upward ? ' upward' : ''}`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || root.current?.open !== true) return
        event.stopPropagation()
        root.current.open = false
        summary.current?.focus()
      }}
      onFocusOut={({ relatedTarget }) => {
        const goesElsewhere = relatedTarget instanceof Node && root.current?.contains(relatedTarget) === false
        if (goesElsewhere && root.current !== null) root.current.open = false
      }}
    >
      <summary ref={summary}>{label}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a slip that is longer than the screen is scrolled by keys, too */}
      <div class="slip" tabIndex={0}>
        {children}
      </div>
    </details>
  )
}
