import {
  type Assembly,
  drilledIn,
  edgeNames,
  FLOOR,
  type PlacedHardware,
  type PlacedPanel,
  type Station,
} from '../assembly/index.ts'
import { compose, type Pose } from '../geometry/index.ts'
import type { Drilling } from '../hardware/index.ts'
import { cutoutOf } from './cutouts.ts'
import { grooveOf } from './grooves.ts'
import { mergeBores } from './merge.ts'
import { surfaceEntered } from './surface.ts'
import type { Bore, BoreUse, Panel } from './types.ts'

/** A bore before it is merged with others that are the same hole, and before it has a name. */
export type RawBore = Omit<Bore, 'id'>

/**
 * Every panel with all the holes that placed hardware makes in it, in the order of the modules.
 * A hole is never worked out from its partner's: each is the projection of the same placed piece of hardware.
 */
export function panelsOf(assembly: Assembly): Panel[] {
  const poses = new Map<string, { panel: PlacedPanel; floorFromPanel: Pose }>()
  for (const module of assembly.modules) {
    for (const panel of module.panels) {
      poses.set(panel.id, { panel, floorFromPanel: compose(module.floorFromModule, panel.moduleFromPanel) })
    }
  }
  const bores = new Map<string, RawBore[]>()
  for (const piece of assembly.hardware) {
    for (const station of piece.stations) {
      const found = poses.get(station.panel)
      if (found === undefined) throw new Error(`${piece.id} grips ${station.panel}, which is no panel`)
      const frameFromPanel = piece.frame === FLOOR ? found.floorFromPanel : found.panel.moduleFromPanel
      const list = bores.get(station.panel) ?? []
      list.push(...project(piece, station, found.panel, frameFromPanel, (id) => poses.get(id)?.panel.thickness))
      bores.set(station.panel, list)
    }
  }
  return assembly.modules.flatMap((module) =>
    module.panels.map(
      (panel): Panel => ({
        ...panel,
        moduleName: module.name,
        edges: edgeNames(panel),
        bores: mergeBores(bores.get(panel.id) ?? [], panel.thickness),
        grooves: module.cuts.filter((cut) => cut.panel === panel.id).map((cut, k) => grooveOf(cut, panel, k + 1)),
        cutouts: module.cutouts.filter((cutout) => cutout.panel === panel.id).map((cutout) => cutoutOf(cutout, panel)),
      }),
    ),
  )
}

/** The holes of one station in its panel, panel frame. */
function project(
  piece: PlacedHardware,
  station: Station,
  panel: PlacedPanel,
  frameFromPanel: Pose,
  thicknessOf: (id: string) => number | undefined,
): RawBore[] {
  return drilledIn(piece, station, panel, frameFromPanel, thicknessOf).map(({ drilling, at, axis, depth }): RawBore => {
    const surface = surfaceEntered(axis)
    return {
      surface,
      at,
      axis,
      diameter: drilling.diameter,
      depth,
      through: drilling.depth === 'through',
      ...(drilling.sink && { sink: drilling.sink }),
      ...(drilling.leanDeg !== undefined && { leanDeg: drilling.leanDeg }),
      ...(drilling.edgeWall !== undefined && { edgeWall: drilling.edgeWall }),
      purpose: drilling.purpose,
      uses: [{ ...useOf(piece, station, drilling), surface, depth }],
    }
  })
}

const useOf = (piece: PlacedHardware, station: Station, drilling: Drilling): Omit<BoreUse, 'surface' | 'depth'> => ({
  hardware: piece.id,
  item: piece.item.id,
  part: station.part,
  drilling: drilling.key,
  series: piece.series,
  purpose: drilling.purpose,
  keepsApart: piece.keepsApart === true,
})
