import { type Box, NOISE_MM } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import type { MachineSpec, ModuleSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { atLeast } from '../mend.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'
import type { FlipPlace } from './place.ts'
import type { PlatformBoards } from './platform.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

/** Something that turns about the axle: its extent across the module and the circle that it stays inside, mm. */
interface Turning {
  readonly name: string
  readonly x0: number
  readonly x1: number
  readonly radius: number
  readonly machine?: MachineSpec
}

/** The platform and the machines on it. */
function turningParts({ flip, sizes, x0, x1 }: FlipPlace): Turning[] {
  const middle = (x0 + x1) / 2
  const machine = (key: 'upper' | 'lower'): Turning[] => {
    const one = flip.machines[key]
    if (one === undefined) return []
    // Turned about an axle that runs across the module, what is on the right stays on the right.
    const at = middle + one.offCentre.right
    return [
      {
        name: one.name,
        x0: at - one.width / 2,
        x1: at + one.width / 2,
        radius: sizes.radius[key],
        machine: one,
      },
    ]
  }
  return [{ name: 'platform', x0, x1, radius: sizes.radius.platform }, ...machine('upper'), ...machine('lower')]
}

/** Distance of a box from the axle, square to it, mm; 0 when the axle goes through it. */
function fromAxle({ axle }: FlipPlace, { min, max }: Box): number {
  return Math.hypot(Math.max(min[1] - axle.y, 0, axle.y - max[1]), Math.max(min[2] - axle.z, 0, axle.z - max[2]))
}

/**
 * What the turning platform and its machines strike, how far they swing beyond the footprint, and what to mind.
 * A machine that hangs below is covered by its circle, which reaches lower than it hangs.
 */
export function swingTroubles(
  place: FlipPlace,
  others: readonly PlacedPanel[],
  boards: PlatformBoards,
): PlacingTrouble[] {
  const parts = turningParts(place)
  const inWay = others.filter((panel) => panel.role !== 'left side' && panel.role !== 'right side')
  return [
    ...parts.flatMap((part) => inWay.flatMap((panel) => clearance(place, part, panel))),
    ...parts.flatMap((part) => betweenSides(place, part, boards)),
    ...swingRoom(place, parts, boards),
    care(place, boards),
  ]
}

function clearance(place: FlipPlace, part: Turning, panel: PlacedPanel): PlacingTrouble[] {
  const { flip, spec } = place
  const box = boardBox(panel)
  if (part.x1 <= box.min[0] + NOISE_MM || part.x0 >= box.max[0] - NOISE_MM) return []
  const free = fromAxle(place, box) - part.radius
  if (free >= flip.turningClearance - NOISE_MM && free > NOISE_MM) return []
  const strikes = free <= NOISE_MM
  const swings = `${spec.name}: as it turns, the ${part.name} swings ${mm(part.radius)} mm about the axle and`
  return [
    {
      rule: 'swing-clearance',
      severity: strikes ? 'stop' : 'warn',
      panels: [panel.id],
      message: strikes
        ? `${swings} strikes the ${panel.name}, ${mm(fromAxle(place, box))} mm from it`
        : `${swings} passes the ${panel.name} by only ${mm(free)} mm; ${mm(flip.turningClearance)} mm is wanted`,
      ...clearedBy(place, panel, flip.turningClearance - free),
      at: part.machine?.at ?? flip.at,
    },
  ]
}

/** Above the carcase's top it is the well that is too shallow; elsewhere the panel is too near. */
function clearedBy({ flip, sizes }: FlipPlace, panel: PlacedPanel, short: number): Mending {
  if (panel.role !== 'top') return { fix: `keep it ${atLeast(short)} further from the axle` }
  const well = { path: [...flip.at, 'well'], value: atLeast(sizes.well + short) }
  if (flip.surface === 'level') return { fix: `make the well ${well.value} deep or more`, change: [well] }
  const surface = { path: [...flip.at, 'surface'], value: atLeast(sizes.surface + short) }
  // A well that is worked out follows the platform up.
  if (flip.well === 'auto') return { fix: `set \`surface: ${surface.value}\` or more`, change: [surface] }
  return { fix: `set \`surface: ${surface.value}\` and \`well: ${well.value}\` or more`, change: [surface, well] }
}

/** A machine hangs and turns between the sides. */
function betweenSides({ walls, flip, spec }: FlipPlace, part: Turning, boards: PlatformBoards): PlacingTrouble[] {
  if (part.machine === undefined) return []
  const free = Math.min(part.x0 - walls.left, walls.right - part.x1)
  if (free >= flip.turningClearance - NOISE_MM && free > NOISE_MM) return []
  const room = walls.right - walls.left
  const strikes = free <= NOISE_MM
  return [
    {
      rule: 'machine-width',
      severity: strikes ? 'stop' : 'warn',
      panels: [boards.upper.id, boards.lower.id],
      message: `${spec.name}: the ${part.name}, ${mm(part.machine.width)} mm wide, ${strikes ? 'does not pass' : `passes with only ${mm(free)} mm at one side`} between sides ${mm(room)} mm apart`,
      ...widerBy(spec, part.machine, room, flip.turningClearance),
      at: part.machine.at,
    },
  ]
}

/** A machine that stands in the middle where that is enough, else a wider module. */
function widerBy(spec: ModuleSpec, machine: MachineSpec, room: number, clearance: number): Mending {
  const { right, rear } = machine.offCentre
  const short = machine.width + 2 * clearance - room
  if (right !== 0 && short <= NOISE_MM) {
    const path = [...machine.at, 'off centre']
    const key = right > 0 ? 'right' : 'left'
    const out = rear === 0 ? path : [...path, key]
    return {
      fix: `stand it in the middle: leave out \`off centre\` to the ${key}`,
      change: [{ path: out, value: undefined }],
    }
  }
  const value = atLeast(spec.width + short + 2 * Math.abs(right))
  const fix = `make the module ${value} wide or more`
  return { fix, ...(!spec.fitted && { change: [{ path: [...spec.at, 'width'], value }] }) }
}

/** How far the largest circle goes beyond the footprint. */
function swingRoom(
  { spec, axle, flip }: FlipPlace,
  parts: readonly Turning[],
  boards: PlatformBoards,
): PlacingTrouble[] {
  const widest = parts.reduce((most, part) => (part.radius > most.radius ? part : most))
  const front = widest.radius - axle.y
  const rear = widest.radius - (spec.depth - axle.y)
  const at = [
    ...(front > NOISE_MM ? [`${mm(front)} mm at the front`] : []),
    ...(rear > NOISE_MM ? [`${mm(rear)} mm at the rear`] : []),
  ]
  if (at.length === 0) return []
  return [
    {
      rule: 'swing-room',
      severity: 'note',
      panels: [boards.upper.id, boards.lower.id],
      message: `${spec.name}: as it turns, the ${widest.name} swings beyond the footprint by ${at.join(' and ')}; a wall or a neighbour there must leave that room`,
      at: flip.at,
    },
  ]
}

function care({ spec, flip }: FlipPlace, boards: PlatformBoards): PlacingTrouble {
  return {
    rule: 'flip-over-care',
    severity: 'note',
    panels: [boards.upper.id, boards.lower.id],
    message: `${spec.name}: the manuals of the machines come first; turn the platform only with the machines unplugged and bolted down, the casters locked and hands clear of the sides, and lock every bolt before you work`,
    at: flip.at,
  }
}
