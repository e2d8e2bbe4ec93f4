import type { PanelId } from '../../assembly/index.ts'
import type { LaidOut } from '../../outputs/index.ts'

const found = new WeakMap<LaidOut, ReadonlyMap<PanelId, ReadonlyMap<PanelId, number>>>()

/** How many pieces of hardware each panel shares with which others; worked out once. */
export function kinOf(laid: LaidOut): ReadonlyMap<PanelId, ReadonlyMap<PanelId, number>> {
  const known = found.get(laid)
  if (known !== undefined) return known
  const kin = new Map<PanelId, Map<PanelId, number>>()
  for (const { stations } of laid.assembly.hardware) {
    const grips = [...new Set(stations.map(({ panel }) => panel))]
    for (const one of grips) {
      for (const other of grips) {
        if (one === other) continue
        const counts = kin.get(one) ?? new Map<PanelId, number>()
        counts.set(other, (counts.get(other) ?? 0) + 1)
        kin.set(one, counts)
      }
    }
  }
  found.set(laid, kin)
  return kin
}

/** The panels that share hardware with one, those that share most first. */
export function matesOf(laid: LaidOut, panel: PanelId): PanelId[] {
  const counts = kinOf(laid).get(panel) ?? new Map<PanelId, number>()
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([id]) => id)
}
