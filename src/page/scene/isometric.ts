import type { PlacedModule } from '../../assembly/index.ts'
import { floorBox, ownBox } from '../../assembly/index.ts'
import { mouthRadius } from '../../drawing/index.ts'
import {
  add,
  type Box,
  compose,
  IDENTITY,
  type Pose,
  place,
  placedBox,
  poseOf,
  same,
  scale,
  sub,
  turn,
  type Vec3,
} from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Bore, Panel, Surface } from '../../panel/index.ts'
import { groovePath } from './board.ts'
import { bodiesIn, type PlacedBody, wheelBox } from './bodies.ts'
import { isFront } from './fronts.ts'
import { holeId, type LaidIndex } from './laid-index.ts'
import { closedPath, polygon, strokes } from './lines.ts'
import { coversPoint, paintOrder } from './paint-order.ts'
import { Picture, textSizeFor } from './picture.ts'
import { seen, throughPose } from './plane.ts'
import { Rims } from './rims.ts'
import { OUTWARD } from './surfaces.ts'
import type { Look, PanelToScene, Scene, ScenePoint, SceneSnap } from './types.ts'

/**
 * Isometric projection, lengths along the axes true (ISO 5456-3, from memory): x runs to the right and up, y to the left and up, both
 * at 30 degrees to the level, z up. One looks from the front, from the left and from above.
 */
export const ISOMETRIC: PanelToScene = (() => {
  const cos30 = Math.sqrt(3) / 2
  return [cos30, -cos30, 0, 0, -0.5, -0.5, -1, 0]
})()

/** What one sees after walking so many quarter turns round it, to the right: the floor, turned under the eye. */
const TURNED: Readonly<Record<0 | 1 | 2 | 3, Pose>> = {
  0: IDENTITY,
  1: poseOf([0, -1, 0], [1, 0, 0], [0, 0, 0]),
  2: poseOf([-1, 0, 0], [0, -1, 0], [0, 0, 0]),
  3: poseOf([0, 1, 0], [-1, 0, 0], [0, 0, 0]),
}

/** At `apart` 1 the middles of all panels lie so many times further from the middle of all. */
const SPREAD = 0.75

/** Of a workshop with more holes than this they are left out: nobody can tell them apart, and drawing them takes too long. */
export const MOST_HOLES = 5000
/** Of more panels the corners are left out, too. */
const MOST_MEASURED = 400

/** A panel in its place under the eye. */
interface Standing {
  readonly panel: Panel
  readonly floorFromPanel: Pose
  /** Frame of the eye: turned, and the panels apart. */
  readonly eyeFromPanel: Pose
  readonly box: Box
  readonly frame: PanelToScene
}

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
    if (one !== undefined && standing.length <= MOST_MEASURED) keepCorners(picture, one)
    if (body !== undefined) drawBody(picture, body)
  }
  const count = standing.reduce((sum, { panel }) => sum + panel.bores.length, 0)
  if (count <= MOST_HOLES) {
    for (const k of [...order].reverse()) {
      const one = standing[k]
      if (one === undefined) continue
      const before = (covers[k] ?? []).flatMap((n) => (standing[n] ?? bodies[n - standing.length])?.box ?? [])
      drawBores(picture, one, before)
    }
  }
  const { min, max } = picture.area()
  return picture.scene({
    look,
    title,
    facts: [
      ['panels', String(standing.length)],
      ['holes', count <= MOST_HOLES ? String(count) : `${count}, not drawn: look at one module to see them`],
    ],
    flat: false,
    textSize: textSizeFor(max[0] - min[0], max[1] - min[1]),
  })
}

function stand(index: LaidIndex, modules: readonly PlacedModule[], look: Look & { kind: 'isometric' }): Standing[] {
  const panels = modules.flatMap((module) => (index.ofModule.get(module.key) ?? []).map((panel) => ({ module, panel })))
  const boxes = panels.map(({ module, panel }) => floorBox(module, panel))
  const middle = middleOf(around(boxes))
  return panels.map(({ module, panel }, k): Standing => {
    const floorFromPanel = compose(module.floorFromModule, panel.moduleFromPanel)
    const box = boxes[k]
    const away = box === undefined ? middle : middleOf(box)
    const moved: Pose = {
      ...floorFromPanel,
      origin: add(floorFromPanel.origin, scale(sub(away, middle), look.apart * SPREAD)),
    }
    const eyeFromPanel = compose(TURNED[look.turn], moved)
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
  return modules.flatMap((module) =>
    bodiesIn(index, module.key, ['wheel', 'pad']).map((body): StandsOn => {
      const box = placedBox(module.floorFromModule, wheelBox(body))
      const away = scale(sub(middleOf(box), middle), look.apart * SPREAD)
      return { body, box: placedBox(TURNED[look.turn], { min: add(box.min, away), max: add(box.max, away) }) }
    }),
  )
}

function drawBody(picture: Picture, { body, box }: StandsOn): void {
  const { key, piece } = body
  const { rim, lines } = hexagon(box)
  picture.part(
    { key, kind: 'hardware', filled: true, module: piece.frame, title: piece.item.title, at: piece.at },
    lines,
    rim,
  )
}

/** The outline of a box that one sees from the front, the left and above, and the three edges at its near corner. */
function hexagon(box: Box): { readonly rim: readonly ScenePoint[]; readonly lines: string } {
  const corner = (x: 'min' | 'max', y: 'min' | 'max', z: 'min' | 'max'): ScenePoint =>
    seen(ISOMETRIC, [box[x][0], box[y][1], box[z][2]])
  const near = corner('min', 'min', 'max')
  const rim = [
    corner('min', 'max', 'max'),
    corner('max', 'max', 'max'),
    corner('max', 'min', 'max'),
    corner('max', 'min', 'min'),
    corner('min', 'min', 'min'),
    corner('min', 'max', 'min'),
  ] as const
  const inner = [rim[0], rim[2], rim[4]].map((end): readonly ScenePoint[] => [near, end])
  return { rim, lines: polygon(rim) + strokes(inner) }
}

function around(boxes: readonly Box[]): Box {
  const each = (value: (axis: 0 | 1 | 2) => number): Vec3 => [value(0), value(1), value(2)]
  return {
    min: each((axis) => Math.min(...boxes.map(({ min }) => min[axis]))),
    max: each((axis) => Math.max(...boxes.map(({ max }) => max[axis]))),
  }
}

const middleOf = ({ min, max }: Box): Vec3 => scale(add(min, max), 0.5)

/** The three sides of a box that one sees, and what is cut into them. */
function drawBox(picture: Picture, one: Standing): void {
  const { panel, box, frame } = one
  picture.frames[panel.id] = frame
  const { rim, lines } = hexagon(box)
  picture.part(
    {
      key: panel.id,
      kind: isFront(panel) ? 'front' : 'panel',
      filled: true,
      panel: panel.id,
      title: `${panel.moduleName}: ${panel.name}`,
      at: panel.at,
    },
    lines,
    rim,
  )
  drawCuts(picture, one)
}

/** The corners of a panel as bits: 1 along x, 2 along y, 4 to face B. */
const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7] as const

/** The seven corners and nine edges that one sees, for measuring: in their places however far apart the panels are drawn. */
function keepCorners(picture: Picture, { panel, floorFromPanel, eyeFromPanel, frame, box }: Standing): void {
  const { length, width, thickness } = panel
  const snaps = CORNERS.map((bits): SceneSnap | undefined => {
    const corner: Vec3 = [bits & 1 ? length : 0, bits & 2 ? width : 0, bits & 4 ? -thickness : 0]
    const [x, y, z] = place(eyeFromPanel, corner)
    // The one corner that lies behind all three sides.
    if (same(x, box.max[0]) && same(y, box.max[1]) && same(z, box.min[2])) return undefined
    return { at: seen(frame, corner), place: place(floorFromPanel, corner), kind: 'corner' }
  })
  for (const from of CORNERS) {
    const start = snaps[from]
    if (start === undefined) continue
    picture.snaps.push(start)
    for (const way of [1, 2, 4] as const) {
      const end = (from & way) === 0 ? snaps[from | way] : undefined
      if (end !== undefined) picture.edges.push({ from: start, to: end })
    }
  }
}

function drawCuts(picture: Picture, { panel, eyeFromPanel, frame }: Standing): void {
  const face = isTurnedHere(eyeFromPanel, 'A') ? 'A' : 'B'
  const z = face === 'A' ? 0 : -panel.thickness
  for (const groove of panel.grooves) {
    const operation = picture.operations.groove(groove)
    if (groove.face !== face) continue
    const d = closedPath(frame, groovePath(panel, groove), z)
    picture.part(
      { key: `${panel.id} ${groove.id}`, kind: groove.kind, filled: true, panel: panel.id, operation },
      d,
      [],
    )
  }
  for (const cutout of panel.cutouts) {
    const operation = picture.operations.cutout(cutout)
    if (cutout.face !== face && !cutout.through) continue
    const d = closedPath(frame, cutout.path, z)
    const kind = cutout.through ? 'cutout' : 'pocket'
    picture.part({ key: `${panel.id} ${cutout.id}`, kind, filled: true, panel: panel.id, operation }, d, [])
  }
}

/** True where a surface is one of those that one sees. */
function isTurnedHere(eyeFromPanel: Pose, surface: Surface): boolean {
  const [x, y, z] = turn(eyeFromPanel, OUTWARD[surface])
  return x < -0.5 || y < -0.5 || z > 0.5
}

const SURFACES: readonly Surface[] = ['A', 'B', 'x0', 'x1', 'y0', 'y1']

/** Every bore of a panel; those on sides that one does not see, or behind other panels, are hidden. */
function drawBores(picture: Picture, one: Standing, before: readonly Box[]): void {
  const { panel, eyeFromPanel, floorFromPanel, frame } = one
  if (panel.bores.length === 0) return
  const here = new Set(SURFACES.filter((surface) => isTurnedHere(eyeFromPanel, surface)))
  const rims = new Rims(frame)
  for (const bore of panel.bores) {
    const isHere = here.has(bore.surface)
    const end = !isHere && bore.through ? 'out' : 'in'
    const at = end === 'out' ? farEnd(bore) : bore.at
    const point = seen(frame, at)
    const { d, reach } = rims.of(bore, point, end)
    picture.roundHole(
      {
        id: holeId(panel, bore),
        panel: panel.id,
        operation: picture.operations.bore(bore),
        at: point,
        place: place(floorFromPanel, at),
        d,
        radius: mouthRadius(bore),
        hidden: (!isHere && !bore.through) || (before.length > 0 && isCovered(before, place(eyeFromPanel, at))),
      },
      reach,
    )
  }
}

function isCovered(boxes: readonly Box[], at: Vec3): boolean {
  for (const box of boxes) if (coversPoint(box, at)) return true
  return false
}

/** Where a through hole comes out. */
function farEnd({ at, axis, depth }: Bore): Vec3 {
  return add(at, scale(axis, depth))
}
