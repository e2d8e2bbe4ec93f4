import { FLOOR, type PanelId, type PlacedHardware } from '../../assembly/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Panel } from '../../panel/index.ts'
import { indexOf } from './laid-index.ts'

/** How many pieces of hardware each panel shares with which others. */
export type Kin = ReadonlyMap<PanelId, ReadonlyMap<PanelId, number>>

const found = new WeakMap<LaidOut, Map<string, Kin>>()

/** How many pieces of hardware that stand in one frame, that of a module or FLOOR, each panel shares; worked out once. */
function kinIn(laid: LaidOut, frame: string): Kin {
  const known = found.get(laid) ?? new Map<string, Kin>()
  found.set(laid, known)
  const kin = known.get(frame) ?? kinOf(indexOf(laid).hardwareOf.get(frame) ?? [])
  known.set(frame, kin)
  return kin
}

/** The same of any pieces. */
export function kinOf(hardware: readonly PlacedHardware[]): Kin {
  const kin = new Map<PanelId, Map<PanelId, number>>()
  for (const { stations } of hardware) {
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
  return kin
}

function count(kin: Map<PanelId, Map<PanelId, number>>, one: PanelId, other: PanelId): void {
  const counts = kin.get(one)
  if (counts === undefined) kin.set(one, new Map([[other, 1]]))
  else counts.set(other, (counts.get(other) ?? 0) + 1)
}

/** The panels that share hardware with one, those that share most first. */
export function matesOf(laid: LaidOut, { id, module }: Panel): PanelId[] {
  // Hardware that stands in the frame of a module grips panels of that module alone; what lies between modules stands on the floor.
  const counts = new Map<PanelId, number>()
  for (const frame of [module, FLOOR]) {
    for (const [other, shared] of kinIn(laid, frame).get(id) ?? []) {
      counts.set(other, (counts.get(other) ?? 0) + shared)
    }
  }
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([mate]) => mate)
}

/** True where two panels share hardware. */
export const areMates = (laid: LaidOut, one: Panel, other: PanelId): boolean =>
  [one.module, FLOOR].some((frame) => kinIn(laid, frame).get(one.id)?.has(other) === true)
