import type { OutputSpec } from '../project/index.ts'
import type { Built } from './build.ts'
import { outputPaths } from './files.ts'
import { filesOf, type PanelFiles } from './paths.ts'

/** Which files a project yields, before any is made. Plain data. */
export interface FilesOutline {
  /** In the order in which they are written. */
  readonly paths: readonly string[]
  /** Those that belong to one panel; the rest belong to all. */
  readonly panels: readonly FilesOfPanel[]
  readonly outputs: OutputSpec
}

export interface FilesOfPanel {
  readonly id: string
  readonly name: string
  /** The module's key, and its name. */
  readonly module: string
  readonly moduleName: string
  readonly files: PanelFiles
}

/** The files of a project and whose they are. */
export function filesOutline(built: Built): FilesOutline {
  return {
    paths: outputPaths(built),
    panels: built.panels.map((panel) => ({
      id: panel.id,
      name: panel.name,
      module: panel.module,
      moduleName: panel.moduleName,
      files: filesOf(panel),
    })),
    outputs: built.project.outputs,
  }
}
