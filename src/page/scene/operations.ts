import { bitWords, grooveWidth, isHandWork, toolWords } from '../../drawing/index.ts'
import { roundMm } from '../../geometry/index.ts'
import type { ItemKind } from '../../hardware/index.ts'
import type { Units } from '../../length/index.ts'
import { type Bore, type Cutout, type Groove, purposesOf } from '../../panel/index.ts'
import type { LaidIndex } from './laid-index.ts'
import type { OperationWork, SceneOperation } from './types.ts'

/** What kind of work the holes of each kind of hardware are. */
export const WORK_OF: Readonly<Record<ItemKind, OperationWork>> = {
  'shelf pin': 'shelf pins',
  'cup hinge': 'hinges',
  'hinge plate': 'hinges',
  'flap stay': 'hinges',
  'through screw': 'joints',
  'one-piece screw': 'joints',
  dowel: 'joints',
  'cam fitting': 'joints',
  'pocket screw': 'joints',
  'joining bolt': 'bolts between modules',
  'drawer slide': 'drawers',
  caster: 'base',
  'levelling foot': 'base',
  pull: 'pulls and fittings',
  axle: 'pulls and fittings',
  'locking bolt': 'pulls and fittings',
  'levelling screw': 'pulls and fittings',
}

/** Of a hole with several uses the first of these is what it is shown as: a plate that sits in a pin row leaves the row whole. */
const FIRST: readonly OperationWork[] = ['shelf pins', 'hinges', 'drawers', 'bolts between modules', 'base', 'joints']

/** What kind of work a bore is. */
export function workOf({ uses }: Bore, { hardware }: LaidIndex): OperationWork {
  const [first] = uses
  const kindOf = (id: string): OperationWork => {
    const piece = hardware.get(id)
    return piece === undefined ? 'pulls and fittings' : WORK_OF[piece.item.kind]
  }
  if (first === undefined) return 'pulls and fittings'
  if (uses.length === 1) return kindOf(first.hardware)
  const works = uses.map((use) => kindOf(use.hardware))
  return FIRST.find((work) => works.includes(work)) ?? 'pulls and fittings'
}

/** The operations of a scene, as they are met with. */
export class OperationBook {
  readonly #units: Units
  readonly #index: LaidIndex
  readonly #found = new Map<string, Found>()

  constructor(index: LaidIndex, units: Units) {
    this.#index = index
    this.#units = units
  }

  /** Counts a bore; its operation's id. */
  bore(bore: Bore): string {
    return this.bores(bore, this.boreId(bore), purposesOf(bore), 1)
  }

  /** The operation of a bore, not counted. */
  boreId(bore: Bore): string {
    return setUpOf(bore, this.#index).id
  }

  /** Counts so many bores of the operation of one of them, that are for all this; the operation's id. */
  bores(one: Bore, id: string, purposes: Iterable<string>, count: number): string {
    const found = this.#found.get(id)
    if (found !== undefined) return add(found, purposes, count, id)
    const { work, inEdges } = setUpOf(one, this.#index)
    const words = (): string => `${toolWords(one, this.#units)}${inEdges ? ' in edges' : ''}`
    const figures = [one.diameter, one.through ? Infinity : one.depth] as const
    return this.#count(id, { work, words, figures }, purposes, count)
  }

  /** Counts a groove or rebate; its operation's id. */
  groove(groove: Groove): string {
    const width = grooveWidth(groove)
    const words = (): string =>
      `${groove.kind} ${bitWords(width, this.#units)} wide, ${bitWords(groove.depth, this.#units)} deep`
    return this.#count(grooveId(groove), { work: 'grooves', words, figures: [width, groove.depth] }, [groove.purpose])
  }

  /** Counts a cutout or recess; its operation's id. */
  cutout(cutout: Cutout): string {
    const count = (figures: SetUp['figures'], words: () => string): string =>
      this.#count(cutoutId(cutout), { work: 'cutouts', words, figures }, [cutout.purpose])
    if (cutout.notch === true) return count([2, 0], () => 'notch, cut away')
    if (cutout.through) return count([0, 0], () => 'cut through')
    return count([1, cutout.depth], () => `recess ${bitWords(cutout.depth, this.#units)} deep`)
  }

  /** In the order of the kinds of work, then of bits and depths. */
  list(): SceneOperation[] {
    return [...this.#found]
      .sort(([a, one], [b, two]) => compare(one, two) || (a < b ? -1 : 1))
      .map(([id, { purposes, words, work, count }]) => ({ id, words: words(), purposes: [...purposes], count, work }))
  }

  #count(id: string, setUp: SetUp, purposes: Iterable<string>, count = 1): string {
    const known = this.#found.get(id)
    const found = known ?? { ...setUp, purposes: new Set<string>(), count: 0 }
    if (known === undefined) this.#found.set(id, found)
    return add(found, purposes, count, id)
  }
}

/** The operation of a groove or rebate. */
export const grooveId = (groove: Groove): string =>
  `${groove.kind} ${roundMm(grooveWidth(groove))} ${roundMm(groove.depth)}`

/** The operation of a cutout or recess. */
export function cutoutId({ notch, through, depth }: Cutout): string {
  if (notch === true) return 'notch'
  return through ? 'cutout' : `pocket ${roundMm(depth)}`
}

function add(found: Found, purposes: Iterable<string>, count: number, id: string): string {
  found.count += count
  for (const purpose of purposes) found.purposes.add(purpose)
  return id
}

interface SetUp {
  readonly work: OperationWork
  readonly words: () => string
  /** By which it is sorted within its work. */
  readonly figures: readonly [number, number]
}

interface Found extends SetUp {
  readonly purposes: Set<string>
  count: number
}

const compare = (a: SetUp, b: SetUp): number =>
  ORDER.indexOf(a.work) - ORDER.indexOf(b.work) || by(a.figures[0], b.figures[0]) || by(a.figures[1], b.figures[1])

const by = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1)

const ORDER: readonly OperationWork[] = [...FIRST, 'pulls and fittings', 'grooves', 'cutouts']

/** What a bore is to the machine or the person that makes it. */
interface BoreSetUp {
  readonly id: string
  readonly work: OperationWork
  readonly inEdges: boolean
}

/** Of bores that were met with before: a bore stays the same thing only as long as the hardware that it is for does. */
const setUps = new WeakMap<Bore, BoreSetUp>()

function setUpOf(bore: Bore, index: LaidIndex): BoreSetUp {
  const known = setUps.get(bore)
  if (known !== undefined) return known
  const work = workOf(bore, index)
  const inEdges = isHandWork(bore) && bore.leanDeg === undefined
  const setUp: BoreSetUp = { id: `bore ${figuresOf(bore)}${inEdges ? ' in edges' : ''} ${work}`, work, inEdges }
  setUps.set(bore, setUp)
  return setUp
}

/** Bit and depth, with what widens the mouth; lengths in mm: `5 13`, `7 through cone 10 90`, `9.5 38.1 leaning 15`. */
function figuresOf({ diameter, through, depth, sink, leanDeg }: Bore): string {
  const hole = `${roundMm(diameter)} ${through ? 'through' : roundMm(depth)}`
  const mouth =
    sink === undefined
      ? ''
      : ` ${sink.shape} ${roundMm(sink.diameter)} ${roundMm(sink.shape === 'cone' ? sink.angleDeg : sink.depth)}`
  return leanDeg === undefined ? `${hole}${mouth}` : `${hole}${mouth} leaning ${roundMm(leanDeg)}`
}
