import { type Box, NOISE_MM, type Pose, place, placeBack, placedBox, turnBack } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import type { Kept } from '../../memory/index.ts'
import type { RowSpec, WorktopSpec } from '../../project/index.ts'
import { board } from '../boards.ts'
import { heightEdit } from '../floor/index.ts'
import { onFloor } from '../on-floor.ts'
import { merge, type Parts } from '../parts.ts'
import type { PlacedHardware, PlacedModule, PlacedPanel, PlacingTrouble } from '../types.ts'
import { fromBelow } from './fixing.ts'
import { topBox } from './worktop.ts'

/** A worktop over a row: an owner of its own beside the modules, and its screws in the floor frame. */
export interface RowTop {
  readonly modules: readonly PlacedModule[]
  readonly parts: Parts
}

/** The screws that hold one module to a worktop, as they lie in it. */
export interface TopScrews {
  readonly screws: readonly PlacedHardware[]
  readonly troubles: readonly PlacingTrouble[]
}

interface BuiltModule {
  readonly module: PlacedModule
  readonly parts: Parts
}

/**
 * The worktop of a row whose modules are in their places: it lies on the highest of them and is screwed to all that
 * reach it. Its own frame begins at the front left corner of the row, on its underside. `kept`: the screws of each module, as
 * they were placed the last time.
 */
export function rowTop(row: RowSpec, placed: readonly BuiltModule[], kept: Kept<TopScrews>): RowTop {
  const modules = placed.map((one) => one.module)
  const spec = row.worktop
  const [first] = modules
  if (spec === undefined || first === undefined) return { modules: [], parts: merge([]) }
  const boxes = modules.map((module) => carcaseBox(first, module))
  const z = Math.max(...boxes.map((box) => box.max[2]))
  const least = (axis: 0 | 1): number => Math.min(...boxes.map((box) => box.min[axis]))
  const most = (axis: 0 | 1): number => Math.max(...boxes.map((box) => box.max[axis]))
  const origin = place(first.floorFromModule, [least(0), least(1), z])
  const floorFromRow: Pose = { ...first.floorFromModule, origin }
  const size = { width: most(0) - least(0), depth: most(1) - least(1) }
  const panel = board({
    module: spec.key,
    role: 'worktop',
    name: 'worktop',
    stock: spec.stock,
    box: topBox(size, spec.overhang, 0, spec.stock.thickness),
    at: spec.at,
  })
  const level = placed.filter((_, k) => (boxes[k]?.max[2] ?? 0) >= z - NOISE_MM)
  const fixed = level.map(({ module, parts }) => {
    const { screws, troubles } = screwsOf(spec, panel, module, parts, kept)
    return { hardware: screws.map((screw) => onFloor(screw, module.floorFromModule)), troubles }
  })
  const owner: PlacedModule = {
    key: spec.key,
    name: spec.name,
    size: { ...size, height: spec.stock.thickness },
    baseHeight: origin[2],
    packing: 0,
    floorFromModule: floorFromRow,
    liesOver: row.modules,
    panels: [panel],
    cuts: [],
    cutouts: [],
    at: spec.at,
  }
  return { modules: [owner], parts: merge([{ troubles: unevenTops(spec.at, panel, modules, boxes, z) }, ...fixed]) }
}

/** The screws of one module, in its own frame: they do not depend on where it stands under the worktop. */
function screwsOf(
  spec: WorktopSpec,
  { id, key, name, thickness }: PlacedPanel,
  module: PlacedModule,
  { hardware }: Parts,
  kept: Kept<TopScrews>,
): TopScrews {
  const of = [spec, id, key, name, thickness, module.name, module.panels, hardware]
  return kept.take(module.key, of, () => {
    // From the sides by pockets it can only be done on a module's own top.
    if (spec.fix?.kind !== 'from below') return { screws: [], troubles: [] }
    const fixed = fromBelow(
      {
        module: module.key,
        moduleName: module.name,
        panels: module.panels,
        hardware,
        spec,
        top: { id, key, name, thickness },
        cuts: [],
      },
      spec.fix,
    )
    return { screws: fixed.hardware, troubles: fixed.troubles }
  })
}

/** The outside box of a module's carcase and fronts in the frame of another, mm. */
function carcaseBox(frame: PlacedModule, { floorFromModule, size }: PlacedModule): Box {
  const { x, y, z, origin } = floorFromModule
  const back = (v: Pose['x']): Pose['x'] => turnBack(frame.floorFromModule, v)
  const pose: Pose = { x: back(x), y: back(y), z: back(z), origin: placeBack(frame.floorFromModule, origin) }
  return placedBox(pose, { min: [0, 0, 0], max: [size.width, size.depth, size.height] })
}

/** Modules whose carcases end below the worktop that is to lie on them. */
function unevenTops(
  at: PlacingTrouble['at'],
  panel: PlacedPanel,
  modules: readonly PlacedModule[],
  boxes: readonly Box[],
  z: number,
): PlacingTrouble[] {
  const highest = modules.find((_, k) => (boxes[k]?.max[2] ?? 0) >= z - NOISE_MM)
  return modules.flatMap((module, k): PlacingTrouble[] => {
    const below = z - (boxes[k]?.max[2] ?? z)
    if (below <= NOISE_MM) return []
    return [
      {
        rule: 'worktop-level',
        severity: 'stop',
        panels: [panel.id],
        message: `the worktop of the row lies on ${highest?.name ?? ''}; the upper side of ${module.name} is ${fineMm(below)} mm lower`,
        fix: `make ${module.name} ${fineMm(below)} mm higher, or give all modules of the row one working height`,
        change: heightEdit(module, below),
        at,
      },
    ]
  })
}
