import { type Assembly, assemble, type PlacedHardware } from '../assembly/index.ts'
import { add, movedSolid, NOISE_MM, norm, scale, sub, turnBack, type Vec3 } from '../geometry/index.ts'
import { MM_PER_INCH } from '../length/index.ts'
import { type Bore, type BoreUse, type Panel, panelsOf } from '../panel/index.ts'
import type { Edit, Project, RowSpec } from '../project/index.ts'
import { type Designs, designsOf } from './by-design.ts'
import { meetingInHole, meetingOf, type Walls, wallsOf } from './clashes.ts'
import { boreEdge } from './rules/bore-edge.ts'
import { cutouts } from './rules/cutouts.ts'
import { grooves } from './rules/grooves.ts'
import { inPlace } from './rules/in-place.ts'
import { placing } from './rules/placing.ts'
import { moved, type Run, runKey, runOf, written } from './runs.ts'
import { subjectOf } from './subject.ts'
import type { Mend, Subject } from './types.ts'
import { boreWork, type SolidWork, type Work, worksOf } from './works.ts'

/** Steps in which a shift is sought: what a person can measure. */
const STEP = { mm: 0.5, in: MM_PER_INCH / 64 } as const
/** How far hinges are moved at most: the pitch of the plates' holes, mm. */
const HINGE_PITCH_MM = 32
/** Runs for which a shift is sought in one check, at most; beyond, findings say only by how much holes are too near. */
const MOST_RUNS = 40
/** Definitions worked out anew in one check, at most. */
const MOST_PROOFS = 6

interface Shift {
  readonly mm: number
  readonly words: string
  readonly edit: Edit
}

/**
 * Finds the smallest shift along its panels, up or down, after which all holes of a run clear all others: a guess that
 * moves the holes that there are, then the proof: the definition is changed as the words say and worked out anew, and
 * no hole of the run meets another, nor is anything worse than it was. `undefined` when there is none within one pitch.
 */
export function shifter(project: Project, assembly: Assembly, panels: readonly Panel[]): Subject['mend'] {
  let index: ReturnType<typeof indexOf> | undefined
  const known = new Map<string, Shift | undefined>()
  const left: Left = { runs: MOST_RUNS, proofs: MOST_PROOFS, before: new Map() }
  const shiftOf = (pieces: readonly PlacedHardware[], key: string): Shift | undefined => {
    if (!known.has(key)) {
      const run = runOf(pieces)
      known.set(key, run && smallestShift(project, assembly, panels, run, left))
    }
    return known.get(key)
  }
  return (uses, beside = 'bores'): Mend | undefined => {
    index ??= indexOf(assembly)
    const { keyOf, pieces } = index
    const keys = [...new Set(uses.flatMap(({ hardware }) => keyOf.get(hardware) ?? []))]
    // A run keeps its own holes apart, or not, wherever it stands.
    if (keys.length < 2 && beside === 'bores') return undefined
    const shifts = keys.flatMap((key) => shiftOf(pieces.get(key) ?? [], key) ?? [])
    const [best] = shifts.sort((a, b) => Math.abs(a.mm) - Math.abs(b.mm))
    return best && { fix: best.words, change: [best.edit] }
  }
}

/** The key of the run of each piece, and the pieces of each key. */
function indexOf(assembly: Assembly) {
  const keyOf = new Map<string, string>()
  const pieces = new Map<string, PlacedHardware[]>()
  for (const piece of assembly.hardware) {
    const key = runKey(piece)
    keyOf.set(piece.id, key)
    const list = pieces.get(key)
    if (list === undefined) pieces.set(key, [piece])
    else list.push(piece)
  }
  return { keyOf, pieces }
}

/** What is left of the budget of one check, and how much is wrong about each module as it is. */
interface Left {
  runs: number
  proofs: number
  readonly before: Map<string, number>
}

function smallestShift(
  project: Project,
  assembly: Assembly,
  panels: readonly Panel[],
  run: Run,
  left: Left,
): Shift | undefined {
  left.runs -= 1
  if (left.runs < 0 || left.proofs <= 0) return undefined
  const touched = new Set(run.pieces.flatMap(({ stations }) => stations.map(({ panel }) => panel)))
  const own = panels.filter(({ id }) => touched.has(id))
  const pitch = pitchOf(project, run)
  const guess = rigidly(own, run, { reach: pitch, walls: wallsOf(project), designs: designsOf(assembly) })
  const row = partOf(project, run.module)
  for (const by of candidates(pitch, STEP[project.units])) {
    if (!guess(by)) continue
    if (left.proofs <= 0) return undefined
    const change = moved(row, assembly, run, by)
    if (change === undefined) continue
    left.proofs -= 1
    const before = left.before.get(run.module) ?? countBad(workedOut(row))
    left.before.set(run.module, before)
    if (proves(change.project, run, before))
      return { mm: by, words: wordsFor(project, panels, run, by, change.typed), edit: change.edit }
  }
  return undefined
}

/** Shifts up to one pitch, the smallest first, up before down. */
function candidates(pitch: number, step: number): number[] {
  const steps = Math.floor(pitch / step + NOISE_MM)
  return Array.from({ length: steps }, (_, k) => [(k + 1) * step, -(k + 1) * step]).flat()
}

/** The pitch of a run: of a pin row, the least distance between two of its holes. */
function pitchOf(project: Project, run: Run): number {
  if (run.kind === 'cup hinge') return HINGE_PITCH_MM
  const heights = [
    ...new Set(run.pieces.flatMap(({ stations }) => stations.slice(0, 1).map(({ pose }) => pose.origin[2]))),
  ]
  heights.sort((a, b) => a - b)
  const steps = heights.slice(1).map((z, k) => z - (heights[k] ?? z))
  return Math.min(project.units === 'in' ? 2 * MM_PER_INCH : 64, ...steps.filter((one) => one > NOISE_MM))
}

const ofRun = (run: Run): ((use: BoreUse) => boolean) => {
  const ids = new Set(run.pieces.map(({ id }) => id))
  return ({ hardware }) => ids.has(hardware)
}

interface Around {
  readonly reach: number
  readonly walls: Walls
  readonly designs: Designs
}

/** Whether the run's holes, moved as they are by at most `reach`, would clear all other work of their panels. */
function rigidly(panels: readonly Panel[], run: Run, around: Around): (by: number) => boolean {
  const owns = ofRun(run)
  const along: Vec3 = run.axis === 2 ? [0, 0, 1] : [1, 0, 0]
  const pairs = panels.flatMap((panel) => {
    const way = turnBack(panel.moduleFromPanel, along)
    const staying = worksOf(panel).filter(({ work }) => work.kind !== 'bore' || !work.bore.uses.every(owns))
    const moving = panel.bores.flatMap((bore) => bore.uses.filter(owns).map((use) => asAlone(panel, bore, use)))
    return moving
      .map(boreWork)
      .flatMap((a) => staying.filter((b) => couldMeet(a, b, way, around)).map((b) => ({ panel, way, a, b, around })))
  })
  // The pair that spoiled one shift is the likeliest to spoil the next.
  let spoiler: Pair | undefined
  return (by) => {
    if (spoiler !== undefined && !clearAt(spoiler, by)) return false
    spoiler = pairs.find((pair) => !clearAt(pair, by))
    return spoiler === undefined
  }
}

/** A hole that moves, and work that stays. */
interface Pair {
  readonly panel: Panel
  readonly way: Vec3
  readonly a: SolidWork
  readonly b: SolidWork
  readonly around: Around
}

/** Whether two holes are one, or a hole and other work leave enough wood between them, when the first is moved. */
function clearAt({ panel, way, a, b, around }: Pair, by: number): boolean {
  const moved = movedWork(a, scale(way, by))
  const [one, other] = [moved.work, b.work]
  if (one.kind === 'bore' && other.kind === 'bore' && oneHole(one.bore, other.bore)) return true
  return meetingOf(panel, moved, b, around.walls, around.designs).length === 0
}

function movedWork({ work, solids, box }: SolidWork, off: Vec3): SolidWork {
  return {
    work: work.kind === 'bore' ? { kind: 'bore', bore: { ...work.bore, at: add(work.bore.at, off) } } : work,
    solids: solids.map((solid) => movedSolid(off, solid)),
    box: { min: add(box.min, off), max: add(box.max, off) },
  }
}

/** Whether two works can come too near each other while one moves by at most `reach` along `way`. */
function couldMeet(a: SolidWork, b: SolidWork, way: Vec3, { reach, walls }: Around): boolean {
  return ([0, 1, 2] as const).every((axis) => {
    const room = Math.abs(way[axis]) * reach + walls.thickest
    return a.box.min[axis] - room < b.box.max[axis] && a.box.max[axis] + room > b.box.min[axis]
  })
}

/** A hole as this use alone would want it, without what it shares it with. */
function asAlone(panel: Panel, bore: Bore, use: BoreUse): Bore {
  if (!bore.through || use.depth >= panel.thickness || (use.surface !== 'A' && use.surface !== 'B')) return bore
  const z = use.surface === 'A' ? 0 : -panel.thickness
  const axis: Vec3 = use.surface === 'A' ? [0, 0, -1] : [0, 0, 1]
  return { ...bore, surface: use.surface, at: [bore.at[0], bore.at[1], z], axis, depth: use.depth, through: false }
}

const oneHole = (a: Bore, b: Bore): boolean =>
  a.surface === b.surface &&
  norm(sub(a.at, b.at)) <= NOISE_MM &&
  Math.abs(a.diameter - b.diameter) <= NOISE_MM &&
  Math.abs(a.depth - b.depth) <= NOISE_MM

/** The project with a module's row and the rows that stand against each other with it: nothing else can be bolted to it. */
function partOf(project: Project, module: string): Project {
  const own = project.rows.find((row) => row.modules.includes(module))
  if (own === undefined) return project
  const island = new Set([own])
  const meets = (a: RowSpec, b: RowSpec): boolean =>
    (a.stands !== undefined && b.modules.includes(a.stands.against)) ||
    (b.stands !== undefined && a.modules.includes(b.stands.against))
  // A set that grows while it is gone through is gone through to its end.
  for (const row of island) for (const other of project.rows) if (meets(row, other)) island.add(other)
  const rows = project.rows.filter((row) => island.has(row))
  const keys = new Set(rows.flatMap(({ modules }) => modules))
  return { ...project, rows, modules: project.modules.filter(({ key }) => keys.has(key)) }
}

function workedOut(project: Project): Subject {
  const assembly = assemble(project)
  const panels = panelsOf(assembly)
  return subjectOf(project, assembly, panels, () => undefined)
}

/** How much is wrong with places: what the placing could not do, bores near edges, grooves and cutouts, covered holes. */
function countBad(subject: Subject): number {
  return [placing, boreEdge, grooves, cutouts, inPlace]
    .flatMap((rule) => rule.check(subject))
    .filter(({ severity }) => severity !== 'note').length
}

/** Whether in the changed project no hole of the run meets another, and nothing else is worse than it was. */
function proves(project: Project, run: Run, before: number): boolean {
  const subject = workedOut(project)
  const [piece] = run.pieces
  const key = piece && runKey(piece)
  const pieces = subject.assembly.hardware.filter((one) => runKey(one) === key)
  if (pieces.length === 0) return false
  const owns = ofRun({ ...run, pieces })
  const touches = (bore: Bore): boolean => bore.uses.some(owns)
  const ofIt = (work: Work): boolean => work.kind === 'bore' && touches(work.bore)
  const meets = subject.panels.some(
    (panel) =>
      panel.bores.some((bore) => touches(bore) && meetingInHole(panel, bore) !== undefined) ||
      (panel.bores.some(touches) && subject.near(panel).some(({ a, b }) => ofIt(a) !== ofIt(b))),
  )
  return !meets && countBad(subject) <= before
}

function wordsFor(project: Project, panels: readonly Panel[], run: Run, by: number, typed: string): string {
  const far = written(Math.abs(by), project.units).text
  const way = run.axis === 0 ? (by > 0 ? 'right' : 'left') : by > 0 ? 'up' : 'down'
  return `move the ${nameOf(panels, run)} ${way} ${far} (\`${typed}\`)`
}

function nameOf(panels: readonly Panel[], run: Run): string {
  if (run.kind === 'shelf pin') {
    const number = /pins-(\d+)/.exec(run.pieces[0]?.series ?? '')?.[1] ?? ''
    return `pin rows of shelf opening ${number}`
  }
  const doors = new Set(
    run.pieces.flatMap(({ stations }) => stations.filter(({ part }) => part === 'cup').map((one) => one.panel)),
  )
  const names = panels.filter(({ id }) => doors.has(id)).map(({ name }) => name)
  return `hinges of ${names.join(' and ')}`
}
