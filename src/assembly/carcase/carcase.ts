import type { Box } from '../../geometry/index.ts'
import { type Lap, type ModuleSpec, type PanelJoint, wellOf } from '../../project/index.ts'
import { board } from '../boards.ts'
import { joinPanels, letIn } from '../joints/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PanelId, PanelRole, PlacedPanel } from '../types.ts'
import { type BackRoom, backBoard, backCuts, backJoints, backPlanes } from './backs.ts'
import type { Cell } from './facing.ts'
import { placeStretchers, topRails } from './strips.ts'

/** The panel that bounds an opening on one side. */
export interface Bound {
  readonly panel: PanelId
  readonly thickness: number
  /** Another panel that bounds it on the same side in the same plane: the rear top rail behind the front one. */
  readonly also?: PanelId
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
  /** Upper face of the top: the head of the module, or the bottom of the well of a flip-over top. */
  readonly topFace: number
}

/** Side depth = overall depth − what the fronts take (thickness and front gap) − back, as its joint takes it. */
function planesOf(spec: ModuleSpec, height: number, frontsTake: number): Planes {
  const { carcase, stock } = spec
  const { carcaseRear, insideRear } = backPlanes(carcase.back, spec.depth)
  return {
    front: frontsTake,
    rear: carcaseRear,
    insideRear,
    foot: carcase.bottom === 'over' ? stock.thickness - letIn(carcase.joint, stock.thickness) : 0,
    head: carcase.top === 'over' ? height - stock.thickness + letIn(carcase.joint, stock.thickness) : height,
    topFace: height - wellOf(spec),
  }
}

interface ShellPanels {
  readonly left: PlacedPanel
  readonly right: PlacedPanel
  readonly top: PlacedPanel | undefined
  readonly bottom: PlacedPanel | undefined
  /** Front and rear, in the place of a top. */
  readonly rails: readonly PlacedPanel[]
}

function shellPanels(spec: ModuleSpec, planes: Planes): ShellPanels {
  const { front, rear, insideRear, foot, head, topFace } = planes
  const { carcase, stock, key, at } = spec
  const t = stock.thickness
  const make = (role: PanelRole, box: Box): PlacedPanel => board({ module: key, role, name: role, stock, box, at })
  const lying = (role: 'top' | 'bottom', lap: Lap | 'rails'): PlacedPanel | undefined => {
    if (lap === 'none' || lap === 'rails') return undefined
    const x0 = lap === 'over' ? 0 : t - letIn(carcase.joint, t)
    const z0 = role === 'top' ? topFace - t : 0
    const back = carcase.back.sits === 'between sides' && lap === 'between' ? insideRear : rear
    return make(role, { min: [x0, front, z0], max: [spec.width - x0, back, z0 + t] })
  }
  return {
    left: make('left side', { min: [0, front, foot], max: [t, rear, head] }),
    right: make('right side', { min: [spec.width - t, front, foot], max: [spec.width, rear, head] }),
    top: lying('top', carcase.top),
    bottom: lying('bottom', carcase.bottom),
    rails: topRails(spec, planes),
  }
}

/** The joints of top or rails and bottom with both sides. */
function shellJoints(spec: ModuleSpec, { left, right, top, bottom, rails }: ShellPanels): Parts[] {
  const { carcase, key } = spec
  const joined = (panel: PlacedPanel | undefined, lap: Lap | 'rails', joint: PanelJoint = carcase.joint): Parts[] =>
    panel === undefined
      ? []
      : [left, right].map((side) => {
          const [head, tip] = lap === 'over' ? [panel, side] : [side, panel]
          const at = [...spec.at, 'carcase']
          const asked = [...at, ...(lap === 'rails' ? ['rails'] : []), 'joint']
          return joinPanels({ module: key, head, tip, joint, at, asked, limits: spec })
        })
  const railed = rails.flatMap((rail) => joined(rail, 'rails', carcase.rails?.joint))
  return [...joined(top, carcase.top), ...railed, ...joined(bottom, carcase.bottom)]
}

/**
 * Sides, top and bottom of a module of the given carcase height, behind fronts that take so much of the depth, and the
 * one opening that they leave.
 */
export function shell(spec: ModuleSpec, height: number, frontsTake: number): Shell {
  const planes = planesOf(spec, height, frontsTake)
  const made = shellPanels(spec, planes)
  const { left, right, top, bottom, rails } = made
  const grooved = [left, right, top, bottom].filter((panel) => panel !== undefined)
  const panels = [...grooved, ...rails]
  const t = spec.stock.thickness
  const has = { bottom: bottom !== undefined, top: top !== undefined }
  const { topFace } = planes
  const inner = { x0: t, x1: spec.width - t, z0: has.bottom ? t : 0, z1: has.top ? topFace - t : topFace }
  const [rail, rearRail] = rails
  const { width, depth, carcase } = spec
  const backRoom: BackRoom = {
    module: spec.key,
    width,
    depth,
    height: topFace,
    inner,
    has,
    over: { bottom: carcase.bottom === 'between', top: carcase.top === 'between' },
    at: [...spec.at, 'carcase'],
    limits: spec,
  }
  const cuts = carcase.back.sits === 'none' ? [] : backCuts(carcase.back, backRoom, grooved)
  const bound = (panel: PlacedPanel): Bound => ({ panel: panel.id, thickness: panel.thickness })
  const z1 = rail === undefined ? inner.z1 : topFace - rail.thickness
  const stretchers = placeStretchers(spec, planes, z1, [left, right])
  const railBound = rail && rearRail && { ...bound(rail), also: rearRail.id }
  return {
    parts: merge([{ panels, cuts }, ...shellJoints(spec, made), ...stretchers]),
    opening: {
      ...inner,
      z1,
      front: planes.front,
      rear: planes.insideRear,
      left: bound(left),
      right: bound(right),
      top: top ? bound(top) : railBound,
      bottom: bottom && bound(bottom),
      parity: 0,
    },
    sidesFoot: planes.foot,
    backRoom,
  }
}

/** The back and its fasteners; it is fixed to the shell and to the partitions and fixed shelves that reach it. */
export function backOf(spec: ModuleSpec, room: BackRoom, others: readonly PlacedPanel[], there: Parts): Parts {
  const back = spec.carcase.back
  if (back.sits === 'none') return merge([])
  const panel = backBoard(back, room)
  return partsOf({ panels: [panel], ...backJoints(back, room, panel, others, there) })
}
