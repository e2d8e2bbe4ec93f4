import { boardBox } from '../../assembly/index.ts'
import { type Box, commonBox } from '../../geometry/index.ts'
import { typedLength } from '../typed.ts'
import type { Finding } from '../types.ts'
import { type Axis, SHAVING_MM } from './parts-of.ts'
import type { ModuleScene, PlacedBody, Scene } from './scene.ts'

/** A plate is set so far beside what was in its way, mm; common practice. */
const BESIDE_MM = 1

/**
 * Other places for the hinges of a front, so that their plates clear the heads and nuts on their board: each that lies on
 * one goes toward the middle of the front. Nothing where one key cannot say it, or no such place is clear.
 */
export function movedHinges(
  scene: Scene,
  own: ModuleScene,
  hinge: PlacedBody,
  isHead: (body: PlacedBody) => boolean,
): Pick<Finding, 'fix' | 'change'> | undefined {
  const { subject } = scene
  const cup = hinge.piece.stations.find(({ part }) => part === 'cup')
  if (cup === undefined) return undefined
  const door = boardBox(subject.panelOf(cup.panel))
  const axis: Axis = cup.pose.y[0] !== 0 ? 0 : 2
  const [low, high] = [door.min[axis], door.max[axis]]
  const plates = own.bodies.filter(({ piece, name }) => name === 'plate' && piece.series === hinge.piece.series)
  const heads = own.bodies.filter(
    (body) => isHead(body) && body.panel.id === hinge.panel.id && body.piece.series !== hinge.piece.series,
  )
  const places = plates.map((plate) => placeOf(plate, heads, axis, (low + high) / 2))
  if (places.some((place) => place === undefined)) return undefined
  const { units } = subject.project
  const typed = places.map((place) => typedLength((place ?? 0) - low, units, 'up'))
  return {
    fix: `set \`hinges: [${typed.join(', ')}]\``,
    change: [{ path: [...hinge.piece.at, 'hinges'], value: typed }],
  }
}

/** The middle of a plate where it clears the heads: its own, or the next one toward the middle of its front. */
function placeOf({ box }: PlacedBody, heads: readonly PlacedBody[], axis: Axis, middle: number): number | undefined {
  const own = (box.min[axis] + box.max[axis]) / 2
  const half = (box.max[axis] - box.min[axis]) / 2
  const way = own < middle ? 1 : -1
  let place = own
  for (let tries = 0; tries <= heads.length; tries += 1) {
    const there = shifted(box, axis, place - own)
    const onIt = heads.find((head) => commonBox(head.box, there, SHAVING_MM) !== undefined)
    if (onIt === undefined) return way * (middle - place) >= 0 ? place : undefined
    place = way > 0 ? onIt.box.max[axis] + half + BESIDE_MM : onIt.box.min[axis] - half - BESIDE_MM
  }
  return undefined
}

function shifted({ min, max }: Box, axis: Axis, by: number): Box {
  const move = (k: Axis, value: number): number => (k === axis ? value + by : value)
  return {
    min: [move(0, min[0]), move(1, min[1]), move(2, min[2])],
    max: [move(0, max[0]), move(1, max[1]), move(2, max[2])],
  }
}
