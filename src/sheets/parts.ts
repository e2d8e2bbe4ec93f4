import { coreOf, type Panel } from '../panel/index.ts'
import type { Stock } from '../project/index.ts'
import type { Part } from './types.ts'

/** The parts that come out of each stock, as they leave the saw, before lipping, in the order of the panels; stocks without parts are left out. */
export function partsByStock(panels: readonly Panel[]): Map<Stock, Part[]> {
  const parts = new Map<Stock, Part[]>()
  for (const panel of panels) {
    const { length, width } = coreOf(panel)
    const part = { panel: panel.id, length, width }
    const list = parts.get(panel.stock)
    if (list === undefined) parts.set(panel.stock, [part])
    else list.push(part)
  }
  return parts
}
