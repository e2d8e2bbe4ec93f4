import { flipSizes, type ModuleSpec, sidesDepth } from '../../project/index.ts'
import type { Body } from './mass.ts'

/** The machines of a flip-over top as drawn, those whose mass is said; the middle of each box, module frame. */
export function machineBodies(spec: ModuleSpec, height: number): Body[] {
  const { flipOver } = spec
  if (flipOver === undefined) return []
  const sizes = flipSizes(flipOver, sidesDepth(spec))
  const z = height - sizes.well + sizes.axle.aboveTop
  const { upper, lower } = flipOver.machines
  // What stands to the rear while it is on top hangs to the front below.
  return [
    { machine: upper, way: 1 },
    { machine: lower, way: -1 },
  ].flatMap(({ machine, way }): Body[] => {
    if (machine?.mass === undefined) return []
    const lever = sizes.thickness / 2 + machine.height / 2
    const x = spec.width / 2 + machine.offCentre.right
    return [{ mass: machine.mass, at: [x, sizes.axle.y + way * machine.offCentre.rear, z + way * lever] }]
  })
}

/** How a platform turns with its machines; kg and mm. */
export interface Balance {
  /** Masses times their heights above the axle, as drawn; above 0: what is above is heavier and comes down by itself. */
  readonly upward: number
  /** The most that pulls at the platform's front or rear edge on the way round, as a mass. */
  readonly atEdge: number
}

/** Moments about an axle at y and z of bodies on a platform that reaches so far from it; the platform balances itself. */
export function balance(bodies: readonly Body[], axle: { y: number; z: number }, reach: number): Balance {
  const upward = bodies.reduce((sum, { mass, at }) => sum + mass * (at[2] - axle.z), 0)
  const across = bodies.reduce((sum, { mass, at }) => sum + mass * (at[1] - axle.y), 0)
  return { upward, atEdge: Math.hypot(upward, across) / reach }
}
