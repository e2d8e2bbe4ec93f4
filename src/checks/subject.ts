import type { Assembly } from '../assembly/index.ts'
import type { Panel } from '../panel/index.ts'
import type { Project } from '../project/index.ts'
import { designsOf } from './by-design.ts'
import { type Meeting, meetingsIn, wallsOf } from './clashes.ts'
import { loadedModules } from './loads/index.ts'
import type { Subject } from './types.ts'

/** What the rules look at. `panelOf` throws where there is no such panel: then the placing is wrong. */
export function subjectOf(
  project: Project,
  assembly: Assembly,
  panels: readonly Panel[],
  mend: Subject['mend'],
): Subject {
  const byId = new Map(panels.map((panel) => [panel.id, panel]))
  const panelOf = (id: string): Panel => {
    const panel = byId.get(id)
    if (panel === undefined) throw new Error(`no panel ${id}`)
    return panel
  }
  const designs = designsOf(assembly)
  const walls = wallsOf(project)
  const known = new Map<Panel, readonly Meeting[]>()
  const near = (panel: Panel): readonly Meeting[] => {
    const meetings = known.get(panel) ?? meetingsIn(panel, walls, designs)
    known.set(panel, meetings)
    return meetings
  }
  return {
    project,
    assembly,
    panels,
    panelOf,
    loaded: loadedModules({ project, assembly, panels }),
    shift: (uses) => mend(uses)?.fix,
    mend,
    near,
    designs,
  }
}
