import { NOISE_MM } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import type { ModuleSpec, PlinthSpec } from '../types.ts'

/** The recesses of a plinth must leave a frame: four boards and room between them. */
export function checkPlinth(context: Context, spec: ModuleSpec, plinth: PlinthSpec): void {
  const { frontRecess, sideRecess, backRecess, stock, at } = plinth
  const boards = 2 * stock.thickness
  const checks = [
    ['front recess', 'depth', spec.depth, frontRecess + backRecess],
    ['side recess', 'width', spec.width, 2 * sideRecess],
  ] as const
  for (const [key, dimension, outside, recesses] of checks) {
    if (outside - recesses - boards > NOISE_MM) continue
    const what = `the recesses take ${context.show(recesses)} and two boards ${context.show(boards)} of a ${dimension} of ${context.show(outside)}`
    const path = [...at, key]
    const place = context.source.place(path) === undefined ? at : path
    context.report(place, what, { expected: 'smaller recesses', on: 'key' })
  }
}
