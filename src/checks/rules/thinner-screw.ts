import { fittingScrew, suitsEdge } from '../../assembly/index.ts'
import type { Bore } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Mend, Subject } from '../types.ts'
import { mm } from '../words.ts'

/** A screw that an edge is too thin for, wherever it stands along it: the one of the catalogue that suits the edge. */
export function thinnerScrew({ designs, panelOf, project }: Subject, bore: Bore): Mend | undefined {
  const piece = designs.pieceOf(bore.uses[0]?.hardware ?? '')
  const [head, tip] = ['head', 'tip'].map((part) => piece?.stations.find((station) => station.part === part))
  const item = piece?.item
  if (item === undefined || (item.kind !== 'one-piece screw' && item.kind !== 'through screw')) return undefined
  if (piece?.joint === undefined || head === undefined || tip === undefined) return undefined
  const [first, second] = [panelOf(head.panel), panelOf(tip.panel)]
  if (suitsEdge(item, second.thickness)) return undefined
  const found = fittingScrew(item, first.thickness, second.thickness, limitOf(project, 'screw-bite', 'warn'))
  if (found === undefined) return undefined
  return {
    fix: `an edge of ${mm(second.thickness)} mm is too thin for a ${item.id}: take a ${found.id}`,
    change: [{ path: [...piece.joint, 'fasten'], value: found.id }],
  }
}
