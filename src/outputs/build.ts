import { type Assembly, AssemblyMemory, assemble } from '../assembly/index.ts'
import { check, type Finding } from '../checks/index.ts'
import { type Panel, PanelMemory, panelsOf } from '../panel/index.ts'
import type { Project } from '../project/index.ts'

/** A project worked out to the last hole, before the checks have looked at it. */
export interface LaidOut {
  readonly project: Project
  readonly assembly: Assembly
  readonly panels: readonly Panel[]
}

/** A project worked out to the last hole, with what the checks say of it. */
export interface Built extends LaidOut {
  readonly findings: readonly Finding[]
}

/** What was laid out of the last project: what is the same in the next is taken from it. */
export class LayoutMemory {
  readonly assembly = new AssemblyMemory()
  readonly panels = new PanelMemory()
}

/** Project → assembly → panels. Pure; the same with any memory. */
export function layOut(project: Project, memory: LayoutMemory = new LayoutMemory()): LaidOut {
  if (project.fit !== undefined && project.fit.size === undefined) throw new Error('a size is not worked out yet')
  const assembly = assemble(project, memory.assembly)
  return { project, assembly, panels: panelsOf(assembly, memory.panels) }
}

/** What is laid out, with what the checks say of it. Pure. */
export function checked(laid: LaidOut): Built {
  return { ...laid, findings: check(laid.project, laid.assembly, laid.panels) }
}

/** Project → assembly → panels → findings. Pure. */
export function build(project: Project): Built {
  return checked(layOut(project))
}
