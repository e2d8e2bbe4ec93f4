import { add, place, scale, turn } from '../../geometry/index.ts'
import type { Drilling } from '../../hardware/index.ts'
import { drilledIn } from '../drilled.ts'
import type { PlacedHardware, PlacedPanel, Station } from '../types.ts'
import type { Area } from './plan.ts'

/** Wood between a bore in an edge and a screw through the faces, and the radius of the largest head, mm; common practice. */
const BESIDE_MM = 5 + 5

/** What bores in the edges of a flat panel, and pockets in its faces, keep a screw through its faces out of, seen from above. */
export function edgeBores(
  panel: PlacedPanel,
  panels: readonly PlacedPanel[],
  hardware: readonly PlacedHardware[],
): Area[] {
  return hardware.flatMap((piece) =>
    piece.stations
      .filter((station) => station.panel === panel.id)
      .flatMap((station) => {
        const drillings = piece.item.parts[station.part] ?? []
        if (drillings.some(({ leanDeg }) => leanDeg !== undefined)) return pocketAreas(piece, station, panel)
        if (Math.abs(station.pose.z[2]) > 0.5) return []
        return drillings.map((drilling) => boreArea(station, drilling, depthOf(drilling, piece, panels)))
      }),
  )
}

/** A pocket with its mouth, which is as long as a slanted cut through the bit: its diameter by the sine of the lean. */
function pocketAreas(piece: PlacedHardware, station: Station, panel: PlacedPanel): Area[] {
  return drilledIn(piece, station, panel, panel.moduleFromPanel, () => panel.thickness).flatMap(
    ({ drilling, at, axis, depth }) => {
      if (drilling.leanDeg === undefined) return []
      const lean = (drilling.leanDeg * Math.PI) / 180
      const mouth = place(panel.moduleFromPanel, at)
      const way = turn(panel.moduleFromPanel, axis)
      const end = add(mouth, scale(way, depth))
      const half = drilling.diameter / 2
      const along = half / Math.sin(lean)
      const far = Math.hypot(way[0], way[1])
      const [ux, uy] = [Math.abs(way[0]) / far, Math.abs(way[1]) / far]
      const reach = [ux * along + uy * half + BESIDE_MM, uy * along + ux * half + BESIDE_MM] as const
      return [
        {
          x0: Math.min(mouth[0] - reach[0], end[0] - half - BESIDE_MM),
          x1: Math.max(mouth[0] + reach[0], end[0] + half + BESIDE_MM),
          y0: Math.min(mouth[1] - reach[1], end[1] - half - BESIDE_MM),
          y1: Math.max(mouth[1] + reach[1], end[1] + half + BESIDE_MM),
        },
      ]
    },
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
