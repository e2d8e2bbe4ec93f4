import { backTakes } from '../back-takes.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { layersOf, said } from '../layers.ts'
import type { RawPlinth } from '../schema/definition.ts'
import type { PlinthSpec } from '../types.ts'
import type { AroundBase } from './base.ts'
import { resolveJoint, USUAL_JOINT } from './joints.ts'
import { stockNamed } from './stock.ts'

/** A lower plinth takes no two fasteners at its corners, mm; common practice. */
const LOWEST_MM = 30

/** A plinth; `undefined` when its height or its stock cannot be told. */
export function resolvePlinth(
  context: Context,
  plinth: Said<unknown> | undefined,
  around: AroundBase,
): PlinthSpec | undefined {
  const layers = layersOf<RawPlinth>([plinth])
  const name = said(layers, 'stock')
  const stock = name === undefined ? around.stock : stockNamed(context, name)
  const heightSaid = said(layers, 'height')
  const height = context.length(heightSaid, { aboveZero: true })
  if (heightSaid !== undefined && height !== undefined && height < LOWEST_MM) {
    const what = `${context.show(height)} is too low for two fasteners`
    context.report(heightSaid.path, what, { expected: `at least ${context.show(LOWEST_MM)}` })
  }
  const taken = around.back === undefined ? 0 : backTakes(around.back)
  const spec = {
    frontRecess: context.lengthOr(said(layers, 'front recess'), DEFAULTS.plinthFront),
    sideRecess: context.lengthOr(said(layers, 'side recess'), 0),
    backRecess: context.lengthOr(said(layers, 'back recess'), taken + context.default(DEFAULTS.plinthBehind)),
    joint: resolveJoint(context, said(layers, 'joint') ?? around.joint, stock?.thickness),
    fix: resolveJoint(context, said(layers, 'fix'), stock?.thickness, { ...USUAL_JOINT, fasten: 'through screw' }),
  }
  if (plinth === undefined || height === undefined || stock === undefined) return undefined
  return { kind: 'plinth', height, stock, ...spec, at: plinth.path }
}
