import { NOISE_MM } from '../geometry/index.ts'
import type { Bore } from '../panel/index.ts'
import { type BitKind, type BitSpec, limitOf, type Project } from '../project/index.ts'

/** What a hole asks of its bit. Lengths in mm. */
export interface Need {
  readonly make: 'hole' | 'flat hole' | 'counterbore' | 'pocket hole' | 'sink'
  readonly diameter: number
  readonly depth: number
  /** Of a sink: the head's included angle, degrees. */
  readonly angleDeg?: number
  /** In a face, where a machine reaches it. */
  readonly inFace: boolean
}

/** Which bits make what, the usual one first; an end mill makes all but pockets and sinks, in faces. */
const MAKERS: Readonly<Record<Need['make'], readonly BitKind[]>> = {
  hole: ['brad point', 'twist', 'forstner', 'straight'],
  'flat hole': ['forstner', 'straight'],
  counterbore: ['forstner', 'brad point', 'step', 'straight'],
  'pocket hole': ['step'],
  sink: ['countersink'],
}

/** What a bore needs: itself, and the sink about it. */
export function needsOf(project: Project, bore: Bore): Need[] {
  const { diameter, depth, sink } = bore
  const inFace = bore.surface === 'A' || bore.surface === 'B'
  if (bore.leanDeg !== undefined) return [{ make: 'pocket hole', diameter, depth, inFace }]
  const flat = !bore.through && diameter > limitOf(project, 'bit-missing', 'flat over') + NOISE_MM
  const hole: Need = { make: flat ? 'flat hole' : 'hole', diameter, depth, inFace }
  if (sink === undefined) return [hole]
  if (sink.shape === 'counterbore')
    return [hole, { make: 'counterbore', diameter: sink.diameter, depth: sink.depth, inFace }]
  return [hole, { make: 'sink', diameter: sink.diameter, depth: 0, angleDeg: sink.angleDeg, inFace }]
}

/** Whether a bit is of the kind that makes it, whatever its size. */
export function isKindFor(bit: BitSpec, { make, inFace }: Need): boolean {
  if (bit.kind === 'end mill') return inFace && make !== 'pocket hole' && make !== 'sink'
  return MAKERS[make].includes(bit.kind)
}

/** Whether a bit makes the hole, however deep it is. */
export function makes(project: Project, bit: BitSpec, need: Need): boolean {
  if (!isKindFor(bit, need)) return false
  const play = limitOf(project, 'bit-missing', 'differs') + NOISE_MM
  if (need.make === 'sink') {
    const off = Math.abs((bit.angleDeg ?? 0) - (need.angleDeg ?? 0))
    return off <= limitOf(project, 'bit-missing', 'angle differs') + NOISE_MM && bit.diameter >= need.diameter - play
  }
  // A mill goes round in a hole that is wider than itself.
  if (bit.kind === 'end mill') return bit.diameter <= need.diameter + play
  return Math.abs(bit.diameter - need.diameter) <= play
}

/** Twist bits are the usual ones for the smallest holes, Forstner bits from 1/2 in on (S60). */
const TWIST_TO_MM = 3.3
const BRAD_POINT_TO_MM = 12.7

/** The kind of bit that a shop would get for it. */
export function usualKind({ make, diameter }: Need): BitKind {
  if (make !== 'hole') return MAKERS[make][0] ?? 'forstner'
  if (diameter <= TWIST_TO_MM) return 'twist'
  return diameter <= BRAD_POINT_TO_MM + NOISE_MM ? 'brad point' : 'forstner'
}
