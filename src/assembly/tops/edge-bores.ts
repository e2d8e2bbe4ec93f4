import { add, scale } from '../../geometry/index.ts'
import type { Drilling } from '../../hardware/index.ts'
import type { PlacedHardware, PlacedPanel, Station } from '../types.ts'
import type { Area } from './plan.ts'

/** Wood between a bore in an edge and a screw through the faces, and the radius of the largest head, mm; common practice. */
const BESIDE_MM = 5 + 5

/** What bores in the edges of a flat panel keep a screw through its faces out of, seen from above. */
export function edgeBores(
  panel: PlacedPanel,
  panels: readonly PlacedPanel[],
  hardware: readonly PlacedHardware[],
): Area[] {
  return hardware.flatMap((piece) =>
    piece.stations
      .filter((station) => station.panel === panel.id && Math.abs(station.pose.z[2]) < 0.5)
      .flatMap((station) =>
        (piece.item.parts[station.part] ?? []).map((drilling) =>
          boreArea(station, drilling, depthOf(drilling, piece, panels)),
        ),
      ),
  )
}

/** Upper bound of a depth, mm. */
function depthOf({ depth }: Drilling, piece: PlacedHardware, panels: readonly PlacedPanel[]): number {
  if (typeof depth === 'number') return depth
  if (depth === 'through') return 0
  if ('setting' in depth) return piece.settings[depth.setting] ?? 0
  const other = piece.stations.find((station) => station.part === depth.from)?.panel
  return depth.reach - (panels.find((panel) => panel.id === other)?.thickness ?? 0)
}

function boreArea({ pose, wood }: Station, drilling: Drilling, depth: number): Area {
  const end = add(pose.origin, scale(pose.z, wood === 'ahead' ? depth : -depth))
  const beside = drilling.diameter / 2 + BESIDE_MM
  const [x, y] = [
    [pose.origin[0], end[0]],
    [pose.origin[1], end[1]],
  ] as const
  return {
    x0: Math.min(...x) - beside,
    x1: Math.max(...x) + beside,
    y0: Math.min(...y) - beside,
    y1: Math.max(...y) + beside,
  }
}
