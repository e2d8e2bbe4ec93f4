import { mouthRadius } from '../../drawing/index.ts'
import { add, type Box, place, scale, turn, type Vec3 } from '../../geometry/index.ts'
import { type Bore, type Panel, purposesOf, type Surface } from '../../panel/index.ts'
import { holeId } from './laid-index.ts'
import type { OperationBook } from './operations.ts'
import { coversPoint } from './paint-order.ts'
import { seenWay } from './plane.ts'
import { type Rim, Rims, rimAt } from './rims.ts'
import { axesKey, isTurnedHere, type Standing, sameBox, samePlace } from './standing.ts'
import type { SceneHole, ScenePoint } from './types.ts'

/** The holes of a panel, how far each reaches about its middle (mm), and what operations they are of. */
export interface PanelHoles {
  readonly holes: readonly SceneHole[]
  readonly reaches: readonly number[]
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
interface BoreLook {
  readonly id: string
  readonly operation: string
  /** From the panel's origin to the end that is seen: on the floor, and on the drawing. */
  readonly onFloor: Vec3
  readonly drawn: ScenePoint
  /** The same in the panel's own frame. */
  readonly at: Vec3
  readonly rims: readonly [Rim, ...Rim[]]
  readonly reach: number
  readonly radius: number
  /** On a side that one does not see. */
  readonly isAway: boolean
}

interface PanelLook {
  readonly bores: readonly BoreLook[]
  readonly operations: readonly OperationShare[]
}

interface Drawn {
  readonly standing: Standing
  readonly before: readonly Box[]
  readonly holes: PanelHoles
}

/** By the axes of the panel. A panel that is changed is another thing, so what is known of it stays right. */
const looks = new WeakMap<Panel, Map<string, PanelLook>>()
/** As each was drawn last. */
const drawn = new WeakMap<Panel, Drawn>()

/**
 * Every bore of a panel; those on sides that one does not see, or behind other boxes, are hidden. Of a panel that stands where it
 * stood, and behind the same, the holes are the very same things as before.
 */
export function holesOf(one: Standing, before: readonly Box[], book: OperationBook): PanelHoles {
  const last = drawn.get(one.panel)
  if (last !== undefined && samePlace(last.standing, one) && sameBoxes(last.before, before)) return last.holes
  const holes = drawnHoles(one, before, lookOf(one, book))
  drawn.set(one.panel, { standing: one, before, holes })
  return holes
}

const sameBoxes = (a: readonly Box[], b: readonly Box[]): boolean =>
  a.length === b.length &&
  a.every((box, k) => {
    const other = b[k]
    return other !== undefined && sameBox(box, other)
  })

function drawnHoles(one: Standing, before: readonly Box[], { bores, operations }: PanelLook): PanelHoles {
  const { panel, frame, floorFromPanel, eyeFromPanel } = one
  const reaches: number[] = []
  const holes = bores.map((look): SceneHole => {
    const { id, operation, drawn: from, onFloor, rims, reach, radius, isAway } = look
    const at: ScenePoint = [from[0] + frame[3], from[1] + frame[7]]
    const [rim, mouth] = rims
    reaches.push(reach)
    return {
      id,
      panel: panel.id,
      operation,
      at,
      place: add(onFloor, floorFromPanel.origin),
      d: mouth === undefined ? rimAt(rim, at) : rimAt(rim, at) + rimAt(mouth, at),
      radius,
      hidden: isAway || (before.length > 0 && isCovered(before, place(eyeFromPanel, look.at))),
    }
  })
  return { holes, reaches, operations }
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
      reach: Math.max(...rims.map(({ reach }) => reach)),
      radius: mouthRadius(bore),
      isAway: !isHere && !bore.through,
    }
  })
  return { bores, operations: sharesOf(panel, bores) }
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
