import { type ModuleSpec, overlayThickness, type Project } from '../project/index.ts'
import { baseHeight, placeBase } from './base.ts'
import { inside } from './bays.ts'
import { backOf, shell } from './carcase.ts'
import { type BuiltModule, casterNeighbours, Grips, joinRow, standOnFloor } from './floor/index.ts'
import { merge, type Parts, partsOf } from './parts.ts'
import type { Assembly, PlacedModule } from './types.ts'

/** Every panel, cut and piece of hardware of a project, in its place. */
export function assemble(project: Project): Assembly {
  const built = new Map(project.modules.map((spec) => [spec.key, buildModule(spec)]))
  const floor = standOnFloor(project.rows, new Map([...built].map(([key, { module }]) => [key, module])))
  const grips = new Grips([...built.values()].flatMap(({ parts }) => parts.hardware))
  const modules: PlacedModule[] = []
  const parts: Parts[] = []
  for (const row of project.rows) {
    const placed = row.modules.flatMap((key) => floor.modules.get(key) ?? [])
    parts.push(...row.modules.flatMap((key) => built.get(key)?.parts ?? []))
    parts.push(partsOf(joinRow(row, placed, modules, grips)))
    modules.push(...placed)
  }
  const all = merge(parts)
  const troubles = [...all.troubles, ...floor.troubles, ...casterNeighbours(floor.modules, all.hardware)]
  return { modules, hardware: all.hardware, troubles }
}

/** The carcase's height: as given, or the working height less the base. */
function carcaseHeight(spec: ModuleSpec): number {
  return spec.height.of === 'carcase' ? spec.height.mm : spec.height.mm - baseHeight(spec.base)
}

/** A module in its own frame, and all that belongs to it. */
function buildModule(spec: ModuleSpec): { module: BuiltModule; parts: Parts } {
  const height = carcaseHeight(spec)
  const outer = shell(spec, height, overlayThickness(spec.inside))
  const filled = inside(spec, outer.opening, outer.sidesFoot, outer.parts.panels)
  const upright = [
    ...outer.parts.panels,
    ...filled.panels.filter((panel) => panel.role === 'partition' || panel.role === 'fixed shelf'),
  ]
  const back = backOf(spec, outer.backRoom, upright)
  const base = placeBase(
    spec,
    outer.parts.panels.find((panel) => panel.role === 'bottom'),
  )
  const parts = merge([outer.parts, back, filled, base])
  return {
    module: {
      key: spec.key,
      name: spec.name,
      size: { width: spec.width, depth: spec.depth, height },
      baseHeight: baseHeight(spec.base),
      panels: parts.panels,
      cuts: parts.cuts,
      cutouts: parts.cutouts,
      at: spec.at,
    },
    parts,
  }
}
