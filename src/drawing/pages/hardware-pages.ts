import type { Panel } from '../../panel/index.ts'
import { type HardwarePlanner, hardwarePlanner } from '../../templates/index.ts'
import { reserveFor } from './furniture.ts'
import { wordWays } from './hardware-words.ts'
import type { PageSetup } from './setup.ts'

/** The last stage of a budget for a panel: pieces for one pattern each. `panels` are those of the module. */
export function hardwareStage(panel: Panel, setup: PageSetup, panels: readonly Panel[] = []): HardwarePlanner {
  const { paper, margin, units } = setup
  return hardwarePlanner(panel, { paper, margin, reserve: reserveFor(setup) }, wordWays(units), panels)
}
