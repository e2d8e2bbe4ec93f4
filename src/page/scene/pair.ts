import { ownBox, type PlacedModule } from '../../assembly/index.ts'
import { placeWords } from '../../drawing/index.ts'
import {
  add,
  type Box,
  compose,
  cross,
  dot,
  NOISE_MM,
  type Pose,
  placedBox,
  scale,
  turnBack,
  type Vec3,
  X,
  Y,
  Z,
} from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import { type Board, drawBoard } from './board.ts'
import { nameEdges } from './face.ts'
import type { LaidIndex } from './laid-index.ts'
import { Picture, textSizeFor } from './picture.ts'
import { drawTags } from './tags.ts'
import type { Face, Look, PanelToScene, Scene, SceneArea } from './types.ts'

/** A panel of a pair: in the frame of the floor, seen on a face. */
interface Leaf {
  readonly panel: Panel
  readonly pose: Pose
  readonly box: Box
  readonly face: Face
  /** The way that the face looks. */
  readonly out: Vec3
}

/**
 * Two panels side by side as a book that lies open: the fold lies where they meet or face each other, and mates lie at the same
 * height on both sides of it.
 */
export function pairScene(
  index: LaidIndex,
  modules: readonly [PlacedModule, PlacedModule],
  panels: readonly [Panel, Panel],
  look: Look & { kind: 'pair' },
  units: Units,
): Scene {
  const picture = new Picture(index, units)
  const leaves = leavesOf(modules, panels)
  const up = upOf(leaves)
  const [left, right] = inOrder(leaves, up)
  const size = textSizeFor((spanOf(left, up) + spanOf(right, up)) * BESIDE, heightOf(left, right, up) * BESIDE)
  const gap = FOLD_ROOM * size
  const boards = [boardOf(left, up, 'left', gap), boardOf(right, up, 'right', gap)] as const
  for (const board of boards) drawBoard(picture, board, units)
  const { min, max } = picture.area()
  picture.strokes(
    {
      key: 'fold',
      kind: 'fold',
      filled: false,
      title: 'fold: what lies at the same height on both sides belongs together',
    },
    [
      [
        [0, min[1] - size],
        [0, max[1] + size],
      ],
    ],
  )
  for (const board of boards) {
    nameEdges(picture, board, units, size)
    const area = areaOf(board)
    drawTags(picture, board, area, units, size)
    const text = `${board.panel.name}, ${board.panel.faces[board.face]}`
    picture.word(
      {
        key: `${board.panel.id} name`,
        at: [(area.min[0] + area.max[0]) / 2, min[1] - NAME_OUT * size],
        anchor: 'middle',
        text,
        kind: 'name',
      },
      size,
    )
  }
  return picture.scene({
    look,
    title: `${titleOf(left.panel, right.panel)}, facing pair`,
    facts: [
      ['left', sizeWords(left, units)],
      ['right', sizeWords(right, units)],
      ['laid', laidWords(left, right, up)],
    ],
    flat: true,
    textSize: size,
  })
}

/** Half of the room at the fold, in text heights: for the names of the edges there. */
const FOLD_ROOM = 1.9
const NAME_OUT = 1.9
const BESIDE = 1.12

const titleOf = (a: Panel, b: Panel): string =>
  a.module === b.module
    ? `${a.moduleName}: ${a.name} and ${b.name}`
    : `${a.moduleName}: ${a.name} and ${b.moduleName}: ${b.name}`

const sizeWords = ({ panel }: Leaf, units: Units): string =>
  `${placeWords(panel.length, units)} × ${placeWords(panel.width, units)}`

/** `opened like a book at the back edges`: which edges lie at the fold. */
function laidWords(left: Leaf, right: Leaf, up: Vec3): string {
  const [a, b] = [edgeToward(left, rightOf(left, up)), edgeToward(right, scale(rightOf(right, up), -1))]
  const edges =
    a === b ? `the ${a} edges` : `the ${a} edge of the ${left.panel.name} and the ${b} edge of the ${right.panel.name}`
  return `opened like a book, ${edges} at the fold`
}

/** The name of the edge that looks along a direction. */
function edgeToward({ panel, pose }: Leaf, way: Vec3): string {
  const [x, y] = turnBack(pose, way)
  if (Math.abs(x) > Math.abs(y)) return panel.edges[x > 0 ? 'x1' : 'x0']
  return panel.edges[y > 0 ? 'y1' : 'y0']
}

/** Both panels, each on the face that looks at the other; where neither does, on the one that more shared hardware enters. */
function leavesOf(
  modules: readonly [PlacedModule, PlacedModule],
  panels: readonly [Panel, Panel],
): readonly [Leaf, Leaf] {
  const [a, b] = panels
  const poses = [
    compose(modules[0].floorFromModule, a.moduleFromPanel),
    compose(modules[1].floorFromModule, b.moduleFromPanel),
  ] as const
  const boxes = [placedBox(poses[0], ownBox(a)), placedBox(poses[1], ownBox(b))] as const
  return [leafOf(a, poses[0], boxes[0], b, boxes[1]), leafOf(b, poses[1], boxes[1], a, boxes[0])]
}

function leafOf(panel: Panel, pose: Pose, box: Box, other: Panel, otherBox: Box): Leaf {
  const face = faceToward(pose, panel, otherBox) ?? faceOfShared(panel, other)
  return { panel, pose, box, face, out: scale(pose.z, face === 'A' ? 1 : -1) }
}

/** The face that another box lies before. */
function faceToward({ z, origin }: Pose, { thickness }: Panel, { min, max }: Box): Face | undefined {
  const ends = [dot(z, min), dot(z, max)]
  const at = dot(z, origin)
  if (Math.min(...ends) >= at - REACH_MM) return 'A'
  if (Math.max(...ends) <= at - thickness + REACH_MM) return 'B'
  return undefined
}

/** A board that is let in by no more than this still lies before the face that it is let into. Own choice, mm. */
const REACH_MM = 15

function faceOfShared(panel: Panel, other: Panel): Face {
  const theirs = new Set(other.bores.flatMap(({ uses }) => uses.map(({ hardware }) => hardware)))
  const count = (face: Face): number =>
    panel.bores.filter(({ surface, uses }) => surface === face && uses.some(({ hardware }) => theirs.has(hardware)))
      .length
  return count('B') > count('A') ? 'B' : 'A'
}

/** The way that is up on the drawing: along the fold, which lies in both panels. */
function upOf([a, b]: readonly [Leaf, Leaf]): Vec3 {
  const both = cross(a.out, b.out)
  const [x, y, z] = both.map(Math.abs)
  const parallel = Math.max(x ?? 0, y ?? 0, z ?? 0) < 0.5
  if (parallel) return Math.abs(a.out[2]) > 0.5 ? Y : Z
  if ((z ?? 0) > 0.5) return Z
  return (y ?? 0) > 0.5 ? Y : X
}

/** What is to the right of one who looks at the face. */
const rightOf = ({ out }: Leaf, up: Vec3): Vec3 => cross(up, out)

/** Left and right of the fold, so that each has the other beyond the edge that lies there; sides of a module stay left and right. */
function inOrder(leaves: readonly [Leaf, Leaf], up: Vec3): readonly [Leaf, Leaf] {
  const [a, b] = leaves
  const score = beyond(a, b, up) - beyond(b, a, up)
  if (Math.abs(dot(a.out, b.out)) < 0.5 && Math.abs(score) > NOISE_MM) return score > 0 ? [a, b] : [b, a]
  const middle = ({ box }: Leaf): Vec3 => add(box.min, box.max)
  const [p, q] = [middle(a), middle(b)]
  for (const axis of [0, 1, 2] as const) {
    if (Math.abs(p[axis] - q[axis]) > 1) return p[axis] < q[axis] ? [a, b] : [b, a]
  }
  return leaves
}

/** How far the middle of another panel lies to the right of the middle of this one, in halves of its extent. */
function beyond(leaf: Leaf, other: Leaf, up: Vec3): number {
  const right = rightOf(leaf, up)
  const middle = ({ box }: Leaf): number => dot(right, scale(add(box.min, box.max), 0.5))
  return (middle(other) - middle(leaf)) / (spanOf(leaf, up) / 2)
}

/** How wide a leaf lies on the drawing, mm. */
const spanOf = (leaf: Leaf, up: Vec3): number => extentAlong(leaf.box, rightOf(leaf, up))

const extentAlong = ({ min, max }: Box, way: Vec3): number => Math.abs(dot(way, max) - dot(way, min))

function heightOf(a: Leaf, b: Leaf, up: Vec3): number {
  const ends = [a, b].flatMap(({ box }) => [dot(up, box.min), dot(up, box.max)])
  return Math.max(...ends) - Math.min(...ends)
}

/** A leaf on its side of the fold, which is at x = 0; heights are those of the floor frame, upside down. */
function boardOf(leaf: Leaf, up: Vec3, side: 'left' | 'right', gap: number): Board {
  const right = rightOf(leaf, up)
  const ends = [dot(right, leaf.box.min), dot(right, leaf.box.max)]
  const shift = side === 'left' ? -gap - Math.max(...ends) : gap - Math.min(...ends)
  const { pose } = leaf
  const row = (way: Vec3, sign: 1 | -1, off: number): readonly [number, number, number, number] => [
    sign * dot(way, pose.x),
    sign * dot(way, pose.y),
    sign * dot(way, pose.z),
    sign * dot(way, pose.origin) + off,
  ]
  const frame: PanelToScene = [...row(right, 1, shift), ...row(up, -1, 0)]
  return { panel: leaf.panel, face: leaf.face, frame, own: true }
}

function areaOf({ panel, frame }: Board): SceneArea {
  const x = [0, panel.length].flatMap((u) => [0, panel.width].map((v) => frame[0] * u + frame[1] * v + frame[3]))
  const y = [0, panel.length].flatMap((u) => [0, panel.width].map((v) => frame[4] * u + frame[5] * v + frame[7]))
  return { min: [Math.min(...x), Math.min(...y)], max: [Math.max(...x), Math.max(...y)] }
}
