import type { PanelRole } from '../../assembly/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import { itemsOfKind } from '../../hardware/index.ts'
import type { DefinitionPath, Edit } from '../../project/index.ts'
import type { Subject } from '../types.ts'
import { mm } from '../words.ts'
import type { Screw, ScrewLine } from './screw-line.ts'

/** What mends a screw that is too long. */
export interface Shorter {
  readonly fix: string
  readonly change?: readonly Edit[]
}

/**
 * The longest screw of the same thickness that is at least `by` shorter and still reaches `bite` into its last board, mm;
 * as an edit where a key of the definition names what fastens this joint alone.
 */
export function shorterScrew(subject: Subject, line: ScrewLine, by: number, bite: number): Shorter {
  const most = line.length - by
  const held = Math.min(line.entry, line.length)
  const fitting = alike(line.item)
    .filter(({ length }) => length <= most + NOISE_MM && length - held >= bite - NOISE_MM)
    .sort((a, b) => b.length - a.length)[0]
  const fix = `take a screw ${mm(Math.max(0, Math.floor(most * 10 + NOISE_MM) / 10))} mm long or shorter, not ${mm(line.length)}`
  if (fitting === undefined) return { fix: `${fix}, or another joint` }
  const path = fastenPath(subject, line)
  const named = `${fix}: ${fitting.id}`
  return path === undefined ? { fix: named } : { fix: named, change: [{ path, value: fitting.id }] }
}

/** Screws of the catalogue that differ from one in their length alone. */
function alike(item: Screw): Screw[] {
  if (item.kind === 'pocket screw')
    return itemsOfKind('pocket screw').filter(({ board }) => board.min === item.board.min)
  const bores = (one: Screw): string =>
    [one.parts.head?.[0], one.parts.tip?.[0]].map((hole) => `${hole?.diameter} ${hole?.sink?.diameter}`).join(' ')
  return itemsOfKind(item.kind).filter((one) => bores(one) === bores(item))
}

const BOX_SIDES: readonly PanelRole[] = ['drawer left side', 'drawer right side']

/** The key that names the fastener of a joint, where it names that of no other; see the `at` of placed joints. */
function fastenPath(subject: Subject, { piece, panel }: ScrewLine): DefinitionPath | undefined {
  const head = piece.stations.find(({ part }) => part === 'head')
  const role = head && subject.panelOf(head.panel).role
  const { at } = piece
  if (role === undefined) return undefined
  if (role === 'back' || panel.role === 'back') return [...at, 'back', 'joint', 'fasten']
  if (role === 'fixed front') return [...at, 'fix', 'fasten']
  if (BOX_SIDES.includes(role)) return [...at, 'box', 'joint', 'fasten']
  if (role.startsWith('plinth ') || at.at(-2) === 'stretchers') return [...at, 'joint', 'fasten']
  return at.at(-1) === 'carcase' ? [...at, 'joint', 'fasten'] : undefined
}
