import { Fragment, type JSX } from 'preact'

/** Words of a finding; what is to be typed as it stands (between back-ticks) in the letters of the definition. */
export function TypedWords({ words }: { readonly words: string }): JSX.Element {
  return (
    <>
      {typedParts(words).map(({ text, isTyped }, k) =>
        isTyped ? <code key={k}>{text}</code> : <Fragment key={k}>{text}</Fragment>,
      )}
    </>
  )
}

/** Splits words at their back-ticks; one without a partner is a sign like any other. */
export function typedParts(words: string): { readonly text: string; readonly isTyped: boolean }[] {
  return words
    .split(/(`[^`]+`)/)
    .filter((text) => text !== '')
    .map((text) => (/^`[^`]+`$/.test(text) ? { text: text.slice(1, -1), isTyped: true } : { text, isTyped: false }))
}
