import type { PanelId } from '../../assembly/index.ts'
import type { LaidOut } from '../../outputs/index.ts'

const found = new WeakMap<LaidOut, ReadonlyMap<PanelId, ReadonlyMap<PanelId, number>>>()

/** How many pieces of hardware each panel shares with which others; worked out once. */
export function kinOf(laid: LaidOut): ReadonlyMap<PanelId, ReadonlyMap<PanelId, number>> {
  const known = found.get(laid)
  if (known !== undefined) return known
  const kin = new Map<PanelId, Map<PanelId, number>>()
  for (const { stations } of laid.assembly.hardware) {
    const [a, b] = stations
    if (stations.length === 2 && a !== undefined && b !== undefined) {
      if (a.panel !== b.panel) {
        count(kin, a.panel, b.panel)
        count(kin, b.panel, a.panel)
      }
      continue
    }
    const grips = [...new Set(stations.map(({ panel }) => panel))]
    for (const one of grips) for (const other of grips) if (one !== other) count(kin, one, other)
  }
  found.set(laid, kin)
  return kin
}

function count(kin: Map<PanelId, Map<PanelId, number>>, one: PanelId, other: PanelId): void {
  const counts = kin.get(one)
  if (counts === undefined) kin.set(one, new Map([[other, 1]]))
  else counts.set(other, (counts.get(other) ?? 0) + 1)
}

/** The panels that share hardware with one, those that share most first. */
export function matesOf(laid: LaidOut, panel: PanelId): PanelId[] {
  const counts = kinOf(laid).get(panel) ?? new Map<PanelId, number>()
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([id]) => id)
}
