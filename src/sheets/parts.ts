import type { Panel } from '../panel/index.ts'
import type { Stock } from '../project/index.ts'
import type { Part } from './types.ts'

/** The parts that come out of each stock, in the order of the panels; stocks without parts are left out. */
export function partsByStock(panels: readonly Panel[]): Map<Stock, Part[]> {
  const parts = new Map<Stock, Part[]>()
  for (const panel of panels) {
    const part = { panel: panel.id, length: panel.length, width: panel.width }
    const list = parts.get(panel.stock)
    if (list === undefined) parts.set(panel.stock, [part])
    else list.push(part)
  }
  return parts
}
