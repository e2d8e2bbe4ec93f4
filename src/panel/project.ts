import {
  type Assembly,
  edgeNames,
  FLOOR,
  type PlacedHardware,
  type PlacedPanel,
  type Station,
} from '../assembly/index.ts'
import {
  add,
  compose,
  dot,
  NOISE_MM,
  type Pose,
  place,
  placeBack,
  scale,
  turn,
  turnBack,
  type Vec3,
} from '../geometry/index.ts'
import type { Depth, Drilling } from '../hardware/index.ts'
import { cutoutOf } from './cutouts.ts'
import { grooveOf } from './grooves.ts'
import { mergeBores } from './merge.ts'
import { extentAlong, surfaceEntered } from './surface.ts'
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
  const drillings = piece.item.parts[station.part]
  if (drillings === undefined) throw new Error(`${piece.item.id} has no part ${station.part}`)
  // z of the station, from the contact plane into the wood, seen in the panel frame.
  const inward = turnBack(frameFromPanel, station.wood === 'ahead' ? station.pose.z : scale(station.pose.z, -1))
  const [from, to] = extentAlong(panel, inward)
  return drillings.map((drilling): RawBore => {
    const onContact = placeBack(frameFromPanel, place(station.pose, [drilling.x, drilling.y, 0]))
    const woodAhead = to - dot(inward, onContact)
    const woodBehind = dot(inward, onContact) - from
    if (woodAhead < NOISE_MM || woodBehind < -NOISE_MM) {
      throw new Error(`${piece.id} ${station.part}: ${panel.id} does not lie on its side of the contact plane`)
    }
    const entry = drilling.enter === 'contact' ? onContact : add(onContact, scale(inward, woodAhead))
    const square = drilling.enter === 'contact' ? inward : scale(inward, -1)
    const axis = drilling.leanDeg === undefined ? square : leaning(drilling.leanDeg, station, frameFromPanel, square)
    const depth = depthOf(drilling.depth, piece, woodAhead, thicknessOf)
    const surface = surfaceEntered(axis)
    return {
      surface,
      at: entry,
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

/** A bit that leans toward the station's +x, at `leanDeg` to the surface. */
function leaning(leanDeg: number, station: Station, frameFromPanel: Pose, square: Vec3): Vec3 {
  const toward = turnBack(frameFromPanel, turn(station.pose, [1, 0, 0]))
  const angle = (leanDeg * Math.PI) / 180
  return add(scale(toward, Math.cos(angle)), scale(square, Math.sin(angle)))
}

function depthOf(
  depth: Depth,
  piece: PlacedHardware,
  wood: number,
  thicknessOf: (id: string) => number | undefined,
): number {
  if (depth === 'through') return wood
  if (typeof depth === 'number') return depth
  if ('setting' in depth) {
    const value = piece.settings[depth.setting]
    if (value === undefined) throw new Error(`${piece.id}: no setting ${depth.setting}`)
    return value
  }
  const other = piece.stations.find((station) => station.part === depth.from)
  const thickness = other && thicknessOf(other.panel)
  if (thickness === undefined) throw new Error(`${piece.id}: no board at part ${depth.from}`)
  return depth.reach - thickness
}
