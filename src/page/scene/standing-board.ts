import { type Box, place, same, type Vec3 } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import { groovePath } from './board.ts'
import { isFront } from './fronts.ts'
import { closedPath, polygon, strokes } from './lines.ts'
import { cutoutId, grooveId } from './operations.ts'
import { seen } from './plane.ts'
import { isTurnedHere, type Standing, samePlace } from './standing.ts'
import type { BoardPlace, PanelToScene, SceneEdge, ScenePart, ScenePoint, SceneSnap } from './types.ts'

/**
 * Isometric projection, lengths along the axes true (ISO 5456-3, from memory): x runs to the right and up, y to the left and up, both
 * at 30 degrees to the level, z up. One looks from the front, from the left and from above.
 */
export const ISOMETRIC: PanelToScene = (() => {
  const cos30 = Math.sqrt(3) / 2
  return [cos30, -cos30, 0, 0, -0.5, -0.5, -1, 0]
})()

/** A panel as it is drawn in isometric projection. */
export interface StandingBoard {
  readonly parts: readonly ScenePart[]
  /** All of it lies within these points. */
  readonly rim: readonly ScenePoint[]
}

/** What measuring snaps to. */
export interface Corners {
  readonly snaps: readonly SceneSnap[]
  readonly edges: readonly SceneEdge[]
}

interface Drawn {
  readonly standing: Standing
  readonly board: StandingBoard
}

/** As each was drawn last. */
const drawn = new WeakMap<Panel, Drawn>()

/** The three sides of a panel that one sees, and what is cut into them; the very same things where it stands as it stood. */
export function boardOf(one: Standing): StandingBoard {
  const last = drawn.get(one.panel)
  if (last !== undefined && samePlace(last.standing, one)) return last.board
  const board = drawnBoard(one)
  drawn.set(one.panel, { standing: one, board })
  return board
}

function drawnBoard(one: Standing): StandingBoard {
  const { panel, box } = one
  const { rim, lines } = hexagon(box)
  const part: ScenePart = {
    key: panel.id,
    kind: isFront(panel) ? 'front' : 'panel',
    filled: true,
    panel: panel.id,
    title: `${panel.moduleName}: ${panel.name}`,
    at: panel.at,
    d: lines,
  }
  return { parts: [part, ...cutsOf(one)], rim }
}

/** The outline of a box that one sees from the front, the left and above, and the three edges at its near corner. */
export function hexagon(box: Box): { readonly rim: readonly ScenePoint[]; readonly lines: string } {
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

/** The corners of a panel as bits: 1 along x, 2 along y, 4 to face B. */
const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7] as const

/** The seven corners and nine edges that one sees, for measuring: in their places however far apart the panels are drawn. */
export function cornersOf({
  size: [length, width, thickness],
  floorFromPanel,
  eyeFromPanel,
  frame,
  box,
}: BoardPlace & Pick<Standing, 'frame' | 'box'>): Corners {
  const corners = CORNERS.map((bits): SceneSnap | undefined => {
    const corner: Vec3 = [bits & 1 ? length : 0, bits & 2 ? width : 0, bits & 4 ? -thickness : 0]
    const [x, y, z] = place(eyeFromPanel, corner)
    // The one corner that lies behind all three sides.
    if (same(x, box.max[0]) && same(y, box.max[1]) && same(z, box.min[2])) return undefined
    return { at: seen(frame, corner), place: place(floorFromPanel, corner), kind: 'corner' }
  })
  const snaps: SceneSnap[] = []
  const edges: SceneEdge[] = []
  for (const from of CORNERS) {
    const start = corners[from]
    if (start === undefined) continue
    snaps.push(start)
    for (const way of [1, 2, 4] as const) {
      const end = (from & way) === 0 ? corners[from | way] : undefined
      if (end !== undefined) edges.push({ from: start, to: end })
    }
  }
  return { snaps, edges }
}

function cutsOf({ panel, eyeFromPanel, frame }: Standing): ScenePart[] {
  const face = isTurnedHere(eyeFromPanel, 'A') ? 'A' : 'B'
  const z = face === 'A' ? 0 : -panel.thickness
  const grooves = panel.grooves
    .filter((groove) => groove.face === face)
    .map(
      (groove): ScenePart => ({
        key: `${panel.id} ${groove.id}`,
        kind: groove.kind,
        filled: true,
        panel: panel.id,
        operation: grooveId(groove),
        d: closedPath(frame, groovePath(panel, groove), z),
      }),
    )
  const cutouts = panel.cutouts
    .filter((cutout) => cutout.face === face || cutout.through)
    .map(
      (cutout): ScenePart => ({
        key: `${panel.id} ${cutout.id}`,
        kind: cutout.through ? 'cutout' : 'pocket',
        filled: true,
        panel: panel.id,
        operation: cutoutId(cutout),
        d: closedPath(frame, cutout.path, z),
      }),
    )
  return [...grooves, ...cutouts]
}
