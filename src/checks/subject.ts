import type { Assembly } from '../assembly/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Project } from '../project/index.ts'
import { loadedModules } from './loads/index.ts'
import type { Subject } from './types.ts'

/** What the rules look at. `panelOf` throws where there is no such panel: then the placing is wrong. */
export function subjectOf(
  project: Project,
  assembly: Assembly,
  panels: readonly Panel[],
  shift: Subject['shift'],
): Subject {
  const byId = new Map(panels.map((panel) => [panel.id, panel]))
  const panelOf = (id: string): Panel => {
    const panel = byId.get(id)
    if (panel === undefined) throw new Error(`no panel ${id}`)
    return panel
  }
  return { project, assembly, panels, panelOf, loaded: loadedModules({ project, assembly, panels }), shift }
}
