import { facesDrawn } from '../../drawing/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Outline, OutlineModule } from '../protocol.ts'
import { matesOf } from './kin.ts'
import { indexOf } from './laid-index.ts'

/** What there is to look at, in the order of the modules. */
export function outlineOf(laid: LaidOut): Outline {
  const { ofModule } = indexOf(laid)
  return {
    title: laid.project.title,
    units: laid.project.units,
    modules: laid.assembly.modules.map(
      (module): OutlineModule => ({
        key: module.key,
        name: module.name,
        at: module.at,
        isTop: module.liesOver !== undefined,
        panels: (ofModule.get(module.key) ?? []).map((panel) => ({
          id: panel.id,
          name: panel.name,
          faces: facesDrawn(panel),
          mates: matesOf(laid, panel.id),
        })),
      }),
    ),
  }
}
