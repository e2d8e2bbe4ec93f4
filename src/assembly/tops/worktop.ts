import type { Box } from '../../geometry/index.ts'
import type { ModuleSpec, Overhang, WorktopSpec } from '../../project/index.ts'
import { board } from '../boards.ts'
import { merge, type Parts } from '../parts.ts'
import { fixTop } from './fixing.ts'
import { machineWork } from './machine-top.ts'

/** The board that lies on a footprint whose front left corner is the origin, its underside at `z`, module frame, mm. */
export function topBox(
  footprint: { readonly width: number; readonly depth: number },
  overhang: Overhang,
  z: number,
  thickness: number,
): Box {
  return {
    min: [-overhang.left, -overhang.front, z],
    max: [footprint.width + overhang.right, footprint.depth + overhang.back, z + thickness],
  }
}

/** The worktop or machine top of a module, on its carcase of that height, with its work and its screws. */
export function placeTop(spec: ModuleSpec, height: number, carcase: Parts): Parts {
  const { panels, hardware } = carcase
  const { machineTop, key } = spec
  const top: WorktopSpec | undefined = machineTop ?? spec.worktop
  if (top === undefined) return merge([])
  const name = machineTop === undefined ? 'worktop' : 'machine top'
  const box = topBox(spec, top.overhang, height, top.stock.thickness)
  const panel = board({ module: key, role: name, name, stock: top.stock, box, at: top.at })
  const work = machineTop === undefined ? undefined : machineWork(spec, machineTop, panel, carcase)
  const fixing = fixTop({
    module: key,
    moduleName: spec.name,
    panels,
    hardware,
    spec: top,
    top: panel,
    limits: spec,
    cuts: work?.areas ?? [],
  })
  return merge([{ panels: [panel] }, work?.parts ?? {}, fixing])
}
