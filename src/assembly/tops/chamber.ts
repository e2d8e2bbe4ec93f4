import { circlePath, placeBack } from '../../geometry/index.ts'
import { type ChamberSpec, type ModuleSpec, type PortSpec, startOf } from '../../project/index.ts'
import { board, boardBox } from '../boards.ts'
import type { Opening } from '../carcase/index.ts'
import { joinPanels, letIn } from '../joints/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PlacedPanel } from '../types.ts'
import { portTroubles } from './port-troubles.ts'

export interface Chambered {
  readonly parts: Parts
  /** What is left of the inside below the chamber. */
  readonly opening: Opening
}

/**
 * The chamber under a machine top: a floor between the sides, and a strip that closes it at the front, flush with the
 * carcase's front edges, so that extraction draws through the machine alone.
 */
export function placeChamber(
  spec: ModuleSpec,
  height: number,
  opening: Opening,
  shell: readonly PlacedPanel[],
): Chambered {
  const chamber = spec.machineTop?.chamber
  if (chamber === undefined) return { parts: merge([]), opening }
  const { key, stock } = spec
  const t = stock.thickness
  const upper = height - chamber.height
  const { x0, x1, front, rear } = opening
  const floor = board({
    module: key,
    role: 'chamber floor',
    name: 'chamber floor',
    stock,
    box: {
      min: [x0 - letIn(spec.carcase.joint, t), front, upper - t],
      max: [x1 + letIn(spec.carcase.joint, t), rear, upper],
    },
    at: chamber.at,
  })
  const strip = board({
    module: key,
    role: 'front stretcher',
    name: 'chamber front',
    stock,
    box: { min: [x0, front, upper], max: [x1, front + t, opening.z1] },
    at: chamber.at,
  })
  return {
    parts: merge([{ panels: [floor, strip] }, ...joined(spec, chamber, [floor, strip], shell)]),
    opening: { ...opening, z1: upper - t, top: { panel: floor.id, thickness: t } },
  }
}

function joined(
  spec: ModuleSpec,
  chamber: ChamberSpec,
  tips: readonly PlacedPanel[],
  shell: readonly PlacedPanel[],
): Parts[] {
  const sides = shell.filter((panel) => panel.role === 'left side' || panel.role === 'right side')
  const { joint, fastening } = spec.carcase
  return tips.flatMap((tip) =>
    sides.map((head) => {
      const wanted = tip.role === 'chamber floor' ? joint : fastening
      return joinPanels({
        module: spec.key,
        head,
        tip,
        joint: wanted,
        at: chamber.at,
        asked: [...spec.at, 'carcase', 'joint'],
        limits: spec,
      })
    }),
  )
}

/** The round hole through the back into the chamber; nothing where there is none of the two. */
export function placePort(spec: ModuleSpec, panels: readonly PlacedPanel[]): Parts {
  const port = spec.machineTop?.chamber?.port
  const back = panels.find((panel) => panel.role === 'back')
  const floor = panels.find((panel) => panel.role === 'chamber floor')
  if (port === undefined || back === undefined || floor === undefined) return merge([])
  const [x, z] = centreOf(port, panels, floor)
  const inner = boardBox(back).min[1]
  const [across, up] = placeBack(back.moduleFromPanel, [x, inner, z])
  return partsOf({
    cutouts: [
      {
        panel: back.id,
        key: 'port',
        path: circlePath([across, up], port.diameter / 2),
        face: 'A',
        depth: 'through',
        purpose: 'dust port',
        at: port.at,
      },
    ],
    troubles: portTroubles({ spec, port, panels, back, floor, centre: [x, z] }),
  })
}

/** Centre of the port in the plane of the back, module frame, mm. */
function centreOf(port: PortSpec, panels: readonly PlacedPanel[], floor: PlacedPanel): readonly [number, number] {
  const { min, max } = boardBox(floor)
  // The chamber ends under the carcase's top, rail or strip ends; without them at the upper ends of the sides.
  const roof = panels.find((panel) => panel.role === 'top')
  const strip = panels.find((panel) => panel.key === 'chamber-front')
  const z1 = roof !== undefined ? boardBox(roof).min[2] : strip === undefined ? max[2] : boardBox(strip).max[2]
  return [middle(port.fromLeft, min[0], max[0]), middle(port.fromBottom, max[2], z1)]
}

const middle = (from: PortSpec['fromLeft'], low: number, high: number): number => low + startOf(from, 0, high - low)
