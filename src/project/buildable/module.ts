import { NOISE_MM } from '../../geometry/index.ts'
import { backTakes } from '../back-takes.ts'
import type { Context } from '../context.ts'
import { frontsTake } from '../fronts.ts'
import type { DefinitionPath, ModuleSpec } from '../types.ts'
import { checkBays, type Room } from './bays.ts'

/** Reports what cannot be built at all; what a workshop can judge for itself is left to the findings. */
export function checkBuildable(context: Context, spec: ModuleSpec): void {
  checkBase(context, spec)
  checkLaps(context, spec)
  const room = clearRoom(context, spec)
  if (room !== undefined) checkBays(context, spec, room)
}

/** The path below the module, or below common where the module does not say it itself. */
function saidAt(context: Context, spec: ModuleSpec, ...keys: string[]): DefinitionPath {
  const own = [...spec.at, ...keys]
  const common = ['common', ...keys]
  return context.source.place(own) === undefined && context.source.place(common) !== undefined ? common : own
}

function checkBase(context: Context, spec: ModuleSpec): void {
  if (spec.base.kind !== 'casters' || spec.carcase.bottom !== 'none') return
  context.report(saidAt(context, spec, 'carcase', 'bottom'), 'casters need a bottom to be bolted to', {
    expected: 'bottom: between or over, or base: none',
  })
}

/** Something must hold the sides together: a top, a bottom, a back or a fixed shelf. */
function checkLaps(context: Context, spec: ModuleSpec): void {
  const { top, bottom, back } = spec.carcase
  if (top !== 'none' || bottom !== 'none') return
  const split = spec.inside.split?.direction
  if (split === 'side by side') {
    context.report([...spec.inside.at, split], 'partitions need a top or a bottom to stand on', {
      expected: 'top or bottom: between or over',
      on: 'key',
    })
  } else if (back.sits === 'none' && split === undefined) {
    context.report(saidAt(context, spec, 'carcase'), 'nothing holds the sides together', {
      expected: 'a top, a bottom, a back or a fixed shelf',
      on: 'key',
    })
  }
}

/** The clear opening of the carcase; `undefined`, with a report, when nothing remains of it. */
function clearRoom(context: Context, spec: ModuleSpec): Room | undefined {
  const t = spec.stock.thickness
  const width = leaves(context, spec, 'width', spec.width, [['the two sides', 2 * t]], 'width')
  const depth = clearDepth(context, spec)
  const height = clearHeight(context, spec)
  return width === undefined || depth === undefined || height === undefined ? undefined : { width, depth, height }
}

type Taking = readonly [what: string, mm: number]

/** What is left of an outside size; `undefined`, with a report, when it is nothing. */
function leaves(
  context: Context,
  spec: ModuleSpec,
  key: string,
  outside: number,
  takings: readonly Taking[],
  dimension: string,
): number | undefined {
  const taken = takings.filter(([, mm]) => mm > 0)
  const sum = taken.reduce((total, [, mm]) => total + mm, 0)
  if (outside - sum > NOISE_MM) return outside - sum
  const words = taken.map(([what, mm]) => `${what} ${context.show(mm)}`).join(', ')
  const what = `${context.show(outside)} leaves no ${dimension} inside; this takes up: ${words}`
  context.report(saidAt(context, spec, key), what, { expected: `more than ${context.show(sum)}` })
  return undefined
}

function clearDepth(context: Context, spec: ModuleSpec): number | undefined {
  const takings: Taking[] = [
    ['the front', frontsTake(spec.inside, spec.frontGap)],
    ['the back', backTakes(spec.carcase.back)],
  ]
  return leaves(context, spec, 'depth', spec.depth, takings, 'depth')
}

function clearHeight(context: Context, spec: ModuleSpec): number | undefined {
  const t = spec.stock.thickness
  const { base, carcase, height } = spec
  const casters = height.of === 'working' && base.kind === 'casters' ? base.item.overallHeight : 0
  const takings: Taking[] = [
    ['the casters', casters],
    ['the top', carcase.top === 'none' ? 0 : t],
    ['the bottom', carcase.bottom === 'none' ? 0 : t],
  ]
  return leaves(context, spec, `${height.of} height`, height.mm, takings, 'height')
}
