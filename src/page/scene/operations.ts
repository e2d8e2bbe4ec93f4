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
    const { id, work, inEdges, purposes } = setUpOf(bore, workOf(bore, this.#index))
    const found = this.#found.get(id)
    if (found !== undefined) {
      found.count += 1
      for (const purpose of purposes) found.purposes.add(purpose)
      return id
    }
    const words = (): string => `${toolWords(bore, this.#units)}${inEdges ? ' in edges' : ''}`
    return this.#count(id, { work, words, figures: [bore.diameter, bore.through ? Infinity : bore.depth] }, purposes)
  }

  /** Counts a groove or rebate. */
  groove(groove: Groove): string {
    const width = grooveWidth(groove)
    const words = (): string =>
      `${groove.kind} ${bitWords(width, this.#units)} wide, ${bitWords(groove.depth, this.#units)} deep`
    const id = `${groove.kind} ${roundMm(width)} ${roundMm(groove.depth)}`
    return this.#count(id, { work: 'grooves', words, figures: [width, groove.depth] }, [groove.purpose])
  }

  /** Counts a cutout or recess. */
  cutout(cutout: Cutout): string {
    const count = (id: string, figures: SetUp['figures'], words: () => string): string =>
      this.#count(id, { work: 'cutouts', words, figures }, [cutout.purpose])
    if (cutout.notch === true) return count('notch', [2, 0], () => 'notch, cut away')
    if (cutout.through) return count('cutout', [0, 0], () => 'cut through')
    const words = (): string => `recess ${bitWords(cutout.depth, this.#units)} deep`
    return count(`pocket ${roundMm(cutout.depth)}`, [1, cutout.depth], words)
  }

  /** In the order of the kinds of work, then of bits and depths. */
  list(): SceneOperation[] {
    return [...this.#found]
      .sort(([a, one], [b, two]) => compare(one, two) || (a < b ? -1 : 1))
      .map(([id, { purposes, words, work, count }]) => ({ id, words: words(), purposes: [...purposes], count, work }))
  }

  #count(id: string, setUp: SetUp, purposes: readonly string[]): string {
    const known = this.#found.get(id)
    const found = known ?? { ...setUp, purposes: new Set<string>(), count: 0 }
    found.count += 1
    for (const purpose of purposes) found.purposes.add(purpose)
    if (known === undefined) this.#found.set(id, found)
    return id
  }
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
  readonly purposes: readonly string[]
}

/** Of bores that were met with before: most stay the same from one drawing to the next. */
const setUps = new WeakMap<Bore, BoreSetUp>()

function setUpOf(bore: Bore, work: OperationWork): BoreSetUp {
  const known = setUps.get(bore)
  if (known !== undefined && known.work === work) return known
  const inEdges = isHandWork(bore) && bore.leanDeg === undefined
  const id = `bore ${figuresOf(bore)}${inEdges ? ' in edges' : ''} ${work}`
  const setUp: BoreSetUp = { id, work, inEdges, purposes: purposesOf(bore) }
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
