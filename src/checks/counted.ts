import type { Panel } from '../panel/index.ts'

/** Things of one trouble, counted by what they are for, and the panels that they are in. */
export interface Tally {
  readonly byPurpose: Map<string, number>
  readonly panels: Set<Panel>
}

export const emptyTally = (): Tally => ({ byPurpose: new Map(), panels: new Set() })

export function count({ byPurpose, panels }: Tally, purpose: string, panel: Panel): void {
  byPurpose.set(purpose, (byPurpose.get(purpose) ?? 0) + 1)
  panels.add(panel)
}

/** `12 hinge cups and 4 dowels in 6 panels (the first glaze store, left door)`. */
export function tallyWords({ byPurpose, panels }: Tally): string {
  const things = [...byPurpose].map(([purpose, n]) => manyWords(n, purpose))
  const list = things.length < 2 ? things.join('') : `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`
  const [first] = panels
  const name = first === undefined ? '' : `${first.moduleName}, ${first.name}`
  return panels.size === 1 ? `${list} in ${name}` : `${list} in ${panels.size} panels (the first is ${name})`
}

/** `wait`, or of one thing alone `waits`. */
export const waitWord = ({ byPurpose }: Tally): string =>
  [...byPurpose.values()].reduce((sum, n) => sum + n, 0) === 1 ? 'waits' : 'wait'

/** `12 hinge cups`, `1 dowel`; a purpose of many words is counted without an ending. */
function manyWords(n: number, purpose: string): string {
  if (n === 1) return `1 ${purpose}`
  return /^[a-z]+( [a-z]+)?$/.test(purpose) && !purpose.endsWith('s') ? `${n} ${purpose}s` : `${n} × ${purpose}`
}
