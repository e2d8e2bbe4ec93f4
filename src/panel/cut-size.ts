import type { EdgeSide, PlacedPanel } from '../assembly/index.ts'

/** What is cut from the sheet: the finished panel less the lippings on its edges. Panel frame, mm. */
export interface Core {
  readonly min: readonly [x: number, y: number]
  readonly max: readonly [x: number, y: number]
  readonly length: number
  readonly width: number
}

/** The core of a panel; without lippings, the panel itself. */
export function coreOf({ length, width, lipping }: Pick<PlacedPanel, 'length' | 'width' | 'lipping'>): Core {
  const at = (side: EdgeSide): number => lipping?.[side] ?? 0
  const min = [at('x0'), at('y0')] as const
  const max = [length - at('x1'), width - at('y1')] as const
  return { min, max, length: max[0] - min[0], width: max[1] - min[1] }
}
