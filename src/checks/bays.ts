import type { Bay, DefinitionPath, FrontSpec, LooseShelvesSpec, Project } from '../project/index.ts'

/** All openings of a module, each before those that it is divided into. */
function baysOf(project: Project, module: string): Bay[] {
  const within = (bay: Bay): Bay[] => [bay, ...(bay.split?.bays.flatMap(within) ?? [])]
  return project.modules.filter(({ key }) => key === module).flatMap(({ inside }) => within(inside))
}

const samePath = (a: DefinitionPath, b: DefinitionPath): boolean => JSON.stringify(a) === JSON.stringify(b)

/** The loose shelves that the definition asks for at a place. */
export const looseShelvesAt = (project: Project, module: string, at: DefinitionPath): LooseShelvesSpec | undefined =>
  baysOf(project, module).find(({ looseShelves }) => looseShelves !== undefined && samePath(looseShelves.at, at))
    ?.looseShelves

/** The front that the definition asks for at a place. */
export const frontAt = (project: Project, module: string, at: DefinitionPath): FrontSpec | undefined =>
  baysOf(project, module).find(({ front }) => front !== undefined && samePath(front.at, at))?.front
