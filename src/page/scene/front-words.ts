import type { PlacedModule } from '../../assembly/index.ts'
import { placeWords, textWidth } from '../../drawing/index.ts'
import type { Box, Pose, Vec3 } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { DefinitionPath, ModuleSpec } from '../../project/index.ts'
import type { PlacedBody } from './bodies.ts'
import { drawDimension } from './dimension.ts'
import { isFront } from './fronts.ts'
import { openingsIn } from './openings.ts'
import type { Picture } from './picture.ts'
import { seen } from './plane.ts'
import type { PanelToScene, ScenePoint } from './types.ts'

/** A panel as it stands in this view. */
export interface Standing {
  readonly panel: Panel
  readonly pose: Pose
  readonly box: Box
  readonly frame: PanelToScene
}

/** The rectangle of a box, from its upper left corner round by the right. */
export function rectangle(
  view: PanelToScene,
  { min, max }: Box,
): readonly [ScenePoint, ScenePoint, ScenePoint, ScenePoint] {
  return [
    seen(view, [min[0], 0, max[2]]),
    seen(view, [max[0], 0, max[2]]),
    seen(view, [max[0], 0, min[2]]),
    seen(view, [min[0], 0, min[2]]),
  ]
}

/** True where a box lies between a point and the eye in front. */
export function liesBefore({ min, max }: Box, [x, y, z]: Vec3): boolean {
  return min[1] < y - NEAR && x > min[0] + NEAR && x < max[0] - NEAR && z > min[2] + NEAR && z < max[2] - NEAR
}

/** What only touches covers nothing. Own choice, mm. */
const NEAR = 0.01

/** An opening as it is seen: module frame, its clear size in words, and where the definition asks for it. */
export interface SeenOpening {
  readonly key: string
  readonly box: Box
  readonly size: string
  readonly at: DefinitionPath
}

/** The openings that are not split, as the definition lists them. */
export const openingsSeen = (spec: ModuleSpec, panels: readonly Panel[], units: Units): readonly SeenOpening[] =>
  openingsIn(spec, panels).map(({ x: [x0, x1], z: [z0, z1], at }, k) => ({
    key: `opening ${k + 1}`,
    box: { min: [x0, 0, z0], max: [x1, 0, z1] },
    size: `${placeWords(x1 - x0, units)} × ${placeWords(z1 - z0, units)}`,
    at,
  }))

/** The air of an opening, to be pressed: whatever is to be seen in it is drawn over it. */
export function drawOpening(picture: Picture, { key, box, size, at }: SeenOpening, view: PanelToScene): void {
  picture.polygon({ key, kind: 'opening', filled: false, title: `opening ${size}`, at }, rectangle(view, box))
}

/** Clear sizes where there is room between what stands in the openings: of the whole opening, as the words say. */
export function nameOpenings(
  picture: Picture,
  openings: readonly SeenOpening[],
  standing: readonly Standing[],
  view: PanelToScene,
  size: number,
): void {
  for (const { key, box, size: clear } of openings) {
    const [[x0, , z0], [x1, , z1]] = [box.min, box.max]
    const isClosed = standing.some(
      (one) => isFront(one.panel) && liesBefore(one.box, [(x0 + x1) / 2, one.box.max[1] + 1, (z0 + z1) / 2]),
    )
    if (isClosed) continue
    const room = freeHeight(standing, box)
    // Between shelves a bare size would read as that of the gap that it stands in.
    const words = room.high - room.low < z1 - z0 - NEAR ? `opening ${clear}` : clear
    if (textWidth(words, size) > x1 - x0 || room.high - room.low < 1.2 * size) continue
    const at = seen(view, [(x0 + x1) / 2, 0, (room.low + room.high) / 2 - 0.35 * size])
    picture.word({ key: `${key} words`, at, anchor: 'middle', text: words, kind: 'size' }, size)
  }
}

/** The highest stretch of an opening that no board in it crosses. */
function freeHeight(standing: readonly Standing[], { min, max }: Box): { low: number; high: number } {
  const across = standing
    .map(({ box }) => box)
    .filter(
      (box) =>
        box.min[0] < max[0] - NEAR && box.max[0] > min[0] + NEAR && box.max[2] - box.min[2] < (max[2] - min[2]) / 2,
    )
    .filter((box) => box.min[2] < max[2] - NEAR && box.max[2] > min[2] + NEAR)
    .sort((a, b) => a.min[2] - b.min[2])
  let best = { low: min[2], high: min[2] }
  let low = min[2]
  for (const end of [...across.map((box) => box.min[2]), max[2]]) {
    if (end - low > best.high - best.low) best = { low, high: end }
    low = Math.max(low, ...across.filter((box) => box.min[2] <= end).map((box) => box.max[2]))
  }
  return best
}

/** The names of the fronts, in the middle or, where a pull or a hole is there, higher or lower; left out where there is no room. */
export function nameFronts(
  picture: Picture,
  standing: readonly Standing[],
  bodies: readonly PlacedBody[],
  view: PanelToScene,
  size: number,
): void {
  for (const { panel, box } of standing) {
    const half = (textWidth(panel.name, size) * BOLD) / 2
    const high = box.max[2] - box.min[2]
    if (!isFront(panel) || 2 * half > box.max[0] - box.min[0] || high < 1.6 * size) continue
    const x = (box.min[0] + box.max[0]) / 2
    const isFree = (z: number): boolean =>
      z - size > box.min[2] &&
      z + size < box.max[2] &&
      bodies.every(
        (body) => !reachesInto(body.box, { min: [x - half, 0, z - size * 0.7], max: [x + half, 0, z + size * 0.7] }),
      ) &&
      picture.holes.every(
        ({ place: [u, , w], radius }) => Math.abs(u - x) > half + radius || Math.abs(w - z) > size * 0.7 + radius,
      )
    const z = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].map((share) => box.min[2] + high * share).find(isFree)
    if (z === undefined) continue
    const [left, line] = seen(view, [x, 0, z - 0.35 * size])
    picture.word({ key: `${panel.id} name`, at: [left, line], anchor: 'middle', text: panel.name, kind: 'name' }, size)
  }
}

/** Names are drawn bold: wider than textWidth says. */
const BOLD = 1.12

/** From the front. */
const reachesInto = (a: Box, b: Box): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[2] < b.max[2] && b.min[2] < a.max[2]

/** The floor, and the outer sizes: width below, overall height at the left, carcase and base at the right. */
export function drawSizes(
  picture: Picture,
  { size: { width, height }, baseHeight, packing }: PlacedModule,
  units: Units,
  size: number,
): void {
  const base = baseHeight + packing
  const { min, max } = picture.area()
  const floor = height + base
  picture.strokes({ key: 'floor', kind: 'footprint', filled: false, title: 'floor' }, [
    [
      [min[0] - size, floor],
      [max[0] + size, floor],
    ],
  ])
  const line = { left: min[0] - 2 * size, right: max[0] + 2.6 * size, low: Math.max(floor, max[1]) + 2.2 * size }
  drawDimension(
    picture,
    { key: 'width', from: 0, to: width, along: 'x', thing: floor, line: line.low, words: placeWords(width, units) },
    size,
  )
  const overall = floor - min[1]
  drawDimension(
    picture,
    {
      key: 'height',
      from: min[1],
      to: floor,
      along: 'y',
      thing: min[0],
      line: line.left,
      words: placeWords(overall, units),
    },
    size,
  )
  if (base <= 0) return
  const right = { along: 'y', thing: max[0], line: line.right } as const
  drawDimension(
    picture,
    { key: 'carcase height', from: 0, to: height, ...right, words: placeWords(height, units) },
    size,
  )
  if (base > 2 * size) {
    drawDimension(
      picture,
      { key: 'base height', from: height, to: floor, ...right, words: placeWords(base, units) },
      size,
    )
  }
}
