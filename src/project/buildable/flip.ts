import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import { flipSizes, sidesDepth } from '../flip-sizes.ts'
import type { DefinitionPath, FlipSpec, ModuleSpec } from '../types.ts'

/** A flip-over top must have sides to turn between, wood on both sides of its axle, and its axle between the ends of the sides. */
export function checkFlip(context: Context, spec: ModuleSpec, flip: FlipSpec): void {
  checkTop(context, spec)
  const width = spec.width - 2 * spec.stock.thickness
  if (width > NOISE_MM && 2 * flip.gap >= width - NOISE_MM) {
    const what = `${context.show(flip.gap)} at each side leaves no platform between sides ${context.show(width)} apart`
    context.report([...flip.at, 'gap'], what, { expected: `less than ${context.show(width / 2)}` })
  }
  const sides = sidesDepth(spec)
  if (sides.rear - sides.front <= NOISE_MM) return
  const sizes = flipSizes(flip, sides)
  checkDepth(context, flip, sides.rear - sides.front, sizes.rear - sizes.front)
  checkAxle(context, flip, sizes)
}

function checkTop(context: Context, spec: ModuleSpec): void {
  const { top } = spec.carcase
  if (top === 'between' || top === 'none') return
  const own: DefinitionPath = [...spec.at, 'carcase', 'top']
  const path = context.source.place(own) === undefined ? ['common', 'carcase', 'top'] : own
  const what = `a flip-over top turns between the sides, so the carcase's top cannot be: ${top}`
  context.report(path, what, { expected: 'between or none' })
}

/** The clearances must leave two core boards with the channel between them. */
function checkDepth(context: Context, flip: FlipSpec, room: number, depth: number): void {
  const least = flip.axle.channel
  if (depth > least + NOISE_MM) return
  const key = flip.rearClearance > flip.frontClearance ? 'rear clearance' : 'front clearance'
  const said = flip.frontClearance + flip.rearClearance > 0
  const what = said
    ? `the clearances ${context.show(flip.frontClearance)} and ${context.show(flip.rearClearance)} leave no wood beside the axle of a platform between sides ${context.show(room)} deep`
    : `sides ${context.show(room)} deep leave no wood beside the axle`
  context.report(said ? [...flip.at, key] : flip.at, what, {
    expected: said ? `less than ${context.show(Math.max(0, room - least))} together` : 'a deeper module',
    on: said ? 'value' : 'key',
  })
}

function checkAxle(
  context: Context,
  flip: FlipSpec,
  { axle, thickness, well, surface }: ReturnType<typeof flipSizes>,
): void {
  const radius = flip.axle.diameter / 2
  if (axle.aboveTop < radius + NOISE_MM) {
    const key = flip.surface === 'level' ? 'well' : 'surface'
    const what = `${context.show(surface)} sets the axle of a platform ${context.show(thickness)} thick on the carcase's top`
    context.report([...flip.at, key], what, { expected: `more than ${context.show(thickness / 2 + radius)}` })
  } else if (axle.aboveTop > well - radius - NOISE_MM) {
    const what = `${context.show(surface)} sets the axle above the ends of sides that stand ${context.show(well)} above the carcase's top`
    const most = well + thickness / 2 - radius
    context.report([...flip.at, 'surface'], what, { expected: `less than ${context.show(most)}, or a deeper well` })
  }
}
