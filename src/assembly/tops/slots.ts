import { NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import type { ModuleSpec, SlotSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { partsOf } from '../parts.ts'
import type { PlacedCut, PlacedPanel, PlacingTrouble } from '../types.ts'
import type { TopWork } from './machine-top.ts'
import { type Area, areaOf, overlap } from './plan.ts'

/** Wood between a slot and the insert or the slot beside it, mm; common practice, as beside a groove. */
const WALL_STOP_MM = 3
const WALL_WARN_MM = 5

const nameOf = (slot: SlotSpec, number: number): string => `${slot.kind} slot ${number}`

/** The grooves of the slots in the upper face, and what of them stands too near the insert or another slot. */
export function placeSlots(
  spec: ModuleSpec,
  slots: readonly SlotSpec[],
  top: PlacedPanel,
  inserts: readonly Area[],
): TopWork {
  const upper = boardBox(top).max[2]
  const areas = slots.map((slot) => slotArea(slot, areaOf(top)))
  const cuts = slots.flatMap((slot, k): PlacedCut[] => {
    const area = areas[k]
    if (area === undefined) return []
    return [
      {
        panel: top.id,
        kind: 'groove',
        box: { min: [area.x0, area.y0, upper - slot.depth], max: [area.x1, area.y1, upper] },
        // The drawing rounds the ends that stop inside the panel.
        roundEnds: isStopped(area, areaOf(top)),
        purpose: nameOf(slot, k + 1),
        at: slot.at,
      },
    ]
  })
  const beside = slots.flatMap((slot, k) => {
    const others = slots
      .map((other, j) => ({ other, area: areas[j], name: nameOf(other, j + 1) }))
      .slice(0, k)
      // Slots that cross are meant to.
      .filter(({ other }) => other.along === slot.along)
    const all = [...inserts.map((area) => ({ area, name: 'insert' })), ...others]
    const own = areas[k]
    return all.flatMap(({ area, name }) =>
      area === undefined || own === undefined
        ? []
        : tooNear(spec, slot, nameOf(slot, k + 1), overlap(own, area), name, top),
    )
  })
  return { parts: partsOf({ cuts, troubles: beside }), areas }
}

const isStopped = (area: Area, board: Area): boolean =>
  [area.x0 - board.x0, board.x1 - area.x1, area.y0 - board.y0, board.y1 - area.y1].filter((wood) => wood > NOISE_MM)
    .length > 2

function slotArea(slot: SlotSpec, board: Area): Area {
  const { offset, start, width, length } = slot
  if (slot.along === 'width') {
    const x0 = board.x0 + start
    const y0 = board.y0 + offset
    return { x0, x1: length === undefined ? board.x1 : x0 + length, y0, y1: y0 + width }
  }
  const x0 = board.x0 + offset
  const y0 = board.y0 + start
  return { x0, x1: x0 + width, y0, y1: length === undefined ? board.y1 : y0 + length }
}

function tooNear(
  spec: ModuleSpec,
  slot: SlotSpec,
  name: string,
  shared: number,
  other: string,
  top: PlacedPanel,
): PlacingTrouble[] {
  const wall = -shared
  if (wall >= WALL_WARN_MM - NOISE_MM) return []
  const what = wall <= NOISE_MM ? `runs into the ${other}` : `leaves ${fineMm(wall)} mm of wood beside the ${other}`
  return [
    {
      rule: 'slot-wall',
      severity: wall < WALL_STOP_MM - NOISE_MM ? 'stop' : 'warn',
      panels: [top.id],
      message: `${spec.name}: the ${name} ${what}`,
      fix: `move it ${fineMm(WALL_WARN_MM - wall)} mm away, or stop it before`,
      at: slot.at,
    },
  ]
}
