import {
  type Assembly,
  drilledIn,
  edgeNames,
  FLOOR,
  type PlacedHardware,
  type PlacedModule,
  type PlacedPanel,
  type Station,
} from '../assembly/index.ts'
import { compose, type Pose } from '../geometry/index.ts'
import type { Drilling } from '../hardware/index.ts'
import { Kept } from '../memory/index.ts'
import { cutoutOf } from './cutouts.ts'
import { grooveOf } from './grooves.ts'
import { mergeBores } from './merge.ts'
import { surfaceEntered } from './surface.ts'
import type { Bore, BoreUse, Panel } from './types.ts'

/** A bore before it is merged with others that are the same hole, and before it has a name. */
export type RawBore = Omit<Bore, 'id'>

/** What was projected for the last assembly, by what it was made of: what is the same in the next is taken from it. */
export class PanelMemory {
  readonly modules = new Kept<readonly Draft[]>()
  readonly panels = new Kept<Panel>()
  /** The hardware of each module in its own frame, as a list that stays the same thing while its items do. */
  readonly lists = new Kept<readonly PlacedHardware[]>()

  /** The holes of each panel that hardware makes which was placed on the floor. */
  readonly floorBores = new Kept<readonly RawBore[]>()

  get all(): readonly Kept<unknown>[] {
    return [this.modules, this.panels, this.lists, this.floorBores]
  }
}

const NONE: readonly RawBore[] = []

/** A panel before its bores are merged: hardware that is placed on the floor may grip it, too. */
interface Draft {
  readonly panel: PlacedPanel
  readonly work: Pick<Panel, 'moduleName' | 'edges' | 'grooves' | 'cutouts'>
  /** Those of its own module's hardware. */
  readonly own: readonly RawBore[]
}

/** One grip on one panel. */
interface Grip {
  readonly piece: PlacedHardware
  readonly station: Station
}

/**
 * Every panel with all the holes that placed hardware makes in it, in the order of the modules.
 * A hole is never worked out from its partner's: each is the projection of the same placed piece of hardware.
 * With the memory of the last assembly, what is made of the very same parts is not made anew; the result is the same.
 */
export function panelsOf(assembly: Assembly, memory: PanelMemory = new PanelMemory()): Panel[] {
  for (const kept of memory.all) kept.begin()
  const panels = projected(assembly, memory)
  for (const kept of memory.all) kept.settle()
  return panels
}

function projected(assembly: Assembly, memory: PanelMemory): Panel[] {
  const placed = new Map(assembly.modules.flatMap((module) => module.panels.map((panel) => [panel.id, panel])))
  const thicknessOf = (id: string): number | undefined => placed.get(id)?.thickness
  const byFrame = groupBy(assembly.hardware, (piece) => piece.frame)
  const onFloor = gripsOf(byFrame.get(FLOOR) ?? [])
  for (const [id, [grip]] of onFloor) {
    if (!placed.has(id)) throw new Error(`${grip?.piece.id} grips ${id}, which is no panel`)
  }
  const frames = new Set([FLOOR, ...assembly.modules.map((module) => module.key)])
  for (const frame of byFrame.keys()) if (!frames.has(frame)) throw new Error(`hardware stands in ${frame}, no module`)
  return assembly.modules.flatMap((module) => {
    const found = byFrame.get(module.key) ?? []
    const hardware = memory.lists.take(module.key, found, () => found)
    const { panels, cuts, cutouts, name } = module
    const drafts = memory.modules.take(module.key, [panels, cuts, cutouts, name, hardware], () =>
      draftsOf(module, hardware),
    )
    return drafts.map((draft): Panel => {
      const { panel } = draft
      const grips = onFloor.get(panel.id) ?? []
      const floorFromPanel = grips.length === 0 ? undefined : compose(module.floorFromModule, panel.moduleFromPanel)
      // Worked out anew wherever the module stands: they are few, and mostly come out as they were.
      const bores = floorFromPanel && grips.flatMap((grip) => boresOf(grip, panel, floorFromPanel, thicknessOf))
      const onlyOwn = bores === undefined || bores.length === 0
      const others = onlyOwn ? NONE : memory.floorBores.renew(panel.id, bores)
      return memory.panels.take(panel.id, [draft, others], () => panelOf(draft, others))
    })
  })
}

/** A panel with all its work; `bores`: those of hardware that is not its module's own. */
function panelOf({ panel, own, work }: Draft, bores: readonly RawBore[]): Panel {
  const { moduleName, edges, grooves, cutouts } = work
  const all = bores.length === 0 ? own : [...own, ...bores]
  return { ...panel, moduleName, edges, bores: mergeBores(all, panel.thickness), grooves, cutouts }
}

/** The panels of a module, and the holes of the hardware in its own frame. */
function draftsOf(module: PlacedModule, hardware: readonly PlacedHardware[]): Draft[] {
  const placed = new Map(module.panels.map((panel) => [panel.id, panel]))
  const grips = gripsOf(hardware)
  for (const [id, [grip]] of grips) {
    if (!placed.has(id)) throw new Error(`${grip?.piece.id} grips ${id}, which is no panel of its module`)
  }
  return module.panels.map((panel): Draft => {
    const own = (grips.get(panel.id) ?? []).flatMap((grip) =>
      boresOf(grip, panel, panel.moduleFromPanel, (id) => placed.get(id)?.thickness),
    )
    return {
      panel,
      own,
      work: {
        moduleName: module.name,
        edges: edgeNames(panel),
        grooves: module.cuts.filter((cut) => cut.panel === panel.id).map((cut, k) => grooveOf(cut, panel, k + 1)),
        cutouts: module.cutouts.filter((cutout) => cutout.panel === panel.id).map((cutout) => cutoutOf(cutout, panel)),
      },
    }
  })
}

/** Every grip of some hardware, by the panel. */
function gripsOf(hardware: readonly PlacedHardware[]): Map<string, Grip[]> {
  const grips = new Map<string, Grip[]>()
  for (const piece of hardware) {
    for (const station of piece.stations) {
      const there = grips.get(station.panel)
      if (there === undefined) grips.set(station.panel, [{ piece, station }])
      else there.push({ piece, station })
    }
  }
  return grips
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [item])
    else group.push(item)
  }
  return groups
}

/** The holes of one grip on its panel, panel frame. */
function boresOf(
  { piece, station }: Grip,
  panel: PlacedPanel,
  frameFromPanel: Pose,
  thicknessOf: (id: string) => number | undefined,
): RawBore[] {
  return drilledIn(piece, station, panel, frameFromPanel, thicknessOf).map(({ drilling, at, axis, depth }): RawBore => {
    const { diameter, sink, leanDeg, edgeWall, purpose } = drilling
    const surface = surfaceEntered(axis)
    const through = drilling.depth === 'through'
    const uses = [useOf(piece, station, drilling, surface, depth)]
    // Most holes are plain; there are thousands of them, and they are written out at once.
    if (sink === undefined && leanDeg === undefined && edgeWall === undefined) {
      return { surface, at, axis, diameter, depth, through, purpose, uses }
    }
    return {
      surface,
      at,
      axis,
      diameter,
      depth,
      through,
      ...(sink && { sink }),
      ...(leanDeg !== undefined && { leanDeg }),
      ...(edgeWall !== undefined && { edgeWall }),
      purpose,
      uses,
    }
  })
}

const useOf = (
  piece: PlacedHardware,
  station: Station,
  drilling: Drilling,
  surface: BoreUse['surface'],
  depth: number,
): BoreUse => ({
  hardware: piece.id,
  item: piece.item.id,
  part: station.part,
  drilling: drilling.key,
  series: piece.series,
  purpose: drilling.purpose,
  keepsApart: piece.keepsApart === true,
  surface,
  depth,
})
