import { baseHeight, frontsTake, limitOf, type ModuleSpec, type Project } from '../project/index.ts'
import { placeBase } from './base/index.ts'
import { inside } from './bays.ts'
import { backOf, shell } from './carcase/index.ts'
import { placeFlip } from './flip/index.ts'
import { type BoltLimits, type BuiltModule, casterNeighbours, Grips, joinRow, standOnFloor } from './floor/index.ts'
import { lipped } from './lipping.ts'
import { placeOpenings } from './openings.ts'
import { merge, type Parts, partsOf } from './parts.ts'
import { placeChamber, placePort, placeTop, rowTop, topNeighbours } from './tops/index.ts'
import type { Assembly, PlacedModule } from './types.ts'

/** Every panel, cut and piece of hardware of a project, in its place. */
export function assemble(project: Project): Assembly {
  const built = new Map(project.modules.map((spec) => [spec.key, buildModule(spec)]))
  const floor = standOnFloor(project.rows, new Map([...built].map(([key, { module }]) => [key, module])))
  const bolts: BoltLimits = {
    wall: limitOf(project, 'bolt-blocked', 'wall'),
    farthest: limitOf(project, 'bolt-blocked', 'farthest'),
  }
  const grips = new Grips([...built.values()].flatMap(({ parts }) => parts.hardware))
  const modules: PlacedModule[] = []
  /** Without the worktops of rows, which stand on nothing. */
  const standing: PlacedModule[] = []
  const parts: Parts[] = []
  for (const row of project.rows) {
    const placed = row.modules.flatMap((key) => floor.modules.get(key) ?? [])
    const whole = placed.map((module) => ({ module, parts: built.get(module.key)?.parts ?? merge([]) }))
    const top = rowTop(row, whole, project)
    parts.push(...whole.map((one) => one.parts), top.parts, partsOf(joinRow(row, placed, standing, grips, bolts)))
    standing.push(...placed)
    modules.push(...placed, ...top.modules)
  }
  const all = merge(parts)
  const troubles = [
    ...all.troubles,
    ...floor.troubles,
    ...topNeighbours(modules, floor.islands),
    ...casterNeighbours(floor.modules, all.hardware, limitOf(project, 'caster-neighbours', 'apart')),
  ]
  return { modules, hardware: all.hardware, troubles }
}

/** The carcase's height: as given, or the working height less the base and the board that lies on it. */
function carcaseHeight(spec: ModuleSpec): number {
  return spec.height.of === 'carcase' ? spec.height.mm : spec.height.mm - baseHeight(spec.base) - spec.worktopThickness
}

/** A module in its own frame, and all that belongs to it. */
function buildModule(spec: ModuleSpec): { module: BuiltModule; parts: Parts } {
  const height = carcaseHeight(spec)
  const outer = shell(spec, height, frontsTake(spec.inside, spec.frontGap))
  const chamber = placeChamber(spec, height, outer.opening, outer.parts.panels)
  const filled = inside(spec, chamber.opening, outer.sidesFoot, merge([outer.parts, chamber.parts]))
  const upright = [
    ...outer.parts.panels,
    ...chamber.parts.panels.filter((panel) => panel.role === 'chamber floor'),
    ...filled.panels.filter((panel) => panel.role === 'partition' || panel.role === 'fixed shelf'),
  ]
  const back = backOf(spec, outer.backRoom, upright, merge([outer.parts, chamber.parts, filled]))
  const base = placeBase(
    spec,
    outer.parts.panels.find((panel) => panel.role === 'bottom'),
    {
      ...merge([outer.parts, chamber.parts, back, filled]),
      x0: outer.opening.x0,
      x1: outer.opening.x1,
      rear: outer.opening.rear,
    },
  )
  const carcase = merge([outer.parts, chamber.parts, back, filled, base])
  const topped = merge([carcase, placePort(spec, carcase.panels), placeTop(spec, height, carcase)])
  const whole = merge([topped, placeFlip(spec, height, topped.panels)])
  const opened = merge([whole, placeOpenings(spec.openings, whole.panels)])
  const lippings = lipped(opened.panels, spec.lipping)
  const parts = { ...opened, panels: lippings.panels, troubles: [...opened.troubles, ...lippings.troubles] }
  return {
    module: {
      key: spec.key,
      name: spec.name,
      size: { width: spec.width, depth: spec.depth, height },
      ...(!spec.fitted && { heightAsked: spec.height }),
      baseHeight: baseHeight(spec.base),
      panels: parts.panels,
      cuts: parts.cuts,
      cutouts: parts.cutouts,
      at: spec.at,
    },
    parts,
  }
}
