import { type Box, NOISE_MM } from '../../geometry/index.ts'
import { type BackSpec, backTakes, type DefinitionPath, grooveWidth, type Limits } from '../../project/index.ts'
import { board, boardBox, thicknessAxis } from '../boards.ts'
import { type Contact, contactOf, type InTheWay, placeClearJoint } from '../joints/index.ts'
import type { PanelRole, PlacedCut, PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'

/** What of the module the back has to fit, module frame, mm. */
export interface BackRoom {
  readonly module: string
  readonly width: number
  readonly depth: number
  /** Upper face of the top. */
  readonly height: number
  /** Inner faces of sides, bottom and top; the outer ends where there is no such panel. */
  readonly inner: { readonly x0: number; readonly x1: number; readonly z0: number; readonly z1: number }
  /** Whether a bottom and a top are there to be let into. */
  readonly has: { readonly bottom: boolean; readonly top: boolean }
  /** Whether the back lies over the rear edges of bottom and top. */
  readonly over: { readonly bottom: boolean; readonly top: boolean }
  readonly at: DefinitionPath
  readonly limits: Limits
}

type Sitting = Exclude<BackSpec, { sits: 'none' }>

/** Depth to which the carcase's panels reach, and the plane where the inside ends, mm from the module's front. */
export function backPlanes(back: BackSpec, depth: number): { carcaseRear: number; insideRear: number } {
  const insideRear = depth - backTakes(back)
  return { carcaseRear: back.sits === 'applied' ? insideRear : depth, insideRear }
}

/** How far the back reaches past the inner faces into the wood, mm. */
function reachOf(back: Sitting): number {
  if (back.sits === 'grooved') return back.grooveDepth - back.edgePlay
  if (back.sits === 'rebated') return back.rebateWidth - back.edgePlay
  return 0
}

/** The blank of the back in its place. */
export function backBoard(back: Sitting, room: BackRoom): PlacedPanel {
  return board({
    module: room.module,
    role: 'back',
    name: 'back',
    stock: back.stock,
    box: backBox(back, room),
    at: room.at,
  })
}

function backBox(back: Sitting, room: BackRoom): Box {
  const t = back.stock.thickness
  const { insideRear } = backPlanes(back, room.depth)
  const { margin } = back
  if (back.sits === 'applied') {
    return {
      min: [margin, insideRear, margin],
      max: [room.width - margin, room.depth, room.height - margin],
    }
  }
  // In a groove the back stands in the middle of the play; elsewhere against the front plane.
  const front = back.sits === 'grooved' ? insideRear + (grooveWidth(back) - t) / 2 : insideRear
  const reach = reachOf(back)
  const { x0, x1, z0, z1 } = room.inner
  if (back.sits === 'between sides') {
    return {
      min: [x0, insideRear, room.over.bottom ? 0 : z0],
      max: [x1, room.depth, room.over.top ? room.height : z1],
    }
  }
  return {
    min: [x0 - reach, front, z0 - (room.has.bottom ? reach : 0)],
    max: [x1 + reach, front + t, z1 + (room.has.top ? reach : 0)],
  }
}

/** Wood left between the end of a groove and the end of its panel, mm; common practice. */
const END_WOOD_MM = 3

/** Grooves or rebates for the back in the panels around it. */
export function backCuts(back: Sitting, room: BackRoom, shell: readonly PlacedPanel[]): PlacedCut[] {
  if (back.sits !== 'grooved' && back.sits !== 'rebated') return []
  const kind = back.sits === 'grooved' ? 'groove' : 'rebate'
  const depth = kind === 'groove' ? back.grooveDepth : back.rebateWidth
  const { insideRear } = backPlanes(back, room.depth)
  const rear = kind === 'groove' ? insideRear + grooveWidth(back) : room.depth
  const hole = backBox(back, room)
  return shell.map((panel): PlacedCut => {
    const own = boardBox(panel)
    const across = thicknessAxis(panel)
    const along = across === 0 ? 2 : 0
    // The round of a cutter as wide as the groove must lie beyond the corner of the back, where that leaves wood at a
    // visible end; else the ends are cut square.
    const round = kind === 'groove' ? (rear - insideRear) / 2 : 0
    const visible = [hole.min[along] - own.min[along], own.max[along] - hole.max[along]].filter(
      (wood) => wood > NOISE_MM,
    )
    const roundEnds = kind === 'groove' && visible.every((wood) => wood >= back.edgePlay + round + END_WOOD_MM)
    const beyond = back.edgePlay + (roundEnds ? round : 0)
    const min: [number, number, number] = [0, insideRear, 0]
    const max: [number, number, number] = [0, rear, 0]
    min[along] = Math.max(own.min[along], hole.min[along] - beyond)
    max[along] = Math.min(own.max[along], hole.max[along] + beyond)
    const square = !roundEnds && visible.length > 0 ? ', its ends cut square' : ''
    const inner = panel.moduleFromPanel.z[across] > 0 ? own.max[across] : own.min[across]
    const bottom = inner - panel.moduleFromPanel.z[across] * depth
    min[across] = Math.min(inner, bottom)
    max[across] = Math.max(inner, bottom)
    return {
      panel: panel.id,
      kind,
      box: { min, max },
      roundEnds,
      purpose: `${kind} for the back${square}`,
      at: room.at,
    }
  })
}

/**
 * Fasteners of the back: through it into edges, or through the shell into its edges when it is inset; clear of what is
 * `there` already.
 */
export function backJoints(
  back: Sitting,
  room: BackRoom,
  panel: PlacedPanel,
  others: readonly PlacedPanel[],
  there: InTheWay,
): { hardware: PlacedHardware[]; troubles: PlacingTrouble[] } {
  const joint = back.joint
  if (joint === undefined) return { hardware: [], troubles: [] }
  const judged = { at: room.at, asked: [...room.at, 'back', 'joint'], limits: room.limits }
  const all = others.map((other) => {
    // An inset back stands between the shell's panels, but its face lies against dividers, as an applied one's does; one
    // between the sides lies against a top and bottom that stand there, too.
    const lies = isDivider(other) || (back.sits === 'between sides' && contactOf(panel, other) !== undefined)
    if ((back.sits === 'inset' || back.sits === 'between sides') && !lies) {
      if (back.sits === 'between sides' && panel.thickness < LEAST_EDGE_MM) return { hardware: [], troubles: [] }
      return placeClearJoint({ module: room.module, head: other, tip: panel, joint, ...judged }, there)
    }
    const contact = back.sits === 'rebated' ? shoulderContact(panel, other, back, room) : contactOf(panel, other)
    return contact === undefined
      ? { hardware: [], troubles: [] }
      : placeClearJoint({ module: room.module, head: panel, tip: other, joint, contact, ...judged }, there)
  })
  return { hardware: all.flatMap((one) => one.hardware), troubles: all.flatMap((one) => one.troubles) }
}

/** No screw holds in the edge of a thinner back, mm; common practice. */
const LEAST_EDGE_MM = 12

/** Their rear edges lie against the face of a back that stands between the sides. */
const FACING: readonly PanelRole[] = ['partition', 'fixed shelf', 'top rail', 'chamber floor']

const isDivider = (panel: PlacedPanel): boolean => FACING.includes(panel.role)

/** In a rebate the back meets the shoulder: the panel's wood in front of the rebate, as wide as the rebate less the play. */
function shoulderContact(panel: PlacedPanel, other: PlacedPanel, back: Sitting, room: BackRoom): Contact | undefined {
  const { insideRear } = backPlanes(back, room.depth)
  const whole = boardBox(other)
  if (whole.max[1] < insideRear) return undefined
  return contactOf(panel, other, boardBox(panel), { min: whole.min, max: [whole.max[0], insideRear, whole.max[2]] })
}
