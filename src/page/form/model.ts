import { boardBox, type PlacedModule } from '../../assembly/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Data } from '../../project/index.ts'

/** What the form shows of a definition. Plain data, since it comes from a worker. */
export interface FormModel {
  /** What the text says, before anything is filled in, also while it has mistakes; nothing while it is no YAML. */
  readonly data: Data | undefined
  /** The modules as they came out of the last definition that could be laid out. */
  readonly shells: readonly ModuleShell[]
}

/** A module's front as one stands before it: module frame, mm, x to the right, z up, from the underside of the carcase. */
export interface ModuleShell {
  /** Its name in the definition. */
  readonly name: string
  readonly width: number
  /** Of the carcase. */
  readonly height: number
  /** Between the carcase's underside and the floor. */
  readonly baseHeight: number
  readonly opening: FrontRectangle
}

/** mm, x to the right, z up. */
export interface FrontRectangle {
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
}

/** The model of a text. `laid`: what was last laid out. */
export function formModelOf(data: Data | undefined, laid: LaidOut | undefined): FormModel {
  const modules = laid?.assembly.modules ?? []
  return { data, shells: modules.filter(({ liesOver }) => liesOver === undefined).map(shellOf) }
}

/** What closes the one opening of a carcase above. */
const ABOVE: readonly string[] = ['top', 'top rail', 'chamber floor', 'platform lower skin']

function shellOf({ name, size, baseHeight, packing, panels }: PlacedModule): ModuleShell {
  const boxes = (...roles: readonly string[]) => panels.filter(({ role }) => roles.includes(role)).map(boardBox)
  const [left] = boxes('left side')
  const [right] = boxes('right side')
  return {
    name,
    width: size.width,
    height: size.height,
    baseHeight: baseHeight + packing,
    opening: {
      x0: left?.max[0] ?? 0,
      x1: right?.min[0] ?? size.width,
      z0: Math.max(0, ...boxes('bottom').map(({ max }) => max[2])),
      z1: Math.min(size.height, ...boxes(...ABOVE).map(({ min }) => min[2])),
    },
  }
}
