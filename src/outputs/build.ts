import { type Assembly, assemble } from '../assembly/index.ts'
import { check, type Finding } from '../checks/index.ts'
import { type Panel, panelsOf } from '../panel/index.ts'
import type { Project } from '../project/index.ts'

/** A project worked out to the last hole, with what the checks say of it. */
export interface Built {
  readonly project: Project
  readonly assembly: Assembly
  readonly panels: readonly Panel[]
  readonly findings: readonly Finding[]
}

/** Project → assembly → panels → findings. Pure. */
export function build(project: Project): Built {
  if (project.fit !== undefined && project.fit.size === undefined) throw new Error('a size is not worked out yet')
  const assembly = assemble(project)
  const panels = panelsOf(assembly)
  return { project, assembly, panels, findings: check(project, assembly, panels) }
}
