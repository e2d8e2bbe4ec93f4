import { NOISE_MM, roundMm, same } from '../geometry/index.ts'
import type { Bore } from './types.ts'

/**
 * Bores that one label and one line of a table describe: the same surface, bit, depth, sink and slant, a purpose that
 * all of them share, in one line, evenly spaced; or a few unevenly spaced ones, where their even rows would lie inside
 * each other. A bore that fits into no row is a run of one.
 */
export interface Run {
  /** In the order of their places along the run, ascending. */
  readonly bores: readonly [Bore, ...Bore[]]
  /** From each bore to the next, mm; 0 for a run of one, and for one that is uneven. */
  readonly step: number
  /** The panel axis that the run follows; for a run of one on an edge, the axis of the edge. */
  readonly along: 'x' | 'y'
  /** What all its bores are for. */
  readonly purpose: string
}

/** What a bore is for: the purposes of everything that uses it, each once. */
export function purposesOf(bore: Bore): string[] {
  const purposes = bore.uses.length > 0 ? bore.uses.map((use) => use.purpose) : [bore.purpose]
  return [...new Set(purposes)]
}

/**
 * All bores of a panel in runs, each bore in exactly one. Rows are found by place alone and not by series, since a
 * bit does not care what asked for a hole: longest rows first, of equal ones the closest spaced, then those along x.
 * A row that several runs could claim breaks where its step changes. The order is that of `bores`.
 */
export function runsOf(bores: readonly Bore[]): Run[] {
  const alike = new Map<string, Bore[]>()
  for (const bore of bores) {
    const key = toolingOf(bore)
    const group = alike.get(key)
    if (group) group.push(bore)
    else alike.set(key, [bore])
  }
  const order = new Map(bores.map((bore, k) => [bore, k]))
  const firstOf = (run: Run): number => Math.min(...run.bores.map((bore) => order.get(bore) ?? 0))
  return [...alike.values()].flatMap((some) => untangled(rowsOf(some))).sort((a, b) => firstOf(a) - firstOf(b))
}

/** Bores with equal keys are made with the same bit, setting and direction, from the same surface. */
function toolingOf(bore: Bore): string {
  const depth = bore.through ? 'through' : roundMm(bore.depth)
  const lean = bore.leanDeg === undefined ? 'square' : [bore.leanDeg, ...bore.axis].map(roundMm)
  return JSON.stringify([bore.surface, roundMm(bore.diameter), depth, lean, bore.sink ?? 'plain'])
}

function rowsOf(alike: readonly Bore[]): Run[] {
  const runs: Run[] = []
  let left = [...alike]
  for (;;) {
    const best = bestRow(left)
    if (!best) break
    runs.push(best)
    const taken = new Set<Bore>(best.bores)
    left = left.filter((bore) => !taken.has(bore))
  }
  return [...runs, ...left.map(single)]
}

/** A run of several bores that are not evenly spaced. */
export function isUneven({ bores, step }: Run): boolean {
  return bores.length > 1 && step === 0
}

/** As many bores at most are one uneven run: their places are written out. */
const MOST_UNEVEN = 6

/** Short rows of one line that lie between each other's bores become one run, so that nobody takes one hole for another. */
function untangled(runs: readonly Run[]): Run[] {
  for (const [k, one] of runs.entries()) {
    const other = runs.slice(k + 1).find((some) => areTangled(one, some))
    if (other === undefined) continue
    const axis = one.along === 'x' ? 0 : 1
    const [first, ...rest] = [...one.bores, ...other.bores].sort((a, b) => a.at[axis] - b.at[axis])
    if (first === undefined) continue
    const joined: Run = { ...one, bores: [first, ...rest], step: 0 }
    return untangled([...runs.slice(0, k), joined, ...runs.slice(k + 1).filter((some) => some !== other)])
  }
  return [...runs]
}

function areTangled(a: Run, b: Run): boolean {
  if (a.along !== b.along || a.purpose !== b.purpose) return false
  if (a.bores.length < 2 || b.bores.length < 2 || a.bores.length + b.bores.length > MOST_UNEVEN) return false
  const axis = a.along === 'x' ? 0 : 1
  const across = a.along === 'x' ? 1 : 0
  const [p, q] = [a.bores[0].at, b.bores[0].at]
  if (!same(p[across], q[across]) || !same(p[2], q[2])) return false
  const end = ({ bores }: Run): number => (bores.at(-1) ?? bores[0]).at[axis]
  return p[axis] < end(b) && q[axis] < end(a)
}

function single(bore: Bore): Run {
  const along = bore.surface === 'x0' || bore.surface === 'x1' ? 'y' : 'x'
  return { bores: [bore], step: 0, along, purpose: purposesOf(bore).join(' and ') }
}

function bestRow(bores: readonly Bore[]): Run | undefined {
  let best: Run | undefined
  for (const purpose of new Set(bores.flatMap(purposesOf))) {
    const wanted = bores.filter((bore) => purposesOf(bore).includes(purpose))
    for (const along of ['x', 'y'] as const) {
      for (const line of linesOf(wanted, along)) {
        for (const row of evenRows(line, along, purpose)) if (!best || isBetter(row, best)) best = row
      }
    }
  }
  return best
}

/** The earlier found wins where two rows are equal in both. */
function isBetter(row: Run, best: Run): boolean {
  if (row.bores.length !== best.bores.length) return row.bores.length > best.bores.length
  return row.step < best.step - NOISE_MM
}

/** Bores on common lines along an axis of the panel, each line sorted. */
function linesOf(bores: readonly Bore[], along: 'x' | 'y'): Bore[][] {
  const axis = along === 'x' ? 0 : 1
  const across = [along === 'x' ? 1 : 0, 2] as const
  const lines = new Map<string, Bore[]>()
  for (const bore of bores) {
    const key = across.map((k) => roundMm(bore.at[k])).join(' ')
    const line = lines.get(key)
    if (line) line.push(bore)
    else lines.set(key, [bore])
  }
  return [...lines.values()].map((line) => line.sort((a, b) => a.at[axis] - b.at[axis]))
}

/** The longest evenly spaced stretches of a sorted line, of two bores or more; neighbours share the bore between. */
function evenRows(line: readonly Bore[], along: 'x' | 'y', purpose: string): Run[] {
  const axis = along === 'x' ? 0 : 1
  const gap = (k: number): number => (line[k]?.at[axis] ?? 0) - (line[k - 1]?.at[axis] ?? 0)
  const rows: Run[] = []
  let start = 0
  for (let k = 1; k < line.length; k += 1) {
    if (k + 1 < line.length && same(gap(k), gap(k + 1))) continue
    const [first, ...rest] = line.slice(start, k + 1)
    if (first && gap(k) > NOISE_MM) rows.push({ bores: [first, ...rest], step: gap(k), along, purpose })
    start = k
  }
  return rows
}
