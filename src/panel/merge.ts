import { NOISE_MM, same } from '../geometry/index.ts'
import type { Sink } from '../hardware/index.ts'
import type { RawBore } from './project.ts'
import type { Bore, Surface } from './types.ts'

/** Less wood than this between the ends of two pin holes bored toward each other counts as none, mm; common practice. */
const SHARED_HOLE_SKIN_MM = 3

const ORDER: Record<Surface, number> = { A: 0, B: 1, x0: 2, x1: 3, y0: 4, y1: 5 }

/**
 * Bores that are one hole made one, sorted and named. A through bore without a sink is bored from face A, so that the
 * panel is turned over only where it must be. Two pin holes that would meet from both faces of a partition become one
 * through hole, and a plate screwed where there is such a hole already uses that one. Bores with the same entry, axis,
 * diameter and sink are one hole with several uses, as deep as the deepest of them needs.
 */
export function mergeBores(raw: readonly RawBore[], thickness: number): Bore[] {
  const fromA = raw.map((bore) => throughFromA(bore))
  const shared = useThroughHoles(sharePins(fromA, thickness), thickness)
  return holesOf(shared)
    .map(oneOf)
    .sort(compareBores)
    .map((bore, k) => named(bore, `bore-${k + 1}`))
}

/** The bores that are one hole together, hole by hole in the order of their first ones. */
function holesOf(bores: readonly RawBore[]): RawBore[][] {
  const holes: RawBore[][] = []
  // Few lie in one place, so that they are told apart by it first.
  const byPlace = new Map<number, RawBore[][]>()
  for (const bore of bores) {
    const place = placeOf(bore)
    const there = byPlace.get(place)
    const hole = there?.find(([first]) => first !== undefined && areOneHole(first, bore))
    if (hole !== undefined) {
      hole.push(bore)
      continue
    }
    const made = [bore]
    holes.push(made)
    if (there === undefined) byPlace.set(place, [made])
    else there.push(made)
  }
  return holes
}

function throughFromA(bore: RawBore): RawBore {
  if (!bore.through || bore.sink !== undefined || bore.surface !== 'B') return bore
  return { ...bore, surface: 'A', at: [bore.at[0], bore.at[1], 0], axis: [0, 0, -1] }
}

/** The blind pin holes of one panel that would meet a partner from the other face, as through holes from face A. */
function sharePins(bores: readonly RawBore[], thickness: number): readonly RawBore[] {
  const pinsFrom = (surface: Surface): RawBore[] =>
    bores.filter((bore) => bore.surface === surface && bore.purpose === 'shelf pin' && !bore.through)
  const [pinsA, pinsB] = [pinsFrom('A'), pinsFrom('B')]
  if (pinsA.length === 0 || pinsB.length === 0) return bores
  const byPlace = (pins: readonly RawBore[]): Map<string, RawBore> => new Map(pins.map((pin) => [placeKey(pin), pin]))
  const [onA, onB] = [byPlace(pinsA), byPlace(pinsB)]
  return bores.map((bore) => {
    const partner =
      bore.purpose === 'shelf pin'
        ? (bore.surface === 'A' ? onB : bore.surface === 'B' ? onA : undefined)?.get(placeKey(bore))
        : undefined
    if (partner === undefined || !same(partner.diameter, bore.diameter)) return bore
    if (bore.depth + partner.depth + SHARED_HOLE_SKIN_MM <= thickness) return bore
    if ([bore, partner].some((one) => one.uses.some((use) => use.keepsApart))) return bore
    return throughHole(bore, thickness)
  })
}

/** Blind bores that lie on a plain through hole of their own diameter are that hole: it is there already. */
function useThroughHoles(bores: readonly RawBore[], thickness: number): readonly RawBore[] {
  const holes = new Map<number, RawBore[]>()
  for (const bore of bores) {
    if (!bore.through || bore.surface !== 'A' || bore.sink !== undefined) continue
    const place = placeOf(bore)
    const there = holes.get(place)
    if (there === undefined) holes.set(place, [bore])
    else there.push(bore)
  }
  if (holes.size === 0) return bores
  return bores.map((bore) => {
    const inFace = (bore.surface === 'A' || bore.surface === 'B') && bore.leanDeg === undefined
    if (bore.sink !== undefined || !inFace) return bore
    const liesOn = (hole: RawBore): boolean =>
      step(hole.at[0]) === step(bore.at[0]) &&
      step(hole.at[1]) === step(bore.at[1]) &&
      step(hole.diameter) === step(bore.diameter)
    return holes.get(placeOf(bore))?.some(liesOn) === true ? throughHole(bore, thickness) : bore
  })
}

const throughHole = (bore: RawBore, thickness: number): RawBore => ({
  ...bore,
  surface: 'A',
  at: [bore.at[0], bore.at[1], 0],
  axis: [0, 0, -1],
  depth: thickness,
  through: true,
})

/** Whole nanometres, so that float noise makes no difference; −0 is 0. */
const step = (value: number): number => Math.round(value / NOISE_MM) + 0

/** The same for bores at one place of the face, and mostly another for others. */
const placeOf = ({ at }: RawBore): number => step(at[0]) + 7919 * step(at[1])

const placeKey = (bore: RawBore): string => `${step(bore.at[0])} ${step(bore.at[1])}`

/** Blind and square, without a sink: as deep as the deepest of its uses needs, such as a pin in the hole of a plate. */
const isPlain = (bore: RawBore): boolean => !bore.through && bore.sink === undefined && bore.leanDeg === undefined

function areOneHole(a: RawBore, b: RawBore): boolean {
  const sameStep = (k: 0 | 1 | 2): boolean => step(a.at[k]) === step(b.at[k]) && step(a.axis[k]) === step(b.axis[k])
  return (
    a.surface === b.surface &&
    a.through === b.through &&
    sameStep(0) &&
    sameStep(1) &&
    sameStep(2) &&
    step(a.diameter) === step(b.diameter) &&
    isPlain(a) === isPlain(b) &&
    (isPlain(a) || step(a.depth) === step(b.depth)) &&
    areSameSinks(a.sink, b.sink)
  )
}

function areSameSinks(a: Sink | undefined, b: Sink | undefined): boolean {
  if (a === undefined || b === undefined) return a === b
  if (a.shape !== b.shape || a.diameter !== b.diameter) return false
  const deep = (sink: Sink): number => (sink.shape === 'cone' ? sink.angleDeg : sink.depth)
  return deep(a) === deep(b)
}

/** One hole that serves all of `group`; the purposes are named together where they differ. */
function oneOf(group: readonly RawBore[]): RawBore {
  const [first] = group
  if (first === undefined) throw new Error('a hole without a bore')
  if (group.length === 1) return first
  const purposes = [...new Set(group.map((bore) => bore.purpose))]
  const depth = isPlain(first) ? Math.max(...group.map((bore) => bore.depth)) : first.depth
  return { ...first, depth, purpose: purposes.join(', '), uses: group.flatMap((bore) => bore.uses) }
}

/** A bore with its name; a plain one, as most are, written out at once. */
function named(bore: RawBore, id: string): Bore {
  if (bore.sink !== undefined || bore.leanDeg !== undefined || bore.edgeWall !== undefined) return { id, ...bore }
  const { surface, at, axis, diameter, depth, through, purpose, uses } = bore
  return { id, surface, at, axis, diameter, depth, through, purpose, uses }
}

/** By surface, then x, y and z in steps, then diameter and depth. */
function compareBores(a: RawBore, b: RawBore): number {
  return (
    ORDER[a.surface] - ORDER[b.surface] ||
    step(a.at[0]) - step(b.at[0]) ||
    step(a.at[1]) - step(b.at[1]) ||
    step(a.at[2]) - step(b.at[2]) ||
    a.diameter - b.diameter ||
    a.depth - b.depth
  )
}
