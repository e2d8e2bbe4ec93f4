import type { Box } from '../geometry/index.ts'
import type { ModuleSpec, Stock } from '../project/index.ts'
import { type BackRoom, backBoard, backCuts, backJoints, backPlanes } from './backs.ts'
import { board } from './boards.ts'
import { placeJoint } from './joints.ts'
import { merge, type Parts } from './parts.ts'
import type { PanelId, PanelRole, PlacedPanel } from './types.ts'

/** The panel that bounds an opening on one side. */
export interface Bound {
  readonly panel: PanelId
  readonly thickness: number
  /** Another opening of the same module lies on its far face. */
  readonly shared: boolean
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
  /** Front edges of the carcase, mm from the module's front. */
  readonly carcaseFront: number
  /** Lower end of the sides, where pin rows are counted from, mm. */
  readonly sidesFoot: number
  readonly backRoom: BackRoom
}

/**
 * Sides, top, bottom and back of a module of the given carcase height, and the one opening that they leave.
 * Side depth = overall depth − front thickness − front gap − back, as its joint takes it.
 */
export function shell(spec: ModuleSpec, height: number, frontThickness: number): Shell {
  const { carcase, stock, key, at } = spec
  const t = stock.thickness
  const front = frontThickness === 0 ? 0 : frontThickness + spec.frontGap
  const { carcaseRear, insideRear } = backPlanes(carcase.back, spec.depth)
  const foot = carcase.bottom === 'over' ? t : 0
  const head = carcase.top === 'over' ? height - t : height
  const has = { bottom: carcase.bottom !== 'none', top: carcase.top !== 'none' }
  const inner = { x0: t, x1: spec.width - t, z0: has.bottom ? t : 0, z1: has.top ? height - t : height }

  const make = (role: PanelRole, box: Box, of: Stock = stock): PlacedPanel =>
    board({ module: key, role, name: role, stock: of, box, at })
  const left = make('left side', { min: [0, front, foot], max: [t, carcaseRear, head] })
  const right = make('right side', { min: [spec.width - t, front, foot], max: [spec.width, carcaseRear, head] })
  const lying = (role: 'top' | 'bottom', lap: 'over' | 'between'): PlacedPanel => {
    const x0 = lap === 'over' ? 0 : t
    const z0 = role === 'top' ? height - t : 0
    return make(role, { min: [x0, front, z0], max: [spec.width - x0, carcaseRear, z0 + t] })
  }
  const top = carcase.top === 'none' ? undefined : lying('top', carcase.top)
  const bottom = carcase.bottom === 'none' ? undefined : lying('bottom', carcase.bottom)
  const panels = [left, right, top, bottom].filter((panel) => panel !== undefined)

  const joints = [top, bottom].flatMap((panel) =>
    panel === undefined
      ? []
      : [left, right].map((side) => {
          const over = (panel.role === 'top' ? carcase.top : carcase.bottom) === 'over'
          return placeJoint({
            module: key,
            head: over ? panel : side,
            tip: over ? side : panel,
            joint: carcase.joint,
            at: [...at, 'carcase'],
          })
        }),
  )
  const backRoom: BackRoom = {
    module: key,
    width: spec.width,
    depth: spec.depth,
    height,
    inner,
    has,
    at: [...at, 'carcase'],
  }
  const cuts = carcase.back.sits === 'none' ? [] : backCuts(carcase.back, backRoom, panels)
  const bound = (panel: PlacedPanel): Bound => ({ panel: panel.id, thickness: panel.thickness, shared: false })
  return {
    parts: merge([
      { panels, cuts, hardware: [], troubles: [] },
      ...joints.map((joint) => ({ panels: [], cuts: [], ...joint })),
    ]),
    opening: {
      ...inner,
      front,
      rear: insideRear,
      left: bound(left),
      right: bound(right),
      top: top && bound(top),
      bottom: bottom && bound(bottom),
      parity: 0,
    },
    carcaseFront: front,
    sidesFoot: foot,
    backRoom,
  }
}

/** The back and its fasteners; it is fixed to the shell and to the partitions and fixed shelves that reach it. */
export function backOf(spec: ModuleSpec, room: BackRoom, others: readonly PlacedPanel[]): Parts {
  const back = spec.carcase.back
  if (back.sits === 'none') return merge([])
  const panel = backBoard(back, room)
  return { panels: [panel], cuts: [], ...backJoints(back, room, panel, others) }
}
