import { floorBox } from '../../../src/assembly/index.ts'
import type { Box } from '../../../src/geometry/index.ts'
import type { LaidOut } from '../../../src/outputs/index.ts'

export type { Box }

/** All panels as boxes of the floor frame. */
export const floorBoxesOf = ({ assembly }: LaidOut): Box[] =>
  assembly.modules.flatMap((module) => module.panels.map((panel) => floorBox(module, panel)))
