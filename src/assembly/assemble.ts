import { Kept } from '../memory/index.ts'
import { baseHeight, frontsTake, limitOf, type ModuleSpec, type Project } from '../project/index.ts'
import { placeBase } from './base/index.ts'
import { inside } from './bays.ts'
import { backOf, shell } from './carcase/index.ts'
import { placeFlip } from './flip/index.ts'
import {
  type BoltLimits,
  type BoltMemory,
  type BuiltModule,
  casterNeighbours,
  Grips,
  joinRow,
  standOnFloor,
} from './floor/index.ts'
import { lipped } from './lipping.ts'
import { placeOpenings } from './openings.ts'
import { merge, type Parts, partsOf } from './parts.ts'
import { placeChamber, placePort, placeTop, type RowTop, rowTop, type TopScrews, topNeighbours } from './tops/index.ts'
import type { Assembly, PlacedModule } from './types.ts'

/** A module in its own frame, and all that belongs to it. */
interface Whole {
  readonly module: BuiltModule
  readonly parts: Parts
}

/** What was put together for the last project, by what it was made of: what is the same in the next is taken from it. */
export class AssemblyMemory {
  readonly modules = new Kept<Whole>()
  readonly standing = new Kept<PlacedModule>()
  readonly tops = new Kept<RowTop>()
  readonly bolts: BoltMemory = { near: new Kept(), placed: new Kept() }
  readonly topScrews = new Kept<TopScrews>()

  get all(): readonly Kept<unknown>[] {
    return [this.modules, this.standing, this.tops, this.topScrews, this.bolts.near, this.bolts.placed]
  }
}

/**
 * Every panel, cut and piece of hardware of a project, in its place. With the memory of the last project, what is made of
 * the very same specs is not made anew; the result is the same in any case.
 */
export function assemble(project: Project, memory: AssemblyMemory = new AssemblyMemory()): Assembly {
  for (const kept of memory.all) kept.begin()
  const assembly = assembled(project, memory)
  for (const kept of memory.all) kept.settle()
  return assembly
}

function assembled(project: Project, memory: AssemblyMemory): Assembly {
  const built = new Map(
    project.modules.map((spec) => [spec.key, memory.modules.take(spec.key, [spec], () => buildModule(spec))]),
  )
  const unplaced = new Map([...built].map(([key, { module }]) => [key, module]))
  const floor = standOnFloor(project.rows, unplaced, memory.standing)
  const bolts: BoltLimits = {
    wall: limitOf(project, 'bolt-blocked', 'wall'),
    farthest: limitOf(project, 'bolt-blocked', 'farthest'),
  }
  const grips = new Grips((module) => built.get(module)?.parts.hardware ?? [])
  const modules: PlacedModule[] = []
  /** Without the worktops of rows, which stand on nothing. */
  const standing: PlacedModule[] = []
  const parts: Parts[] = []
  for (const row of project.rows) {
    const placed = row.modules.flatMap((key) => floor.modules.get(key) ?? [])
    const whole = placed.map((module) => ({ module, parts: built.get(module.key)?.parts ?? merge([]) }))
    const made = [row, ...whole.flatMap((one) => [one.module, one.parts])]
    const top = memory.tops.take(row.worktop?.key ?? '', made, () => rowTop(row, whole, memory.topScrews))
    const joined = joinRow(row, placed, standing, grips, bolts, memory.bolts)
    parts.push(...whole.map((one) => one.parts), top.parts, partsOf(joined))
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

function buildModule(spec: ModuleSpec): Whole {
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
