import { type Assembly, boardBox, type PlacedHardware } from '../assembly/index.ts'
import { formatInch, formatMm, MM_PER_INCH } from '../length/index.ts'
import type { Bay, DefinitionPath, Edit, Project } from '../project/index.ts'

/** Pieces of hardware that one key of the definition moves together along their panels: pin rows, the hinges of a front. */
export interface Run {
  readonly kind: 'shelf pin' | 'cup hinge'
  readonly module: string
  /** Where the definition asks for them. */
  readonly at: DefinitionPath
  readonly pieces: readonly PlacedHardware[]
  /** The axis of the module along which it moves. */
  readonly axis: 0 | 2
}

export const runKey = (piece: PlacedHardware): string => JSON.stringify([piece.item.kind, piece.frame, piece.at])

/** The run of some pieces that share their key, or nothing where no key of the definition moves them along their panels. */
export function runOf(pieces: readonly PlacedHardware[]): Run | undefined {
  const [piece] = pieces
  const kind = piece?.item.kind
  if (piece === undefined || (kind !== 'shelf pin' && kind !== 'cup hinge')) return undefined
  const flap = pieces.some(({ stations }) => stations.some(({ part, pose }) => part === 'cup' && pose.y[0] !== 0))
  return { kind, module: piece.frame, at: piece.at, pieces, axis: flap ? 0 : 2 }
}

/** A definition that is changed so that a run is moved: the key and value that a person types for it, and as an edit. */
export interface Moved {
  readonly project: Project
  readonly typed: string
  readonly edit: Edit
}

/** The project with a run moved by so many mm; nothing where one key cannot say it. */
export function moved(project: Project, assembly: Assembly, run: Run, by: number): Moved | undefined {
  return run.kind === 'shelf pin' ? movedPins(project, run, by) : movedHinges(project, assembly, run, by)
}

function movedPins(project: Project, run: Run, by: number): Moved | undefined {
  let text: string | undefined
  const changed = changeBays(project, run.module, (bay) => {
    const shelves = bay.looseShelves
    if (shelves === undefined || !samePath(shelves.at, run.at)) return bay
    const { datum, pitch } = shelves.pins
    const value = written((((datum + by) % pitch) + pitch) % pitch, project.units)
    text = value.text
    return { ...bay, looseShelves: { ...shelves, pins: { ...shelves.pins, datum: value.mm } } }
  })
  if (text === undefined) return undefined
  return { project: changed, typed: `datum: ${text}`, edit: { path: [...run.at, 'pins', 'datum'], value: text } }
}

function movedHinges(project: Project, assembly: Assembly, run: Run, by: number): Moved | undefined {
  const lists = distancesOf(assembly, run).map((list) => list.map((distance) => written(distance + by, project.units)))
  const [first, ...others] = lists
  // The two doors of a pair have one list.
  if (first === undefined || others.some((list) => list.some(({ mm }, k) => mm !== first[k]?.mm))) return undefined
  if (first.some(({ mm }) => mm <= 0)) return undefined
  const hinges = first.map(({ mm }) => mm)
  const changed = changeBays(project, run.module, (bay) => {
    const { front } = bay
    if (front === undefined || front.kind === 'fixed' || !samePath(front.at, run.at)) return bay
    return { ...bay, front: { ...front, hinges } }
  })
  const texts = first.map(({ text }) => text)
  return {
    project: changed,
    typed: `hinges: [${texts.join(', ')}]`,
    edit: { path: [...run.at, 'hinges'], value: texts },
  }
}

/** Distances of the cups from the lower or left end of each door of a run, as the definition counts them, mm. */
function distancesOf(assembly: Assembly, run: Run): number[][] {
  const panels = new Map(assembly.modules.flatMap((one) => one.panels.map((panel) => [panel.id, panel])))
  const byDoor = new Map<string, number[]>()
  for (const piece of run.pieces) {
    const cup = piece.stations.find(({ part }) => part === 'cup')
    const door = cup && panels.get(cup.panel)
    if (cup === undefined || door === undefined) continue
    const list = byDoor.get(door.id) ?? []
    byDoor.set(door.id, [...list, cup.pose.origin[run.axis] - boardBox(door).min[run.axis]])
  }
  return [...byDoor.values()].map((list) => list.sort((a, b) => a - b))
}

/** A length as a person would type it, in tenths of a millimetre or in 1/64 in, and what it then comes to. */
export function written(mm: number, units: Project['units']): { readonly text: string; readonly mm: number } {
  if (units === 'mm') {
    const rounded = Math.round(mm * 10) / 10 + 0
    return { text: `${formatMm(rounded)} mm`, mm: rounded }
  }
  const rounded = (Math.round((mm / MM_PER_INCH) * 64) / 64) * MM_PER_INCH
  return { text: formatInch(rounded), mm: rounded }
}

const samePath = (a: DefinitionPath, b: DefinitionPath): boolean => JSON.stringify(a) === JSON.stringify(b)

function changeBays(project: Project, module: string, change: (bay: Bay) => Bay): Project {
  const within = (bay: Bay): Bay => {
    const { split } = bay
    return change(split === undefined ? bay : { ...bay, split: { ...split, bays: split.bays.map(within) } })
  }
  return {
    ...project,
    modules: project.modules.map((spec) => (spec.key === module ? { ...spec, inside: within(spec.inside) } : spec)),
  }
}
