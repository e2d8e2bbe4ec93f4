import { useMemo } from 'preact/hooks'
import { usePage } from '../state/page.ts'
import type { Bench } from './actions.ts'
import { useDesk } from './desk.ts'

/** Page and desk, for what is done with files. */
export function useBench(): Bench {
  const page = usePage()
  const desk = useDesk()
  return useMemo(() => ({ page, desk }), [page, desk])
}

/** Does what was pressed and shuts the slip that it stands on. */
export function shut({ currentTarget }: { readonly currentTarget: HTMLElement }, then: () => unknown): void {
  const slip = currentTarget.closest('details')
  if (slip !== null) {
    slip.open = false
    slip.querySelector('summary')?.focus()
  }
  then()
}
