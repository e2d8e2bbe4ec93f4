import type { Units } from '../../length/index.ts'
import type { HoleFacts, Scene, SceneHole } from '../scene/types.ts'
import { type Camera, type SheetSize, toScreen } from './camera.ts'
import { inScene } from './flags.ts'
import { markRadius, ringRadius } from './marks.ts'
import { type AskedSize, type Line, type PlacedSize, placedSizes, type Round } from './size-room.ts'
import { boxOf, readableWords, type WordBox, wordSize } from './word-room.ts'

/** A hole that is chosen, what is known of it, and the drawing that it is on. */
export interface Chosen {
  readonly scene: Scene
  readonly hole: SceneHole
  readonly facts: HoleFacts
  /** Holes of the operations that are on. */
  readonly holes: readonly SceneHole[]
}

/** Half of the line of a ring, px. */
const HALF_RING_PX = 2

/** True where a face is seen as it lies on the bench, so that sizes can be drawn over it at their length. */
export const hasSizes = ({ look }: Scene): boolean => look.kind === 'face' || look.kind === 'pair'

/** The holes of the same hardware on this drawing: those on the same axis, and the others. */
export function matesOf({ scene, facts }: Pick<Chosen, 'scene' | 'facts'>): {
  readonly mates: readonly SceneHole[]
  readonly fellows: readonly SceneHole[]
} {
  const relations = new Map(facts.partners.map(({ id, relation }) => [id, relation]))
  return {
    mates: scene.holes.filter(({ id }) => relations.get(id) === 'mate'),
    fellows: scene.holes.filter(({ id }) => relations.get(id) === 'same hardware'),
  }
}

/** The sizes of a hole from the two edges that a person measures from, px; nothing where sizes would not be true. */
export function sizesOf({ scene, hole, facts }: Chosen, camera: Camera, units: Units): readonly AskedSize[] {
  const frame = scene.frames[facts.panel]
  if (frame === undefined || !hasSizes(scene)) return []
  return facts.from.flatMap(({ foot, mm, inch }): AskedSize[] =>
    foot === undefined
      ? []
      : [
          {
            from: toScreen(camera, inScene(frame, foot)),
            to: toScreen(camera, hole.at),
            words: units === 'in' ? inch : mm,
          },
        ],
  )
}

/** The same with the places of their words within an area of the sheet: clear of rings, holes and the words of the drawing. */
export function placedReadings(
  chosen: Chosen,
  camera: Camera,
  sheet: SheetSize,
  area: WordBox,
  units: Units,
): readonly PlacedSize[] {
  const asked = sizesOf(chosen, camera, units)
  if (asked.length === 0) return []
  const { scene, hole, holes } = chosen
  const size = wordSize(scene, camera)
  const { mates, fellows } = matesOf(chosen)
  return placedSizes(asked, {
    area,
    words: readableWords(scene, camera, sheet).map(({ word, at }) => boxOf(word, at, size)),
    rounds: [...ringed([hole, ...mates, ...fellows], camera), ...marked(scene, holes, camera)],
    lines: [
      ...mates.map((mate): Line => [toScreen(camera, hole.at), toScreen(camera, mate.at)]),
      ...ruled(scene, camera),
    ],
  })
}

const ringed = (holes: readonly SceneHole[], camera: Camera): readonly Round[] =>
  holes.map((hole) => ({ at: toScreen(camera, hole.at), radius: ringRadius(hole, camera.scale) + HALF_RING_PX }))

function marked({ operations }: Scene, holes: readonly SceneHole[], camera: Camera): readonly Round[] {
  const works = new Map(operations.map(({ id, work }) => [id, work]))
  return holes.map((hole) => ({
    at: toScreen(camera, hole.at),
    radius: Math.max(hole.radius * camera.scale, markRadius(works.get(hole.operation), hole.hidden, camera.scale)),
  }))
}

/** Outlines and the lines of sizes. */
function ruled({ edges, parts }: Scene, camera: Camera): readonly Line[] {
  const sizes = parts.flatMap(({ kind, d }): Line[] => (kind === 'size' ? strokesIn(d) : []))
  const all = [...edges.map(({ from, to }): Line => [from.at, to.at]), ...sizes]
  return all.map(([from, to]): Line => [toScreen(camera, from), toScreen(camera, to)])
}

/** The strokes of a path of single lines, `M0 0L7 0M0 3L0 9`. */
const strokesIn = (d: string): Line[] =>
  [...d.matchAll(/M(\S+) ([^L]+)L(\S+) ([^MLz]+)/g)].map(
    ([, x1, y1, x2, y2]): Line => [
      [Number(x1), Number(y1)],
      [Number(x2), Number(y2)],
    ],
  )
