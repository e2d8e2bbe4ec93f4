import { NOISE_MM } from '../geometry/index.ts'
import { backTakes } from './back-takes.ts'
import { overlayThickness } from './fronts.ts'
import type { FlipSpec, MachineSpec, ModuleSpec } from './types.ts'

/** Sizes of a flip-over top that follow from its definition, mm; y from the module's front. */
export interface FlipSizes {
  /** Skin, core and skin. */
  readonly thickness: number
  /** Front and rear edge of the platform as it rests. */
  readonly front: number
  readonly rear: number
  /** The axle lies in the middle of the platform's depth and thickness, so that both rest positions are one place. */
  readonly axle: { readonly y: number; readonly aboveTop: number }
  /** How far from the axle the platform and each machine reach as they turn. */
  readonly radius: { readonly platform: number; readonly upper: number; readonly lower: number }
  /** Height of the sides above the upper face of the carcase's top. */
  readonly well: number
  /** Upper face of the platform above the upper face of the carcase's top. */
  readonly surface: number
}

/** Where the sides begin and end, mm from the module's front: behind the fronts, and before an applied back. */
export function sidesDepth(spec: ModuleSpec): { front: number; rear: number } {
  const front = overlayThickness(spec.inside)
  const { back } = spec.carcase
  return {
    front: front === 0 ? 0 : front + spec.frontGap,
    rear: back.sits === 'applied' ? spec.depth - backTakes(back) : spec.depth,
  }
}

/**
 * How far from the axle the corners of a machine's box reach, mm: hypot of the far corner's depth from the axle and its
 * height, with half the platform below it. A box that stands across the axle has a corner that passes right under it
 * whichever way it turns. 0 without a machine. Own arithmetic.
 */
function machineRadius(machine: MachineSpec | undefined, thickness: number): number {
  if (machine === undefined) return 0
  return Math.hypot(Math.abs(machine.offCentre.rear) + machine.depth / 2, thickness / 2 + machine.height)
}

/**
 * What a flip-over top comes to. The least well is the largest circle below the axle, the clearance, and half the
 * platform above it: swing radius = hypot(depth / 2, thickness / 2), the machines' boxes likewise.
 */
export function flipSizes(flip: FlipSpec, sides: { front: number; rear: number }): FlipSizes {
  const thickness = 2 * flip.skin.thickness + flip.core.thickness
  const front = sides.front + flip.frontClearance
  const rear = sides.rear - flip.rearClearance
  const radius = {
    platform: Math.hypot((rear - front) / 2, thickness / 2),
    upper: machineRadius(flip.machines.upper, thickness),
    lower: machineRadius(flip.machines.lower, thickness),
  }
  const least = Math.max(radius.platform, radius.upper, radius.lower) + flip.turningClearance + thickness / 2
  const given = flip.well === 'auto' && flip.surface !== 'level' ? flip.surface : flip.well
  const well = given === 'auto' ? roundUp(least, flip.step) : given
  const surface = flip.surface === 'level' ? well : flip.surface
  return {
    thickness,
    front,
    rear,
    axle: { y: (front + rear) / 2, aboveTop: surface - thickness / 2 },
    radius,
    well,
    surface,
  }
}

/** The next whole step, so that a well can be read off a rule. */
export function roundUp(value: number, step: number): number {
  return Math.ceil((value - NOISE_MM) / step) * step
}

/** How far the carcase's top lies below the upper ends of the sides, mm; 0 without a flip-over top. */
export function wellOf(spec: ModuleSpec): number {
  return spec.flipOver === undefined ? 0 : flipSizes(spec.flipOver, sidesDepth(spec)).well
}
