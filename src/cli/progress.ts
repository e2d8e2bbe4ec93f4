import type { Io } from './io.ts'
import { widthOf } from './io.ts'

/** One line on the terminal that is written over again and again. */
export interface Progress {
  show(text: string): void
  /** A count of a total; drawn again only when the whole per cent changes, so that it costs nothing. */
  count(done: number, total: number, what: string): void
  /** Wipes the line, before anything else is printed. */
  clear(): void
}

const WIPE = '\r\u001b[K'

/** Shows progress on a terminal that can rewrite a line; silent when stderr is a file or a pipe, and in CI. */
export function progressOn(io: Pick<Io, 'stderr' | 'env'>): Progress {
  const { stderr, env } = io
  if (!stderr.isTTY || env.TERM === 'dumb' || isSet(env.CI)) return { show() {}, count() {}, clear() {} }
  let shown = ''
  let percent = -1
  const show = (text: string) => {
    shown = text.slice(0, Math.max(0, widthOf(stderr, 80) - 1))
    stderr.write(`${WIPE}${shown}`)
  }
  return {
    show,
    count(done, total, what) {
      const now = Math.floor((done * 100) / Math.max(1, total))
      if (now === percent) return
      percent = now
      show(`${done} of ${total}  ${what}`)
    },
    clear() {
      if (shown !== '') stderr.write(WIPE)
      shown = ''
      percent = -1
    },
  }
}

function isSet(value: string | undefined): boolean {
  return value !== undefined && value !== '' && value !== '0' && value !== 'false'
}
