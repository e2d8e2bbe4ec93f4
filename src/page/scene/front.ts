import { ownBox, type PlacedModule } from '../../assembly/index.ts'
import { bitWords, mouthRadius, placeWords } from '../../drawing/index.ts'
import { add, place, placedBox, scale, turn, type Vec3 } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { Bore } from '../../panel/index.ts'
import type { ModuleSpec } from '../../project/index.ts'
import { bodiesIn, type PlacedBody, WHEEL_SHARE } from './bodies.ts'
import { rimOf, strokeOf } from './bores.ts'
import {
  drawOpening,
  drawSizes,
  liesBefore,
  nameFronts,
  nameOpenings,
  openingsSeen,
  rectangle,
  type Standing,
} from './front-words.ts'
import { hingeEdge, isFront, openPose } from './fronts.ts'
import { holeId, type LaidIndex } from './laid-index.ts'
import { Picture, textSizeFor } from './picture.ts'
import { seen, throughPose } from './plane.ts'
import { OUTWARD } from './surfaces.ts'
import type { Look, PanelToScene, Scene, ScenePoint } from './types.ts'

/** Takes the module frame to a front view with the carcase's upper side at y = 0. */
const frontFrame = (height: number): PanelToScene => [1, 0, 0, 0, 0, 0, -1, height]

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
  const openings = openingsSeen(
    spec,
    standing.map(({ panel }) => panel),
    units,
  )
  const air = depthOfAir(standing)
  const painted: Painted[] = [
    ...standing.map((one): Painted => ({ y: one.box.min[1], draw: () => drawPanel(picture, one, view, look.doors) })),
    ...bodies.map((body): Painted => ({ y: body.box.min[1], draw: () => drawBody(picture, body, view) })),
    ...openings.map((opening): Painted => ({ y: air, draw: () => drawOpening(picture, opening, view) })),
  ].sort((a, b) => b.y - a.y)
  for (const { draw } of painted) draw()
  drawHoles(picture, standing)
  const area = picture.area()
  const size = textSizeFor((area.max[0] - area.min[0]) * BESIDE, (area.max[1] - area.min[1]) * BESIDE)
  if (look.doors === 'on') nameFronts(picture, standing, bodies, view, size)
  else nameOpenings(picture, openings, standing, view, size)
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

/**
 * How far back openings are painted: one sees a back through an opening, and means the opening when one presses there;
 * whatever else stands in it is before it. Module frame, mm.
 */
const depthOfAir = (standing: readonly Standing[]): number =>
  Math.min(...standing.filter(({ panel }) => panel.role === 'back').map(({ box }) => box.min[1]))

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

function holeSeen({ pose, box }: Standing, bore: Bore): HoleSeen {
  const toward = -turn(pose, OUTWARD[bore.surface])[1]
  if (Math.abs(toward) < 0.5) {
    const middle = place(pose, add(bore.at, scale(bore.axis, bore.depth / 2)))
    // It runs inside the wood of its own panel, which lies before it, whatever is taken away.
    return { middle, beside: true, end: 'in', hidden: liesBefore(box, middle) }
  }
  const end = toward < 0 && bore.through ? 'out' : 'in'
  return { middle: place(pose, bore.at), beside: false, end, hidden: toward < 0 && !bore.through }
}
