import { NOISE_MM } from '../../geometry/index.ts'
import { type Item, itemsOfKind, type JointScrew, type PocketScrew } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { limitOf } from '../../project/index.ts'
import { inWords } from '../mend.ts'
import type { PlacingTrouble } from '../types.ts'
import type { JointRequest } from './joints.ts'
import { type PocketFigures, pocketFigures } from './pocket.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

/** Screws that reach too little into the second board, and pocket screws that leave no pocket in the first. */
export function lengthTroubles(
  request: JointRequest,
  pocket: PocketFigures | undefined,
  below: number,
): PlacingTrouble[] {
  const { head, tip, joint, limits } = request
  const { item } = joint
  if (item.kind === 'dowel' || !('length' in item)) return []
  const [warn, stop] = [limitOf(limits, 'screw-bite', 'warn'), limitOf(limits, 'screw-bite', 'stop')]
  const leastPocket = limitOf(limits, 'pocket-depth', 'stop')
  if (pocket !== undefined && pocket.collar < leastPocket - NOISE_MM) {
    const what = `a ${item.id} mm leaves a pocket only ${mm(Math.max(0, pocket.collar))} mm deep; ${mm(leastPocket)} mm is the least`
    return [trouble(request, below, 'pocket-depth', 'stop', what)]
  }
  const bite = pocket?.bite ?? item.length - head.thickness
  // A pocket screw's own rule of thumb is half its length, so that only the stop counts.
  const least = pocket === undefined ? warn : stop
  if (bite >= least - NOISE_MM) return []
  const board = pocket === undefined ? tip : head
  const what = `a ${item.id} reaches only ${mm(Math.max(0, bite))} mm into ${inWords(board)}`
  return [trouble(request, below, 'screw-bite', bite < stop - NOISE_MM ? 'stop' : 'warn', what)]
}

function trouble(
  request: JointRequest,
  below: number,
  rule: 'screw-bite' | 'pocket-depth',
  severity: 'stop' | 'warn',
  what: string,
): PlacingTrouble {
  const { head, tip, at } = request
  const message = `${head.name} and ${tip.name}: ${what}`
  return { rule, severity, panels: [head.id, tip.id], message, ...mending(request, below), at }
}

/** The screw of the catalogue that will do, and where to say so. */
function mending(request: JointRequest, below: number): Mending {
  const { head, tip, joint, limits, asked } = request
  const least = limitOf(limits, 'screw-bite', 'warn')
  // Of the edge, what lies about the joint alike on both sides: all of it, or the shoulder of a rebate.
  const edge = 2 * Math.min(below, tip.thickness - below)
  const found = shorterPocket(request, below) ?? fittingScrew(joint.item, head.thickness, edge, least)
  if (found === undefined) return { fix: 'choose another joint, or another board' }
  const reaches =
    found.kind === 'pocket screw' ? '' : `, which reaches ${mm(found.length - head.thickness)} mm into ${inWords(tip)}`
  const fix = `take a ${found.id}${reaches}`
  return asked === undefined ? { fix } : { fix, change: [{ path: [...asked, 'fasten'], value: found.id }] }
}

/** Of the pocket screws that leave a pocket and bite, the longest. */
function shorterPocket({ head, joint, limits }: JointRequest, below: number): PocketScrew | undefined {
  if (joint.item.kind !== 'pocket screw') return undefined
  const fits = (one: PocketScrew): boolean => {
    const { collar, bite } = pocketFigures(one, head.thickness, below)
    return (
      collar >= limitOf(limits, 'pocket-depth', 'stop') &&
      bite >= limitOf(limits, 'screw-bite', 'stop') &&
      one.board.min <= 2 * below &&
      2 * below <= one.board.max
    )
  }
  return itemsOfKind('pocket screw').filter(fits).at(-1)
}

const isInch = ({ id }: Item): boolean => id.includes('#')
const boreOf = (screw: Item, part: 'head' | 'tip'): number => screw.parts[part]?.[0]?.diameter ?? 0

/** Through the first board of the usual through screw, mm: what stands for a pocket screw. */
const USUAL_BORE_MM = 5

/** Whether the bores of a screw in the middle of an edge so thick keep the wood beside them that they ask for. */
export function suitsEdge(screw: JointScrew, tip: number): boolean {
  const holes = [...(screw.parts.head ?? []), ...(screw.parts.tip ?? [])]
  return holes.every(({ diameter, edgeWall }) => (tip - diameter) / 2 >= (edgeWall ?? diameter / 2) - NOISE_MM)
}

/**
 * The screw of the catalogue that reaches `least` or more from a board of thickness `head` into the edge of one of
 * thickness `tip`, mm, and keeps the wood beside its bores: one like the item that was asked for but longer, else one of
 * its kind, else a through screw; of those the most alike in thickness, and the shortest that will do.
 */
export function fittingScrew(asked: Item, head: number, tip: number, least: number): JointScrew | undefined {
  const fits = [...itemsOfKind('through screw'), ...itemsOfKind('one-piece screw')].filter(
    (screw) => isInch(screw) === isInch(asked) && screw.length - head >= least - NOISE_MM && suitsEdge(screw, tip),
  )
  const alike = fits.filter((screw) => screw.kind === asked.kind && boreOf(screw, 'head') === boreOf(asked, 'head'))
  const ofKind = fits.filter((screw) => screw.kind === asked.kind)
  const through = fits.filter((screw) => screw.kind === 'through screw')
  const choice = [alike, ofKind, through].find((some) => some.length > 0) ?? []
  const thick = boreOf(asked, 'head') || USUAL_BORE_MM
  const unlike = (screw: JointScrew): number => Math.abs(boreOf(screw, 'head') - thick)
  return [...choice].sort((a, b) => unlike(a) - unlike(b) || a.length - b.length)[0]
}
