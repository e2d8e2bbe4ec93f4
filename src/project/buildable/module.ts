import { NOISE_MM } from '../../geometry/index.ts'
import { backTakes } from '../back-takes.ts'
import { baseHeight } from '../base-height.ts'
import type { Context } from '../context.ts'
import { wellOf } from '../flip-sizes.ts'
import { frontsTake } from '../fronts.ts'
import type { ModuleSpec } from '../types.ts'
import { checkBays, type Room } from './bays.ts'
import { checkFlip } from './flip.ts'
import { checkPlinth } from './plinth.ts'
import { saidAt } from './said-at.ts'
import { checkStrips, topThickness } from './strips.ts'
import { checkMachineTop } from './tops.ts'

/** Reports what cannot be built at all; what a workshop can judge for itself is left to the findings. */
export function checkBuildable(context: Context, spec: ModuleSpec): void {
  checkBase(context, spec)
  checkLaps(context, spec)
  checkBack(context, spec)
  if (spec.flipOver !== undefined) checkFlip(context, spec, spec.flipOver)
  checkMachineTop(context, spec)
  checkTops(context, spec)
  const room = clearRoom(context, spec)
  if (room === undefined) return
  checkStrips(context, spec, room)
  checkBays(context, spec, room)
}

const NEED_BOTTOM = {
  casters: 'casters need a bottom to be bolted to',
  plinth: 'a plinth needs a bottom to be fixed to',
  feet: 'levelling feet need a bottom to be set into',
} as const

function checkBase(context: Context, spec: ModuleSpec): void {
  const { base, carcase } = spec
  if (base.kind === 'plinth') checkPlinth(context, spec, base)
  if (base.kind === 'none' || carcase.bottom !== 'none') return
  context.report(saidAt(context, spec, 'carcase', 'bottom'), NEED_BOTTOM[base.kind], {
    expected: 'bottom: between or over, or base: none',
  })
}

/** A back between the sides is screwed to a top or bottom that stands there; else it is an inset one. */
function checkBack(context: Context, spec: ModuleSpec): void {
  const { back, top, bottom } = spec.carcase
  if (back.sits !== 'between sides' || top === 'between' || bottom === 'between') return
  context.report(saidAt(context, spec, 'carcase', 'back'), 'neither top nor bottom stands between the sides', {
    expected: 'sits: inset, or top or bottom: between',
    on: 'key',
  })
}

/** Nothing can lie on sides between which a platform turns. */
function checkTops(context: Context, spec: ModuleSpec): void {
  const { flipOver, worktop, machineTop } = spec
  const second = machineTop ?? worktop
  if (flipOver === undefined || (second === undefined && spec.worktopThickness === 0)) return
  context.report(flipOver.at, 'a module with a flip-over top takes no other top', {
    expected: 'one top on each module; worktop: none in the module where common says one',
    on: 'key',
  })
}

/** Something must hold the sides together: a top, a bottom, a back or a fixed shelf. */
function checkLaps(context: Context, spec: ModuleSpec): void {
  const { top, bottom, back, stretchers } = spec.carcase
  if (top !== 'none' || bottom !== 'none') return
  const split = spec.inside.split?.direction
  if (split === 'side by side') {
    context.report([...spec.inside.at, split], 'partitions need a top or a bottom to stand on', {
      expected: 'top or bottom: between or over',
      on: 'key',
    })
  } else if (back.sits === 'none' && split === undefined && stretchers.length === 0) {
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

/** What of the carcase lies above its clear opening: a top, or a chamber, which is counted from the carcase's upper side. */
function overTheInside({ carcase, stock, machineTop }: ModuleSpec): Taking[] {
  const chamber = machineTop?.chamber
  if (chamber === undefined) return [['the top', topThickness(carcase, stock.thickness)]]
  return [
    ['the chamber', chamber.height],
    ['its floor', stock.thickness],
  ]
}

function clearHeight(context: Context, spec: ModuleSpec): number | undefined {
  const t = spec.stock.thickness
  const { base, carcase, height } = spec
  const takings: Taking[] = [
    [`the ${base.kind}`, height.of === 'working' ? baseHeight(base) : 0],
    ['the worktop', height.of === 'working' ? spec.worktopThickness : 0],
    ['the well of the flip-over top', wellOf(spec)],
    ...overTheInside(spec),
    ['the bottom', carcase.bottom === 'none' ? 0 : t],
  ]
  return leaves(context, spec, `${height.of} height`, height.mm, takings, 'height')
}
