import type { Box } from '../geometry/index.ts'
import type { Lap, ModuleSpec } from '../project/index.ts'
import { type BackRoom, backBoard, backCuts, backJoints, backPlanes } from './backs.ts'
import { board } from './boards.ts'
import type { Cell } from './facing.ts'
import { placeJoint } from './joints.ts'
import { merge, type Parts, partsOf } from './parts.ts'
import type { PanelId, PanelRole, PlacedPanel } from './types.ts'

/** The panel that bounds an opening on one side. */
export interface Bound {
  readonly panel: PanelId
  readonly thickness: number
  /** Another opening of the same module lies on its far face. */
  readonly shared: boolean
  /** The bay on its far face, with all bays in it. */
  readonly beyond?: Cell
}

/** A clear opening of the carcase, module frame, mm. Bounds are missing where there is no panel. */
export interface Opening {
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
  /** Where its inside begins (behind an inset front) and ends. */
  readonly front: number
  readonly rear: number
  readonly left: Bound
  readonly right: Bound
  readonly top: Bound | undefined
  readonly bottom: Bound | undefined
  /** 0 or 1: pin rows that must not meet those of the neighbouring opening stand half a pitch higher at 1. */
  readonly parity: 0 | 1
}

export interface Shell {
  readonly parts: Parts
  readonly opening: Opening
  /** Lower end of the sides, where pin rows are counted from, mm. */
  readonly sidesFoot: number
  readonly backRoom: BackRoom
}

/** The planes that bound a carcase, module frame, mm. */
interface Planes {
  readonly front: number
  readonly rear: number
  readonly insideRear: number
  /** Ends of the sides. */
  readonly foot: number
  readonly head: number
  readonly height: number
}

/** Side depth = overall depth − what the fronts take (thickness and front gap) − back, as its joint takes it. */
function planesOf(spec: ModuleSpec, height: number, frontsTake: number): Planes {
  const { carcase, stock } = spec
  const { carcaseRear, insideRear } = backPlanes(carcase.back, spec.depth)
  return {
    front: frontsTake,
    rear: carcaseRear,
    insideRear,
    foot: carcase.bottom === 'over' ? stock.thickness : 0,
    head: carcase.top === 'over' ? height - stock.thickness : height,
    height,
  }
}

interface ShellPanels {
  readonly left: PlacedPanel
  readonly right: PlacedPanel
  readonly top: PlacedPanel | undefined
  readonly bottom: PlacedPanel | undefined
}

function shellPanels(spec: ModuleSpec, { front, rear, foot, head, height }: Planes): ShellPanels {
  const { carcase, stock, key, at } = spec
  const t = stock.thickness
  const make = (role: PanelRole, box: Box): PlacedPanel => board({ module: key, role, name: role, stock, box, at })
  const lying = (role: 'top' | 'bottom', lap: Lap): PlacedPanel | undefined => {
    if (lap === 'none') return undefined
    const x0 = lap === 'over' ? 0 : t
    const z0 = role === 'top' ? height - t : 0
    return make(role, { min: [x0, front, z0], max: [spec.width - x0, rear, z0 + t] })
  }
  return {
    left: make('left side', { min: [0, front, foot], max: [t, rear, head] }),
    right: make('right side', { min: [spec.width - t, front, foot], max: [spec.width, rear, head] }),
    top: lying('top', carcase.top),
    bottom: lying('bottom', carcase.bottom),
  }
}

/** The joints of top and bottom with both sides. */
function shellJoints(spec: ModuleSpec, { left, right, top, bottom }: ShellPanels): Parts[] {
  const { carcase, key } = spec
  const joined = (panel: PlacedPanel | undefined, lap: Lap): Parts[] =>
    panel === undefined
      ? []
      : [left, right].map((side) => {
          const [head, tip] = lap === 'over' ? [panel, side] : [side, panel]
          const at = [...spec.at, 'carcase']
          return partsOf(placeJoint({ module: key, head, tip, joint: carcase.joint, at }))
        })
  return [...joined(top, carcase.top), ...joined(bottom, carcase.bottom)]
}

/**
 * Sides, top and bottom of a module of the given carcase height, behind fronts that take so much of the depth, and the
 * one opening that they leave.
 */
export function shell(spec: ModuleSpec, height: number, frontsTake: number): Shell {
  const planes = planesOf(spec, height, frontsTake)
  const made = shellPanels(spec, planes)
  const { left, right, top, bottom } = made
  const panels = [left, right, top, bottom].filter((panel) => panel !== undefined)
  const t = spec.stock.thickness
  const has = { bottom: bottom !== undefined, top: top !== undefined }
  const inner = { x0: t, x1: spec.width - t, z0: has.bottom ? t : 0, z1: has.top ? height - t : height }
  const { width, depth, carcase } = spec
  const backRoom: BackRoom = { module: spec.key, width, depth, height, inner, has, at: [...spec.at, 'carcase'] }
  const cuts = carcase.back.sits === 'none' ? [] : backCuts(carcase.back, backRoom, panels)
  const bound = (panel: PlacedPanel): Bound => ({ panel: panel.id, thickness: panel.thickness, shared: false })
  return {
    parts: merge([{ panels, cuts }, ...shellJoints(spec, made)]),
    opening: {
      ...inner,
      front: planes.front,
      rear: planes.insideRear,
      left: bound(left),
      right: bound(right),
      top: top && bound(top),
      bottom: bottom && bound(bottom),
      parity: 0,
    },
    sidesFoot: planes.foot,
    backRoom,
  }
}

/** The back and its fasteners; it is fixed to the shell and to the partitions and fixed shelves that reach it. */
export function backOf(spec: ModuleSpec, room: BackRoom, others: readonly PlacedPanel[]): Parts {
  const back = spec.carcase.back
  if (back.sits === 'none') return merge([])
  const panel = backBoard(back, room)
  return partsOf({ panels: [panel], ...backJoints(back, room, panel, others) })
}
