import type { Frames } from './frames.ts'
import { LineReading } from './lines.ts'
import type { Here } from './reading.ts'

export type { Here } from './reading.ts'

/**
 * What stands at an offset of a definition's text, also of one that is only half typed: nothing in comments, in the
 * spaces that indent a line, and in texts of several lines. Line ends are LF or CRLF.
 */
export function pathAt(text: string, offset: number): Here | undefined {
  return new LineReading(text, offset).read()
}

/** The names that a definition's text gives to its stock, modules and own hardware, in order. */
export function namesIn(text: string): Readonly<Record<'stock' | 'module' | 'hardware', readonly string[]>> {
  const names = { stock: [] as string[], module: [] as string[], hardware: [] as string[] }
  const lists: Readonly<Record<string, string[]>> = {
    stock: names.stock,
    modules: names.module,
    hardware: names.hardware,
  }
  const hear = ({ open }: Frames): void => {
    const list = open.length === 2 ? lists[open[0]?.key ?? ''] : undefined
    const name = open[1]?.key
    if (list !== undefined && name !== undefined) list.push(name)
  }
  new LineReading(text, text.length + 1, hear).read()
  return names
}
