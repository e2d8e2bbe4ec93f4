import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, type Layers, said } from '../layers.ts'
import type { RawBack, RawCarcase } from '../schema/definition.ts'
import { orList } from '../schema/kinds.ts'
import type { BackSpec, CarcaseSpec, JointSpec, Stock } from '../types.ts'
import { backJoint, resolveJoint, resolvePanelJoint } from './joints.ts'
import { stockNamed } from './stock.ts'
import { resolveRails, resolveStretchers } from './strips.ts'

export interface ResolvedCarcase {
  readonly carcase: CarcaseSpec
  readonly frontGap: number
}

/**
 * The carcase of a module in that stock; the layers are the module's own carcase and the common one. `undefined` when
 * the stock of the back cannot be told; all problems are reported.
 */
export function resolveCarcase(
  context: Context,
  layers: Layers<RawCarcase>,
  stock: Stock | undefined,
): ResolvedCarcase | undefined {
  const joint = said(layers, 'joint')
  const jointSpec = resolvePanelJoint(context, joint, stock?.thickness, stock?.thickness)
  const backs = layers.map((layer) => said([layer], 'back'))
  const back = resolveBack(context, asLayers<RawBack>(backs, 'sits'), { stock, carcaseJoint: joint })
  const frontGap = context.lengthOr(said(layers, 'front gap'), DEFAULTS.frontGap)
  if (back === undefined) return undefined
  const around = { stock, joint }
  const rails = resolveRails(context, layers, around)
  const carcase: CarcaseSpec = {
    top: said(layers, 'top')?.value ?? 'between',
    bottom: said(layers, 'bottom')?.value ?? 'between',
    back,
    joint: jointSpec,
    fastening: resolveJoint(context, joint, stock?.thickness),
    ...(rails && { rails }),
    stretchers: resolveStretchers(context, layers, around),
  }
  return { carcase, frontGap }
}

type Sits = BackSpec['sits']

interface Surroundings {
  readonly stock: Stock | undefined
  readonly carcaseJoint: Said<unknown> | undefined
}

function resolveBack(context: Context, layers: Layers<RawBack>, around: Surroundings): BackSpec | undefined {
  const sits = said(layers, 'sits')?.value ?? 'applied'
  refuseIdleKeys(context, layers, sits)
  if (sits === 'none') return { sits }
  const name = said(layers, 'stock')
  const stock = name === undefined ? around.stock : stockNamed(context, name)
  const side = around.stock?.thickness
  const joint = resolveBackJoint(context, layers, sits, stock, around)
  const spec = {
    margin: context.lengthOr(said(layers, 'margin'), 0),
    recess: context.lengthOr(said(layers, 'recess'), 0),
    grooveDepth: context.lengthOr(said(layers, 'groove depth'), Math.min(DEFAULTS.grooveDepth, (side ?? 18) / 2), {
      aboveZero: true,
    }),
    grooveSetback: context.lengthOr(said(layers, 'groove setback'), DEFAULTS.grooveSetback, { aboveZero: true }),
    groovePlay: context.lengthOr(said(layers, 'groove play'), DEFAULTS.groovePlay),
    rebateWidth: context.lengthOr(said(layers, 'rebate width'), usualRebate(side ?? 18), { aboveZero: true }),
    edgePlay: context.lengthOr(said(layers, 'edge play'), DEFAULTS.edgePlay),
  }
  if (stock === undefined) return undefined
  if (side !== undefined) checkCuts(context, layers, spec, side)
  if (side !== undefined) checkMargin(context, layers, spec.margin, side)
  return { sits, stock, ...spec, joint }
}

/** Half the side, and enough for a screw through the back's edge, where that leaves wood outside; common practice, mm. */
function usualRebate(side: number): number {
  return Math.min(Math.max(side / 2, DEFAULTS.rebateWidth), Math.max(side - DEFAULTS.rebateLeaves, side / 2))
}

/** No fastener holds in the edge of a thinner board, mm; common practice. */
const LEAST_EDGE = 12

function resolveBackJoint(
  context: Context,
  layers: Layers<RawBack>,
  sits: Sits,
  stock: Stock | undefined,
  around: Surroundings,
): JointSpec | undefined {
  const joint = said(layers, 'joint')
  if (joint?.value === 'none') return undefined
  if (sits === 'grooved') return undefined
  // The board whose edge is joined: the back itself where it stands between the others, else theirs.
  const edge = sits === 'inset' ? stock?.thickness : around.stock?.thickness
  const inset = sits === 'inset' ? said(layers, 'sits') : undefined
  if (inset !== undefined && stock !== undefined && stock.thickness < LEAST_EDGE) {
    const what = `a back ${context.show(stock.thickness)} thick takes no fastener in its edge, which is all that holds an inset one`
    context.report(inset.path, what, {
      expected: `a back of ${context.show(LEAST_EDGE)} or more, joint: none, or another way to sit`,
    })
    return undefined
  }
  if (joint !== undefined) return resolveJoint(context, joint, edge)
  if (sits === 'inset') return resolveJoint(context, around.carcaseJoint, edge)
  const lies = sits === 'rebated' ? 'in rebates' : 'over edges'
  return resolveJoint(context, undefined, edge, backJoint(context, stock?.thickness, lies))
}

/** For each kind of back, the keys that have a meaning for it alone. */
const OWN_KEYS: readonly (readonly [keyof RawBack & string, readonly Sits[]])[] = [
  ['stock', ['applied', 'between sides', 'inset', 'grooved', 'rebated']],
  ['margin', ['applied']],
  ['recess', ['inset']],
  ['groove depth', ['grooved']],
  ['groove setback', ['grooved']],
  ['groove play', ['grooved']],
  ['rebate width', ['rebated']],
  ['edge play', ['grooved', 'rebated']],
  ['joint', ['applied', 'between sides', 'inset', 'rebated']],
]

/** A key without a meaning is a mistake where its own group says how the back sits; from common it may just not apply. */
function refuseIdleKeys(context: Context, layers: Layers<RawBack>, sits: Sits): void {
  layers.forEach((layer, i) => {
    if (i > 0 && said([layer], 'sits')?.value !== sits) return
    for (const [key, kinds] of OWN_KEYS) {
      const found = said([layer], key)
      if (found === undefined || kinds.includes(sits)) continue
      const what = sits === 'none' ? 'there is no back' : `the back is ${sits}`
      context.report(found.path, `has no meaning, since ${what}`, {
        expected: `sits: ${orList(kinds)}, or this key taken out`,
        on: 'key',
      })
    }
  })
}

/** From a screw's middle to the edge of the back, and to the face of the side under it, mm; common practice. */
const LEAST_COVER_MM = 4

/** An applied back must reach far enough over the edges for its screws, which stand in the middle of what both share. */
function checkMargin(context: Context, layers: Layers<RawBack>, margin: number, side: number): void {
  const found = said(layers, 'margin')
  const most = Math.max(0, side - 2 * LEAST_COVER_MM)
  if (found === undefined || margin <= most || context.troubled(found.path)) return
  const what = `${context.show(margin)} leaves too little of the back over a side ${context.show(side)} thick to screw it on`
  context.report(found.path, what, { expected: `at most ${context.show(most)}` })
}

/** A groove or rebate must leave wood on the other side. */
function checkCuts(
  context: Context,
  layers: Layers<RawBack>,
  spec: { grooveDepth: number; rebateWidth: number; edgePlay: number },
  side: number,
): void {
  const sits = said(layers, 'sits')?.value
  const play = said(layers, 'edge play')
  const cutDepth = sits === 'grooved' ? spec.grooveDepth : sits === 'rebated' ? spec.rebateWidth : undefined
  if (play !== undefined && cutDepth !== undefined && spec.edgePlay >= cutDepth && !context.troubled(play.path)) {
    const cut = sits === 'grooved' ? 'groove' : 'rebate'
    const what = `${context.show(spec.edgePlay)} keeps the back out of a ${cut} ${context.show(cutDepth)} deep`
    context.report(play.path, what, { expected: `less than ${context.show(cutDepth)}` })
  }
  const cuts = [
    ['groove depth', spec.grooveDepth],
    ['rebate width', spec.rebateWidth],
  ] as const
  for (const [key, mm] of cuts) {
    const found = said(layers, key)
    if (found === undefined || mm < side || context.troubled(found.path)) continue
    const what = `${context.show(mm)} cuts right through a side that is ${context.show(side)} thick`
    context.report(found.path, what, { expected: `less than ${context.show(side)}` })
  }
}
