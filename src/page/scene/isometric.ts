import type { PlacedModule } from '../../assembly/index.ts'
import { floorBox, ownBox } from '../../assembly/index.ts'
import {
  add,
  type Box,
  compose,
  IDENTITY,
  type Pose,
  placedBox,
  poseOf,
  scale,
  sub,
  turnBack,
  type Vec3,
  X,
  Y,
} from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import { bodiesIn, type PlacedBody, wheelBox } from './bodies.ts'
import type { LaidIndex } from './laid-index.ts'
import { paintOrder } from './paint-order.ts'
import { Picture, textSizeFor } from './picture.ts'
import { throughPose } from './plane.ts'
import { type Standing, sameBox } from './standing.ts'
import { boardOf, hexagon, ISOMETRIC } from './standing-board.ts'
import { holesOf } from './standing-bores.ts'
import { standingScene } from './standing-scene.ts'
import type { BoardPlace, HoleGroup, Look, Scene, ScenePart, ScenePoint } from './types.ts'

/** What one sees after walking so many quarter turns round it, to the right: the floor, turned under the eye. */
const TURNED: Readonly<Record<0 | 1 | 2 | 3, Pose>> = {
  0: IDENTITY,
  1: poseOf([0, -1, 0], [1, 0, 0], [0, 0, 0]),
  2: poseOf([-1, 0, 0], [0, -1, 0], [0, 0, 0]),
  3: poseOf([0, 1, 0], [-1, 0, 0], [0, 0, 0]),
}

/** From the floor to the eye. A module alone is seen from its own front first, however it stands on the floor plan. */
function eyeFromFloor(modules: readonly PlacedModule[], look: Look & { kind: 'isometric' }): Pose {
  const [only] = modules
  if (look.module === undefined || only === undefined) return TURNED[look.turn]
  return compose(
    TURNED[look.turn],
    poseOf(turnBack(only.floorFromModule, X), turnBack(only.floorFromModule, Y), [0, 0, 0]),
  )
}

/** At `apart` 1 the middles of all panels lie so many times further from the middle of all. */
const SPREAD = 0.75

/** Of a workshop with more holes than this they are left out: nobody can tell them apart, and drawing them takes too long. */
export const MOST_HOLES = 5000
/** Of more panels the corners are left out, too. */
const MOST_MEASURED = 400

/** A module, or all of them, in isometric projection. */
export function isometricScene(
  index: LaidIndex,
  modules: readonly PlacedModule[],
  look: Look & { kind: 'isometric' },
  units: Units,
  title: string,
): Scene {
  const picture = new Picture(index, units)
  const standing = stand(index, modules, look)
  const bodies = standOn(index, modules, look)
  const { order, covers } = paintOrder([...standing, ...bodies].map(({ box }) => box))
  for (const k of order) {
    const [one, body] = [standing[k], bodies[k - standing.length]]
    if (one !== undefined) drawBox(picture, one)
    if (body !== undefined) drawBody(picture, body)
  }
  const count = standing.reduce((sum, { panel }) => sum + panel.bores.length, 0)
  const groups: HoleGroup[] = []
  if (count <= MOST_HOLES) {
    for (const k of [...order].reverse()) {
      const one = standing[k]
      if (one === undefined) continue
      if (one.panel.bores.length === 0) continue
      const before = (covers[k] ?? []).flatMap((n) => (standing[n] ?? bodies[n - standing.length])?.box ?? [])
      const { shape, area, operations } = holesOf(one, before, picture.operations)
      const at: ScenePoint = [one.frame[3], one.frame[7]]
      groups.push({ shape, at, place: one.floorFromPanel.origin })
      picture.reach([area.min[0] + at[0], area.min[1] + at[1]])
      picture.reach([area.max[0] + at[0], area.max[1] + at[1]])
      for (const { one: bore, id, purposes, count } of operations) picture.operations.bores(bore, id, purposes, count)
    }
  }
  const { min, max } = picture.area()
  const head = picture.head({
    look,
    title,
    facts: [
      ['panels', String(standing.length)],
      ['holes', count <= MOST_HOLES ? String(count) : `${count}, not drawn: look at one module to see them`],
    ],
    flat: false,
    textSize: textSizeFor(max[0] - min[0], max[1] - min[1]),
  })
  // In the order in which they are painted.
  const measured = standing.length <= MOST_MEASURED ? order.flatMap((k) => standing[k] ?? []) : []
  return standingScene(head, { groups, boards: measured.map(boardPlace) })
}

const boardPlace = ({ panel, floorFromPanel, eyeFromPanel }: Standing): BoardPlace => ({
  size: [panel.length, panel.width, panel.thickness],
  floorFromPanel,
  eyeFromPanel,
})

function stand(index: LaidIndex, modules: readonly PlacedModule[], look: Look & { kind: 'isometric' }): Standing[] {
  const panels = modules.flatMap((module) => (index.ofModule.get(module.key) ?? []).map((panel) => ({ module, panel })))
  const boxes = panels.map(({ module, panel }) => floorBox(module, panel))
  const middle = middleOf(around(boxes))
  const eye = eyeFromFloor(modules, look)
  return panels.map(({ module, panel }, k): Standing => {
    const floorFromPanel = compose(module.floorFromModule, panel.moduleFromPanel)
    const box = boxes[k]
    const away = box === undefined ? middle : middleOf(box)
    const moved: Pose = {
      ...floorFromPanel,
      origin: add(floorFromPanel.origin, scale(sub(away, middle), look.apart * SPREAD)),
    }
    const eyeFromPanel = compose(eye, moved)
    return {
      panel,
      floorFromPanel,
      eyeFromPanel,
      box: placedBox(eyeFromPanel, ownBox(panel)),
      frame: throughPose(ISOMETRIC, eyeFromPanel),
    }
  })
}

/** What a module stands on besides panels, under the eye. */
interface StandsOn {
  readonly body: PlacedBody
  readonly box: Box
}

/** Wheels of casters and pads of feet; of a swivel caster a wheel of the size that it has, not all that it sweeps. */
function standOn(index: LaidIndex, modules: readonly PlacedModule[], look: Look & { kind: 'isometric' }): StandsOn[] {
  const middle = middleOf(
    around(modules.flatMap((module) => (index.ofModule.get(module.key) ?? []).map((panel) => floorBox(module, panel)))),
  )
  const eye = eyeFromFloor(modules, look)
  return modules.flatMap((module) =>
    bodiesIn(index, module.key, ['wheel', 'pad']).map((body): StandsOn => {
      const box = placedBox(module.floorFromModule, wheelBox(body))
      const away = scale(sub(middleOf(box), middle), look.apart * SPREAD)
      return { body, box: placedBox(eye, { min: add(box.min, away), max: add(box.max, away) }) }
    }),
  )
}

interface DrawnBody {
  readonly box: Box
  readonly part: ScenePart
  readonly rim: readonly ScenePoint[]
}

/** As each was drawn last. */
const drawnBodies = new WeakMap<PlacedBody, DrawnBody>()

function drawBody(picture: Picture, { body, box }: StandsOn): void {
  const last = drawnBodies.get(body)
  const drawn = last !== undefined && sameBox(last.box, box) ? last : drawnBody(body, box)
  drawnBodies.set(body, drawn)
  picture.parts.push(drawn.part)
  for (const point of drawn.rim) picture.reach(point)
}

function drawnBody({ key, piece }: PlacedBody, box: Box): DrawnBody {
  const { rim, lines } = hexagon(box)
  const part: ScenePart = {
    key,
    kind: 'hardware',
    filled: true,
    module: piece.frame,
    title: piece.item.title,
    at: piece.at,
    d: lines,
  }
  return { box, part, rim }
}

function around(boxes: readonly Box[]): Box {
  const each = (value: (axis: 0 | 1 | 2) => number): Vec3 => [value(0), value(1), value(2)]
  return {
    min: each((axis) => Math.min(...boxes.map(({ min }) => min[axis]))),
    max: each((axis) => Math.max(...boxes.map(({ max }) => max[axis]))),
  }
}

const middleOf = ({ min, max }: Box): Vec3 => scale(add(min, max), 0.5)

/** A panel with what is cut into it; as long as it stands where it stood, with the very same things as before. */
function drawBox(picture: Picture, one: Standing): void {
  const { panel, frame } = one
  picture.frames[panel.id] = frame
  const { parts, rim } = boardOf(one)
  picture.parts.push(...parts)
  for (const point of rim) picture.reach(point)
  for (const cut of panel.grooves) picture.operations.groove(cut)
  for (const cut of panel.cutouts) picture.operations.cutout(cut)
}
