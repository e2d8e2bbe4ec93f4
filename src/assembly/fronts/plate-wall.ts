import { same } from '../../geometry/index.ts'
import type { Bay } from '../../project/index.ts'
import type { Opening } from '../carcase/index.ts'
import { pinDatum } from '../shelves.ts'
import type { PlacedDoor } from './fronts.ts'
import type { PlateGrid, Span } from './hinge-rules.ts'

/** A bay that is not split, with its opening. */
export interface Leaf {
  readonly bay: Bay
  readonly opening: Opening
}

/** What the wall that takes the hinge plates has on it already. Positions along the hinge edge, module frame, mm. */
export interface PlateWall {
  /** Fixed shelves (on the wall beside a door) or partitions (above or below a flap) whose ends stand against it. */
  readonly shelves: readonly Span[]
  /**
   * The grid of the pin column on a plate line, in steps of the plate's own two holes: a plate on it shares holes with
   * the column, or stands midway between them; midway only where its holes have another diameter. Nothing where the
   * column's pitch and that step do not go into each other, for then no height would suit.
   */
  readonly gridAt: (plateLine: number, holesApart: number, diameter: number) => PlateGrid | undefined
}

/** The wall on the hinge side of a door or flap; `leaves` are the bays behind it. */
export function plateWall(door: PlacedDoor, opening: Opening, leaves: readonly Leaf[], sidesFoot: number): PlateWall {
  const side = door.hang
  if (side === 'top' || side === 'bottom')
    return { shelves: partitionsAt(side, opening, leaves), gridAt: () => undefined }
  const beside = leaves.filter((leaf) => leaf.opening[side].panel === opening[side].panel)
  return {
    shelves: shelvesAgainst(side, opening, leaves),
    gridAt: (plateLine, holesApart, diameter) => {
      for (const { bay, opening: own } of beside) {
        const pins = bay.looseShelves?.pins
        if (pins === undefined || !same(own.front + pins.frontSetback, plateLine)) continue
        const steps = Math.max(pins.pitch / holesApart, holesApart / pins.pitch)
        if (!same(steps, Math.round(steps))) continue
        const shares = (pins.item.parts[side] ?? []).every((hole) => same(hole.diameter, diameter))
        const aside = shares ? 0 : Math.min(pins.pitch, holesApart) / 2
        return { datum: pinDatum(pins, sidesFoot, own) + aside, pitch: holesApart }
      }
      return undefined
    },
  }
}

/** Partitions that stand against the panel above or below an opening. */
function partitionsAt(side: 'top' | 'bottom', opening: Opening, leaves: readonly Leaf[]): Span[] {
  return leaves
    .filter((leaf) => leaf.opening[side]?.panel === opening[side]?.panel)
    .flatMap(({ opening: { right, x1 } }) =>
      right.panel === opening.right.panel ? [] : [{ from: x1, to: x1 + right.thickness }],
    )
}

/** Fixed shelves whose ends stand against the panel on one side of an opening, heights in the module frame, mm. */
export function shelvesAgainst(side: 'left' | 'right', opening: Opening, leaves: readonly Leaf[]): Span[] {
  return leaves
    .filter((leaf) => leaf.opening[side].panel === opening[side].panel)
    .flatMap(({ opening: { top, z1 } }) =>
      top === undefined || top.panel === opening.top?.panel ? [] : [{ from: z1, to: z1 + top.thickness }],
    )
}
