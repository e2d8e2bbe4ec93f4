import { mouthRadius } from '../../drawing/index.ts'
import { add, type Box, place, scale, turn, type Vec3 } from '../../geometry/index.ts'
import { type Bore, type Panel, purposesOf, type Surface } from '../../panel/index.ts'
import { holeId } from './laid-index.ts'
import type { OperationBook } from './operations.ts'
import { coversPoint } from './paint-order.ts'
import { seenWay } from './plane.ts'
import { Rims } from './rims.ts'
import { axesKey, isTurnedHere, type Standing, sameBox, samePlace } from './standing.ts'
import type { GroupHole, HoleShape, SceneArea } from './types.ts'

/** The holes of a panel, the area in which all of them lie, about its origin on the drawing, and what operations they are of. */
export interface PanelHoles {
  readonly shape: HoleShape
  readonly area: SceneArea
  readonly operations: readonly OperationShare[]
}

/** What a panel has of one operation. */
export interface OperationShare {
  readonly id: string
  readonly one: Bore
  readonly purposes: ReadonlySet<string>
  readonly count: number
}

/** All about a bore that is the same wherever its panel stands, as long as that is turned the same way. */
interface BoreLook extends Omit<GroupHole, 'hidden'> {
  /** Its end that is seen, in the panel's own frame. */
  readonly at: Vec3
  /** On a side that one does not see. */
  readonly isAway: boolean
}

interface PanelLook {
  readonly bores: readonly BoreLook[]
  readonly area: SceneArea
  readonly operations: readonly OperationShare[]
}

interface Drawn {
  readonly standing: Standing
  readonly before: readonly Box[]
  readonly look: PanelLook
  readonly holes: PanelHoles
}

/** By the axes of the panel. A panel that is changed is another thing, so what is known of it stays right. */
const looks = new WeakMap<Panel, Map<string, PanelLook>>()
/** As each was drawn last. */
const drawn = new WeakMap<Panel, Drawn>()

/**
 * Every bore of a panel; those on sides that one does not see, or behind other boxes, are hidden. Of a panel that is turned as it
 * was, with the same of its bores hidden, the shape is the very same thing as before.
 */
export function holesOf(one: Standing, before: readonly Box[], book: OperationBook): PanelHoles {
  const last = drawn.get(one.panel)
  if (last !== undefined && samePlace(last.standing, one) && sameBoxes(last.before, before)) return last.holes
  const look = lookOf(one, book)
  const isHidden = hiddenOf(one, before, look)
  const isAlike = last?.look === look && last.holes.shape.holes.every(({ hidden }, k) => hidden === isHidden(k))
  const holes = isAlike ? last.holes : shaped(one.panel, look, isHidden)
  drawn.set(one.panel, { standing: one, before, look, holes })
  return holes
}

const sameBoxes = (a: readonly Box[], b: readonly Box[]): boolean =>
  a.length === b.length &&
  a.every((box, k) => {
    const other = b[k]
    return other !== undefined && sameBox(box, other)
  })

function hiddenOf({ eyeFromPanel }: Standing, before: readonly Box[], { bores }: PanelLook): (k: number) => boolean {
  return (k) => {
    const bore = bores[k]
    if (bore === undefined) throw new Error('a bore that the panel does not have')
    return bore.isAway || (before.length > 0 && isCovered(before, place(eyeFromPanel, bore.at)))
  }
}

function shaped(panel: Panel, { bores, area, operations }: PanelLook, isHidden: (k: number) => boolean): PanelHoles {
  const holes = bores.map(
    ({ id, operation, drawn, onFloor, rims, radius }, k): GroupHole => ({
      id,
      operation,
      drawn,
      onFloor,
      rims,
      radius,
      hidden: isHidden(k),
    }),
  )
  return { shape: { panel: panel.id, holes }, area, operations }
}

function isCovered(boxes: readonly Box[], at: Vec3): boolean {
  for (const box of boxes) if (coversPoint(box, at)) return true
  return false
}

function lookOf(one: Standing, book: OperationBook): PanelLook {
  const { panel } = one
  const known = looks.get(panel) ?? new Map<string, PanelLook>()
  looks.set(panel, known)
  const axes = axesKey(one)
  const look = known.get(axes) ?? madeLook(one, book)
  known.set(axes, look)
  return look
}

const SURFACES: readonly Surface[] = ['A', 'B', 'x0', 'x1', 'y0', 'y1']

function madeLook({ panel, eyeFromPanel, floorFromPanel, frame }: Standing, book: OperationBook): PanelLook {
  const here = new Set(SURFACES.filter((surface) => isTurnedHere(eyeFromPanel, surface)))
  const rimsHere = new Rims(frame)
  const bores = panel.bores.map((bore): BoreLook => {
    const isHere = here.has(bore.surface)
    const end = !isHere && bore.through ? 'out' : 'in'
    const at = end === 'out' ? farEnd(bore) : bore.at
    const rims = rimsHere.of(bore, end)
    return {
      id: holeId(panel, bore),
      operation: book.boreId(bore),
      onFloor: turn(floorFromPanel, at),
      drawn: seenWay(frame, at),
      at,
      rims,
      radius: mouthRadius(bore),
      isAway: !isHere && !bore.through,
    }
  })
  return { bores, area: areaOf(bores), operations: sharesOf(panel, bores) }
}

function areaOf(bores: readonly BoreLook[]): SceneArea {
  const [min, max]: [[number, number], [number, number]] = [
    [Infinity, Infinity],
    [-Infinity, -Infinity],
  ]
  for (const { drawn, rims } of bores) {
    for (const { reach } of rims) {
      for (const axis of [0, 1] as const) {
        min[axis] = Math.min(min[axis], drawn[axis] - reach)
        max[axis] = Math.max(max[axis], drawn[axis] + reach)
      }
    }
  }
  return { min, max }
}

/** Where a through hole comes out. */
function farEnd({ at, axis, depth }: Bore): Vec3 {
  return add(at, scale(axis, depth))
}

function sharesOf({ bores }: Panel, looksOfBores: readonly BoreLook[]): OperationShare[] {
  const shares = new Map<string, { one: Bore; purposes: Set<string>; count: number }>()
  bores.forEach((bore, k) => {
    const id = looksOfBores[k]?.operation
    if (id === undefined) return
    const share = shares.get(id) ?? { one: bore, purposes: new Set<string>(), count: 0 }
    share.count += 1
    for (const purpose of purposesOf(bore)) share.purposes.add(purpose)
    shares.set(id, share)
  })
  return [...shares].map(([id, share]) => ({ id, ...share }))
}
