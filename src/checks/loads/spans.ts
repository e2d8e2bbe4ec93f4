import { boardBox } from '../../assembly/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { LoadedModule } from './loaded.ts'

/** A stretch of a shelf between two supports. */
export interface ShelfSpan {
  readonly panel: Panel
  readonly span: number
}

/**
 * Loose shelves from end to end, and fixed shelves from one upright below them to the next, mm. A back that they are
 * fixed to is not counted, and what lies right under drawers carries nothing.
 */
export function shelfSpans({ panels, drawers }: Pick<LoadedModule, 'panels' | 'drawers'>): ShelfSpan[] {
  const shelves = panels.filter(({ role }) => role === 'loose shelf' || role === 'fixed shelf')
  const uprights = panels.filter(({ role }) => role === 'partition').map(boardBox)
  return shelves.flatMap((panel) => {
    if (panel.role === 'loose shelf') return [{ panel, span: panel.length }]
    const { min, max } = boardBox(panel)
    const below = uprights
      .filter((box) => box.min[2] < min[2] && box.max[2] >= min[2] - NOISE_MM && box.max[2] <= max[2])
      .filter((box) => box.min[0] > min[0] && box.max[0] < max[0])
      .sort((a, b) => a.min[0] - b.min[0])
    const ends = [min[0], ...below.flatMap((box) => [box.min[0], box.max[0]]), max[0]]
    const stretches = Array.from(
      { length: ends.length / 2 },
      (_, k) => [ends[2 * k] ?? 0, ends[2 * k + 1] ?? 0] as const,
    )
    return stretches
      .filter(([from, to]) => to - from > NOISE_MM && !drawers.some(({ box }) => liesUnder(box, from, to, max[2])))
      .map(([from, to]) => ({ panel, span: to - from }))
  })
}

/** Drawers run above most of this stretch, so low that nothing else stands between. */
function liesUnder(
  box: { readonly min: readonly number[]; readonly max: readonly number[] },
  from: number,
  to: number,
  upper: number,
): boolean {
  const covered = Math.min(to, box.max[0] ?? 0) - Math.max(from, box.min[0] ?? 0)
  const above = (box.min[2] ?? 0) - upper
  return covered > (to - from) / 2 && above >= -NOISE_MM && above < LOWEST_DRAWER_MM
}

/** The lowest drawer of a stack runs so low over the shelf under it, mm; own choice, well over the usual 12. */
const LOWEST_DRAWER_MM = 60
