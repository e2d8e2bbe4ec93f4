import { ownBox, type PlacedModule } from '../../assembly/index.ts'
import { bitWords, mouthRadius, placeWords, textWidth } from '../../drawing/index.ts'
import { add, type Box, type Pose, place, placedBox, scale, turn, type Vec3 } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import type { ModuleSpec } from '../../project/index.ts'
import { bodiesIn, type PlacedBody, WHEEL_SHARE } from './bodies.ts'
import { rimOf, strokeOf } from './bores.ts'
import { drawDimension } from './dimension.ts'
import { hingeEdge, isFront, openPose } from './fronts.ts'
import { holeId, type LaidIndex } from './laid-index.ts'
import { openingsIn } from './openings.ts'
import { Picture, textSizeFor } from './picture.ts'
import { seen, throughPose } from './plane.ts'
import { OUTWARD } from './surfaces.ts'
import type { Look, PanelToScene, Scene, ScenePoint } from './types.ts'

/** Takes the module frame to a front view with the carcase's upper side at y = 0. */
const frontFrame = (height: number): PanelToScene => [1, 0, 0, 0, 0, 0, -1, height]

/** A panel as it stands in this view. */
interface Standing {
  readonly panel: Panel
  readonly pose: Pose
  readonly box: Box
  readonly frame: PanelToScene
}

/** What is painted, by how far to the front it comes. */
interface Painted {
  readonly y: number
  readonly draw: () => void
}

/** A module from the front, its doors shut, away or open at a right angle. */
export function frontScene(
  index: LaidIndex,
  module: PlacedModule,
  spec: ModuleSpec,
  look: Look & { kind: 'front' },
  units: Units,
): Scene {
  const picture = new Picture(index, units)
  const view = frontFrame(module.size.height)
  const all = index.ofModule.get(module.key) ?? []
  const standing = all
    .filter((panel) => look.doors !== 'off' || !isFront(panel))
    .map((panel): Standing => {
      const pose = look.doors === 'open' ? openPose(panel) : panel.moduleFromPanel
      return { panel, pose, box: placedBox(pose, ownBox(panel)), frame: throughPose(view, pose) }
    })
  const bodies = bodiesIn(index, module.key, SEEN_BODIES).filter(({ panel, name }) => {
    const owner = index.panels.get(panel)
    if (owner === undefined || name !== 'grip') return owner !== undefined
    return look.doors === 'on' || (look.doors === 'open' && hingeEdge(owner) === undefined)
  })
  const painted: Painted[] = [
    ...standing.map((one): Painted => ({ y: one.box.min[1], draw: () => drawPanel(picture, one, view, look.doors) })),
    ...bodies.map((body): Painted => ({ y: body.box.min[1], draw: () => drawBody(picture, body, view) })),
  ].sort((a, b) => b.y - a.y)
  for (const { draw } of painted) draw()
  drawHoles(picture, standing)
  const area = picture.area()
  const size = textSizeFor((area.max[0] - area.min[0]) * BESIDE, (area.max[1] - area.min[1]) * BESIDE)
  drawOpenings(picture, spec, standing, view, units, { size, words: look.doors !== 'on' })
  if (look.doors === 'on') nameFronts(picture, standing, bodies, view, size)
  drawSizes(picture, module, units, size)
  return picture.scene({
    look,
    title: `${module.name}, from the front, ${DOORS[look.doors]}`,
    facts: factsOfModule(module, units),
    flat: true,
    textSize: size,
  })
}

const DOORS = { on: 'doors shut', off: 'fronts off', open: 'doors open' } as const
const SEEN_BODIES = ['wheel', 'plate', 'pad', 'grip', 'slide'] as const
/** What sizes around the drawing take. */
const BESIDE = 1.16

/** What a title block says of a module. */
function factsOfModule({ size, baseHeight, packing }: PlacedModule, units: Units): Scene['facts'] {
  const base = baseHeight + packing
  return [
    ['width', placeWords(size.width, units)],
    ['depth', placeWords(size.depth, units)],
    ['carcase height', placeWords(size.height, units)],
    ...(base > 0 ? [['base', bitWords(base, units)] as const] : []),
  ]
}

/** The rectangle of a box, from its upper left corner round by the right. */
function rectangle(view: PanelToScene, { min, max }: Box): readonly [ScenePoint, ScenePoint, ScenePoint, ScenePoint] {
  return [
    seen(view, [min[0], 0, max[2]]),
    seen(view, [max[0], 0, max[2]]),
    seen(view, [max[0], 0, min[2]]),
    seen(view, [min[0], 0, min[2]]),
  ]
}

function drawPanel(
  picture: Picture,
  { panel, box, frame }: Standing,
  view: PanelToScene,
  doors: 'on' | 'off' | 'open',
): void {
  picture.frames[panel.id] = frame
  const corners = rectangle(view, box)
  const front = isFront(panel)
  const hinge = hingeEdge(panel)
  picture.polygon(
    {
      key: panel.id,
      kind: front ? 'front' : 'panel',
      filled: true,
      panel: panel.id,
      title: hinge === undefined ? panel.name : `${panel.name}, hinged at its ${hinge} edge`,
      at: panel.at,
    },
    corners,
  )
  picture.corners(
    [
      [box.min[0], 0, box.min[2]],
      [box.max[0], 0, box.min[2]],
      [box.max[0], 0, box.max[2]],
      [box.min[0], 0, box.max[2]],
    ],
    (at) => seen(view, at),
  )
  if (doors !== 'on' || hinge === undefined) return
  const [tl, tr, br, bl] = corners
  const middle = (a: ScenePoint, b: ScenePoint): ScenePoint => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const lines: Readonly<Record<string, readonly ScenePoint[]>> = {
    left: [tr, middle(tl, bl), br],
    right: [tl, middle(tr, br), bl],
    top: [bl, middle(tl, tr), br],
    bottom: [tl, middle(bl, br), tr],
  }
  const line = lines[hinge]
  if (line === undefined) return
  picture.strokes({ key: `${panel.id} hinge side`, kind: 'hidden', filled: false, panel: panel.id }, [line])
}

function drawBody(picture: Picture, { key, name, piece, box, panel }: PlacedBody, view: PanelToScene): void {
  const spec = { key, kind: 'hardware', filled: true, title: piece.item.title, at: piece.at, panel } as const
  const { item } = piece
  if (name !== 'wheel' || item.kind !== 'caster') {
    picture.polygon(spec, rectangle(view, box))
    return
  }
  // Its envelope as it swivels is wider than the wheel: that is for the floor plan.
  const diameter = item.wheel?.diameter ?? item.overallHeight * WHEEL_SHARE
  const [x, z] = [(box.min[0] + box.max[0]) / 2, box.min[2] + diameter / 2]
  const fork = [-0.3, 0.3].map((share): readonly ScenePoint[] => [
    seen(view, [x + diameter * share, 0, box.max[2]]),
    seen(view, [x, 0, z]),
  ])
  picture.circle(spec, seen(view, [x, 0, z]), diameter / 2)
  picture.strokes({ ...spec, key: `${key} fork`, filled: false }, fork)
}

/** Bores that are not behind other panels, the nearest first. */
function drawHoles(picture: Picture, standing: readonly Standing[]): void {
  const found = standing.flatMap((one) =>
    one.panel.bores.flatMap((bore) => {
      const hole = holeSeen(one, bore)
      return standing.some((other) => other !== one && liesBefore(other.box, hole.middle)) ? [] : [{ one, bore, hole }]
    }),
  )
  found.sort((a, b) => a.hole.middle[1] - b.hole.middle[1])
  for (const { one, bore, hole } of found) {
    const { panel, frame } = one
    const at = seen(frame, bore.at)
    const { d, reach } = hole.beside ? strokeOf(frame, bore) : rimOf(frame, bore, at, hole.end)
    const [x, , z] = place(one.pose, bore.at)
    picture.hole(
      {
        id: holeId(panel, bore),
        panel: panel.id,
        operation: picture.operations.bore(bore),
        at,
        place: [x, 0, z],
        d,
        radius: mouthRadius(bore),
        hidden: hole.hidden,
      },
      reach,
    )
  }
}

interface HoleSeen {
  /** Of what is drawn, module frame. */
  readonly middle: Vec3
  /** Its axis lies across the view. */
  readonly beside: boolean
  /** It is seen where it comes out. */
  readonly end: 'in' | 'out'
  readonly hidden: boolean
}

function holeSeen({ pose }: Standing, bore: Bore): HoleSeen {
  const toward = -turn(pose, OUTWARD[bore.surface])[1]
  if (Math.abs(toward) < 0.5) {
    const middle = place(pose, add(bore.at, scale(bore.axis, bore.depth / 2)))
    return { middle, beside: true, end: 'in', hidden: false }
  }
  const end = toward < 0 && bore.through ? 'out' : 'in'
  return { middle: place(pose, bore.at), beside: false, end, hidden: toward < 0 && !bore.through }
}

/** True where a box lies between a point and the eye in front. */
function liesBefore({ min, max }: Box, [x, y, z]: Vec3): boolean {
  return min[1] < y - NEAR && x > min[0] + NEAR && x < max[0] - NEAR && z > min[2] + NEAR && z < max[2] - NEAR
}

/** What only touches covers nothing. Own choice, mm. */
const NEAR = 0.01

/** The openings, with their clear sizes where there is room between what stands in them. */
function drawOpenings(
  picture: Picture,
  spec: ModuleSpec,
  standing: readonly Standing[],
  view: PanelToScene,
  units: Units,
  { size, words }: { readonly size: number; readonly words: boolean },
): void {
  openingsIn(
    spec,
    standing.map(({ panel }) => panel),
  ).forEach((opening, k) => {
    const [[x0, x1], [z0, z1]] = [opening.x, opening.z]
    const text = `${placeWords(x1 - x0, units)} × ${placeWords(z1 - z0, units)}`
    const box: Box = { min: [x0, 0, z0], max: [x1, 0, z1] }
    const key = `opening ${k + 1}`
    const title = `opening ${text}`
    picture.polygon({ key, kind: 'opening', filled: false, title, at: opening.at }, rectangle(view, box))
    const isClosed = standing.some(
      (one) => isFront(one.panel) && liesBefore(one.box, [(x0 + x1) / 2, one.box.max[1] + 1, (z0 + z1) / 2]),
    )
    if (!words || isClosed) return
    const room = freeHeight(standing, box)
    if (textWidth(text, size) > x1 - x0 || room.high - room.low < 1.2 * size) return
    const at = seen(view, [(x0 + x1) / 2, 0, (room.low + room.high) / 2 - 0.35 * size])
    picture.word({ key: `${key} words`, at, anchor: 'middle', text, kind: 'size' }, size)
  })
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
function nameFronts(
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
function drawSizes(
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
