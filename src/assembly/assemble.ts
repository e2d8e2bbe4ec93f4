import { poseOf, X, Y } from '../geometry/index.ts'
import { frontsTake, type ModuleSpec, type Project, type RowSpec } from '../project/index.ts'
import { baseHeight, placeBase } from './base.ts'
import { inside } from './bays.ts'
import { backOf, shell } from './carcase.ts'
import { joinRow } from './joins.ts'
import { merge, type Parts, partsOf } from './parts.ts'
import type { Assembly, PlacedModule } from './types.ts'

/** Space between rows of modules that are not placed by each other, mm: room to walk, and no more than a picture. */
const ROW_SPACING_MM = 1000

/** Every panel, cut and piece of hardware of a project, in its place. */
export function assemble(project: Project): Assembly {
  const byKey = new Map(project.modules.map((spec) => [spec.key, spec]))
  const modules: PlacedModule[] = []
  const parts: Parts[] = []
  let y = 0
  for (const row of project.rows) {
    const specs = row.modules.map((key) => {
      const spec = byKey.get(key)
      if (spec === undefined) throw new Error(`the row names ${key}, which is no module`)
      return spec
    })
    const placed = placeRow(specs, y)
    modules.push(...placed.map((one) => one.module))
    parts.push(
      ...placed.map((one) => one.parts),
      joined(
        row,
        placed.map((one) => one.module),
      ),
    )
    y += Math.max(...specs.map((spec) => spec.depth)) + ROW_SPACING_MM
  }
  const all = merge(parts)
  return { modules, hardware: all.hardware, troubles: all.troubles }
}

const joined = (row: RowSpec, modules: readonly PlacedModule[]): Parts => partsOf(joinRow(row, modules))

/** Modules side by side from the left, fronts flush. */
function placeRow(specs: readonly ModuleSpec[], y: number): { module: PlacedModule; parts: Parts }[] {
  let x = 0
  return specs.map((spec) => {
    const built = buildModule(spec, [x, y])
    x += spec.width
    return built
  })
}

/** The carcase's height: as given, or the working height less the base. */
function carcaseHeight(spec: ModuleSpec): number {
  return spec.height.of === 'carcase' ? spec.height.mm : spec.height.mm - baseHeight(spec.base)
}

function buildModule(spec: ModuleSpec, at: readonly [x: number, y: number]): { module: PlacedModule; parts: Parts } {
  const height = carcaseHeight(spec)
  const outer = shell(spec, height, frontsTake(spec.inside, spec.frontGap))
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
  const foot = baseHeight(spec.base)
  return {
    module: {
      key: spec.key,
      name: spec.name,
      size: { width: spec.width, depth: spec.depth, height },
      baseHeight: foot,
      floorFromModule: poseOf(X, Y, [at[0], at[1], foot]),
      panels: parts.panels,
      cuts: parts.cuts,
      cutouts: parts.cutouts,
      at: spec.at,
    },
    parts,
  }
}
