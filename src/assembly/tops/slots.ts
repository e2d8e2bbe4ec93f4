import { NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import { limitOf, type ModuleSpec, type SlotSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { partsOf } from '../parts.ts'
import type { PlacedCut, PlacedPanel, PlacingTrouble } from '../types.ts'
import type { TopWork } from './machine-top.ts'
import { type Area, areaOf, overlap } from './plan.ts'

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
    const near = (j: number): boolean => j !== k && slots[j]?.along === slot.along
    // Slots that cross are meant to.
    const others = slots.flatMap((other, j) => {
      const area = areas[j]
      return near(j) && area !== undefined ? [{ area, name: nameOf(other, j + 1), later: j > k }] : []
    })
    const all = [...inserts.map((area) => ({ area, name: 'insert', later: false })), ...others]
    const own = areas[k]
    return own === undefined ? [] : tooNear({ spec, slot, name: nameOf(slot, k + 1), own, all, top })
  })
  return { parts: partsOf({ cuts, troubles: beside }), areas }
}

const isStopped = (area: Area, board: Area): boolean =>
  [area.x0 - board.x0, board.x1 - area.x1, area.y0 - board.y0, board.y1 - area.y1].filter((wood) => wood > NOISE_MM)
    .length > 2

/** What a slot takes of the upper face of its board, seen from above. */
export function slotArea(slot: SlotSpec, board: Area): Area {
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

interface Beside {
  readonly area: Area
  readonly name: string
  /** It is told of with the slot that comes after. */
  readonly later: boolean
}

interface NearSlot {
  readonly spec: ModuleSpec
  readonly slot: SlotSpec
  readonly name: string
  readonly own: Area
  readonly all: readonly Beside[]
  readonly top: PlacedPanel
}

function tooNear(near: NearSlot): PlacingTrouble[] {
  const { spec, slot, name, own, all, top } = near
  const [warn, stop] = [limitOf(spec, 'slot-wall', 'warn'), limitOf(spec, 'slot-wall', 'stop')]
  return all.flatMap(({ area, name: other, later }): PlacingTrouble[] => {
    const wall = -overlap(own, area)
    if (later || wall >= warn - NOISE_MM) return []
    const what = wall <= NOISE_MM ? `runs into the ${other}` : `leaves ${fineMm(wall)} mm of wood beside the ${other}`
    return [
      {
        rule: 'slot-wall',
        severity: wall < stop - NOISE_MM ? 'stop' : 'warn',
        panels: [top.id],
        message: `${spec.name}: the ${name} ${what}; ${fineMm(warn)} mm is wanted`,
        ...aside(near, warn),
        at: slot.at,
      },
    ]
  })
}

/** The nearest place of a slot at which it keeps the wall to all that is beside it and to the edges of the board. */
function aside({ slot, all, top }: NearSlot, wall: number): Pick<PlacingTrouble, 'fix' | 'change'> {
  const board = areaOf(top)
  const [key, low, high] =
    slot.along === 'width' ? (['from front', 'y0', 'y1'] as const) : (['from left', 'x0', 'x1'] as const)
  const most = board[high] - board[low] - slot.width - wall
  const stands = (offset: number): boolean => {
    const own = slotArea({ ...slot, offset }, board)
    return offset >= wall && offset <= most && all.every(({ area }) => overlap(own, area) <= NOISE_MM - wall)
  }
  const places = all
    .flatMap(({ area }) => [
      Math.floor((area[low] - board[low] - wall - slot.width + NOISE_MM) * 10) / 10,
      Math.ceil((area[high] - board[low] + wall - NOISE_MM) * 10) / 10,
    ])
    .filter(stands)
  const nearest = places.sort((a, b) => Math.abs(a - slot.offset) - Math.abs(b - slot.offset))[0]
  if (nearest === undefined) return { fix: 'stop it before, or leave one of them out' }
  const value = `${nearest} mm`
  return { fix: `set its \`${key}: ${value}\``, change: [{ path: [...slot.at, key], value }] }
}
