import { useMemo } from 'preact/hooks'
import { useBench } from './bench.ts'
import { type Taking, takingFrom } from './taking.ts'

export type { Taking } from './taking.ts'

/** The files that are taken from this page. */
export function useTaking(): Taking {
  const bench = useBench()
  return useMemo(() => takingFrom(bench.page, bench.desk.crew), [bench])
}
