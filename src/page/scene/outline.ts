import { facesDrawn } from '../../drawing/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Outline, OutlineModule } from '../protocol.ts'

/** What there is to look at, in the order of the modules. */
export function outlineOf({ project, assembly, panels }: LaidOut): Outline {
  return {
    title: project.title,
    units: project.units,
    modules: assembly.modules.map(
      (module): OutlineModule => ({
        key: module.key,
        name: module.name,
        at: module.at,
        isTop: module.liesOver !== undefined,
        panels: panels
          .filter((panel) => panel.module === module.key)
          .map((panel) => ({ id: panel.id, name: panel.name, faces: facesDrawn(panel), mates: [] })),
      }),
    ),
  }
}
