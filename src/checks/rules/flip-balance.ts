import { NOISE_MM } from '../../geometry/index.ts'
import { type FlipSizes, flipSizes, limitOf, type ModuleSpec, type Project, sidesDepth } from '../../project/index.ts'
import { type Balance, balance, type LoadedModule, machineBodies } from '../loads/index.ts'
import type { Finding, Rule } from '../types.ts'
import { GUIDE, kg, mm } from '../words.ts'

/** Flip-over platforms whose machines do not balance, as far as their masses are said. */
export const flipBalance: Rule = {
  ids: ['flip-balance'],
  check: ({ project, loaded }) => loaded.flatMap((module) => checkModule(project, module)),
}

function checkModule(project: Project, { module, spec }: LoadedModule): Finding[] {
  const { flipOver } = spec
  if (flipOver === undefined) return []
  const bodies = machineBodies(spec, module.size.height)
  if (bodies.length === 0) return []
  const sizes = flipSizes(flipOver, sidesDepth(spec))
  const axle = { y: sizes.axle.y, z: module.size.height - sizes.well + sizes.axle.aboveTop }
  const reach = (sizes.rear - sizes.front) / 2
  const found = balance(bodies, axle, reach)
  const [warn, note] = [limitOf(project, 'flip-balance', 'warn'), limitOf(project, 'flip-balance', 'note')]
  if (found.atEdge <= Math.min(warn, note) + NOISE_MM) return []
  const heavier = found.upward > 0 ? 'upper' : 'lower'
  return [
    {
      rule: 'flip-balance',
      severity: found.atEdge > warn + NOISE_MM ? 'warn' : 'note',
      panels: [],
      places: [],
      message: `${module.name}: as the platform turns with ${machineWords(spec, sizes)}, ${kg(found.atEdge)} pull at its edge, ${mm(reach)} mm from the axle; ${swingWords(spec, found)} ${GUIDE}`,
      fix: `${found.atEdge > warn + NOISE_MM ? 'turn it with two people' : 'hold it with both hands'}${counterWords(spec, sizes, found, heavier)}`,
      at: flipOver.at,
    },
  ]
}

/** `the saw (24 kg, its middle 127 mm above the axle) and the sander (…)`. */
function machineWords({ flipOver }: ModuleSpec, { thickness }: FlipSizes): string {
  const words = (['upper', 'lower'] as const).flatMap((side) => {
    const machine = flipOver?.machines[side]
    if (machine?.mass === undefined) return []
    const lever = thickness / 2 + machine.height / 2
    const way = side === 'upper' ? 'above' : 'below'
    return [`the ${machine.name} (${kg(machine.mass)}, its middle ${mm(lever)} mm ${way} the axle)`]
  })
  return words.join(' and ')
}

function swingWords({ flipOver }: ModuleSpec, { upward }: Balance): string {
  const name = (side: 'upper' | 'lower'): string => flipOver?.machines[side]?.name ?? `${side} face`
  return upward > 0
    ? `the ${name('upper')} comes down by itself as soon as the locking bolts are drawn`
    : `the ${name('lower')} must be lifted over the axle`
}

/** A mass beside the machine on the lighter face, as far from the axle as its middle; a bare face is too near the axle. */
function counterWords(
  { flipOver }: ModuleSpec,
  sizes: FlipSizes,
  { upward }: Balance,
  heavier: 'upper' | 'lower',
): string {
  const lighter = heavier === 'upper' ? 'lower' : 'upper'
  const machine = flipOver?.machines[lighter]
  if (machine === undefined) return ''
  const lever = sizes.thickness / 2 + machine.height / 2
  return `, or balance it with ${kg(Math.abs(upward) / lever)} beside the ${machine.name}, ${mm(lever)} mm from the axle`
}
