import type { Cutout, EdgeName, Panel } from '../panel/index.ts'
import type { OpeningSpec } from '../project/index.ts'
import { typedLength } from './typed.ts'
import type { Mend, Subject } from './types.ts'

const ACROSS: Readonly<Record<EdgeName, EdgeName>> = {
  left: 'right',
  right: 'left',
  front: 'back',
  back: 'front',
  top: 'bottom',
  bottom: 'top',
}

/** The opening of the definition that a cutout comes from; nothing where another design made it. */
function specOf({ project, designs }: Subject, panel: Panel, cutout: Cutout): OpeningSpec | undefined {
  const at = JSON.stringify(designs.cutoutAt(panel, cutout))
  const module = project.modules.find(({ key }) => key === panel.module)
  return module?.openings.find((one) => JSON.stringify(one.at) === at)
}

/** The edit that moves an opening further from an edge, where the definition measures it along that way. */
export function movedIn(subject: Subject, panel: Panel, cutout: Cutout, edge: EdgeName, by: number): Partial<Mend> {
  const spec = specOf(subject, panel, cutout)
  const from = spec?.from.find((one) => one.edge === edge || one.edge === ACROSS[edge])
  if (spec === undefined || from === undefined || from.mm === 'centred') return {}
  const [to, way] = from.edge === edge ? [from.mm + by, 'up' as const] : [from.mm - by, 'down' as const]
  return to <= 0
    ? {}
    : { change: [{ path: [...spec.at, 'from', from.edge], value: typedLength(to, subject.project.units, way) }] }
}

/** The edit that makes a recess no deeper than so many mm. */
export function recutTo(subject: Subject, panel: Panel, cutout: Cutout, depth: number): Partial<Mend> {
  const spec = specOf(subject, panel, cutout)
  if (spec === undefined) return {}
  return { change: [{ path: [...spec.at, 'depth'], value: typedLength(depth, subject.project.units, 'down') }] }
}
