import type { DrawerSlide, JointScrew } from '../../hardware/index.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, isGroup, type Layers, layersOf, said } from '../layers.ts'
import type { RawDrawerBox, RawDrawerFronts, RawDrawerPull, RawDrawers } from '../schema/definition.ts'
import type {
  Cover,
  DrawerBoxSpec,
  DrawerFrontsSpec,
  DrawerPlace,
  DrawerPullSpec,
  DrawersSpec,
  Stock,
} from '../types.ts'
import { fourEdges } from './front.ts'
import { itemNamed, usualItem } from './hardware.ts'
import { backJoint, resolveJoint, USUAL_JOINT } from './joints.ts'
import { readLoad } from './loads.ts'
import { stockNamed, writtenName } from './stock.ts'

/** Screws through one board into the face of the next, the longest first. */
const FACE_SCREWS = {
  mm: ['screw 4x40', 'screw 4x35', 'screw 4x30', 'screw 3.5x25', 'screw 3.5x20'],
  in: ['screw #8x1-3/4', 'screw #8x1-1/2', 'screw #8x1-1/4', 'screw #6x1'],
} as const

/** The drawers of a bay, which may lie behind a front; `undefined` when none are said or a stock cannot be told. */
export function resolveDrawers(
  context: Context,
  drawers: Said<unknown> | undefined,
  moduleStock: Stock | undefined,
  behindFront: boolean,
): DrawersSpec | undefined {
  if (drawers === undefined) return undefined
  const layers = asLayers<RawDrawers>([drawers], 'stack')
  const frontsSaid = said(layers, 'fronts')
  const inner = frontsSaid?.value === 'none'
  if (behindFront && !inner) {
    context.report(frontsSaid?.path ?? drawers.path, 'these drawers lie behind a front already', {
      expected: 'fronts: none, for drawers behind a door, or no front before them',
      on: 'key',
    })
  }
  const stack = resolveStack(context, said(layers, 'stack'), inner)
  const box = resolveBox(context, said(layers, 'box'), moduleStock)
  const fronts = inner ? undefined : resolveFronts(context, frontsSaid, moduleStock, drawers)
  const packing = resolvePacking(context, said(layers, 'packing'), moduleStock, behindFront)
  const load = readLoad(context, said(layers, 'load'), 'load')
  const slides = resolveSlides(context, said(layers, 'slide'))
  if (box === undefined || packing === undefined || (fronts === undefined && !inner)) return undefined
  return { stack, slides, box, fronts, packing, faceScrews: faceScrews(context), load, at: drawers.path }
}

const faceScrews = (context: Context): JointScrew[] =>
  FACE_SCREWS[context.usual].map((id) => usualItem(context, 'through screw', id))

const equal = (count: number): DrawerPlace[] => Array.from({ length: count }, () => ({ height: undefined, share: 1 }))

function resolveStack(context: Context, stack: Said<unknown> | undefined, inner: boolean): DrawerPlace[] {
  const value = stack?.value
  if (typeof value === 'number') return equal(value)
  if (stack === undefined || !Array.isArray(value)) return equal(1)
  const places = value.map((raw: unknown, i): DrawerPlace => {
    const layers = layersOf<{ height?: number | string; share?: number }>([
      { value: isGroup(raw) ? raw : {}, path: [...stack.path, i] },
    ])
    const height = said(layers, 'height')
    const share = said(layers, 'share')
    if (height !== undefined && share !== undefined) {
      context.report(share.path, 'a drawer has a height or a share, not both', {
        expected: 'one of the two',
        on: 'key',
      })
    }
    return { height: context.length(height, { aboveZero: true }), share: share?.value ?? 1 }
  })
  if (!inner && places.every((place) => place.height !== undefined)) {
    context.report(stack.path, 'every drawer has a height, so that none takes what remains', {
      expected: 'one drawer without a height',
      on: 'key',
    })
  }
  return places
}

function resolveSlides(context: Context, slide: Said<string> | undefined): DrawerSlide[] {
  const all = context.hardware.usual('drawer slide').filter((item) => item.measure === context.usual)
  if (slide === undefined || slide.value === 'auto') return all
  const item = itemNamed(context, slide, ['drawer slide'], ['auto'])
  return item === undefined ? all : [item]
}

function resolveBox(
  context: Context,
  box: Said<unknown> | undefined,
  moduleStock: Stock | undefined,
): DrawerBoxSpec | undefined {
  const layers = layersOf<RawDrawerBox>([box])
  const name = said(layers, 'stock')
  const stock = name === undefined ? moduleStock : stockNamed(context, name)
  const bottomName = said(layers, 'bottom stock')
  const bottomStock = bottomName === undefined ? stock : stockNamed(context, bottomName)
  const bottom = said(layers, 'bottom')?.value ?? 'grooved'
  const usualDepth = Math.min(context.default(DEFAULTS.drawerGrooveDepth), (stock?.thickness ?? 18) / 2)
  const spec = {
    bottom,
    grooveDepth: context.lengthOr(said(layers, 'groove depth'), usualDepth, { aboveZero: true }),
    grooveHeight: context.lengthOr(said(layers, 'groove height'), DEFAULTS.drawerGrooveHeight, { aboveZero: true }),
    groovePlay: DEFAULTS.groovePlay,
    edgePlay: DEFAULTS.edgePlay,
    joint: resolveJoint(context, said(layers, 'joint'), stock?.thickness, { ...USUAL_JOINT, fasten: 'through screw' }),
    bottomJoint: resolveJoint(context, undefined, stock?.thickness, backJoint(context, bottomStock?.thickness)),
    clearanceAbove: context.lengthOr(said(layers, 'clearance above'), DEFAULTS.drawerAbove),
    clearanceBelow: context.lengthOr(said(layers, 'clearance below'), DEFAULTS.drawerBelow),
    behind: context.lengthOr(said(layers, 'behind'), DEFAULTS.behindSlide),
  }
  if (bottom === 'applied') {
    for (const key of ['groove depth', 'groove height'] as const)
      refuse(context, layers, key, 'the bottom is applied', 'bottom: grooved')
  }
  return stock === undefined || bottomStock === undefined ? undefined : { ...spec, stock, bottomStock }
}

/** Reports a key that cannot have an effect. */
function refuse<T extends object>(
  context: Context,
  layers: Layers<T>,
  key: keyof T & string,
  reason: string,
  instead: string,
): void {
  const found = said(layers, key)
  if (found === undefined) return
  context.report(found.path, `has no meaning, since ${reason}`, {
    expected: `${instead}, or this key taken out`,
    on: 'key',
  })
}

function resolveFronts(
  context: Context,
  fronts: Said<unknown> | undefined,
  moduleStock: Stock | undefined,
  drawers: Said<unknown>,
): DrawerFrontsSpec | undefined {
  const layers = layersOf<RawDrawerFronts>([fronts])
  const lay = said(layers, 'lay')?.value ?? 'overlay'
  if (lay === 'inset') {
    refuse(context, layers, 'cover', 'an inset front covers no panel', 'lay: overlay')
    refuse(context, layers, 'reveal', 'an inset front has an inset gap', 'inset gap')
  } else refuse(context, layers, 'inset gap', 'the fronts are overlays', 'lay: inset')
  const name = said(layers, 'stock')
  const stock = name === undefined ? moduleStock : stockNamed(context, name)
  const spec = {
    lay,
    cover: fourEdges<Cover>(said(layers, 'cover'), (word) => (word?.value as Cover | undefined) ?? 'auto'),
    reveal: fourEdges(said(layers, 'reveal'), (mm) =>
      context.lengthOr(mm as Said<number | string> | undefined, DEFAULTS.reveal),
    ),
    gap: context.lengthOr(said(layers, 'gap'), DEFAULTS.gap),
    insetGap: context.lengthOr(said(layers, 'inset gap'), DEFAULTS.insetGap),
    pull: resolvePull(context, said(layers, 'pull')),
  }
  return stock === undefined ? undefined : { ...spec, stock, at: fronts?.path ?? drawers.path }
}

function resolvePull(context: Context, pull: Said<unknown> | undefined): DrawerPullSpec | undefined {
  const layers = layersOf<RawDrawerPull>([pull])
  if (layers.length === 0) return undefined
  const name = said(layers, 'item')
  const item = name && itemNamed(context, name, ['pull'])
  const edgeDistance = context.length(said(layers, 'edge distance'), { aboveZero: true }) ?? 'middle'
  return item === undefined ? undefined : { item, edgeDistance }
}

function resolvePacking(
  context: Context,
  packing: Said<number | string> | undefined,
  moduleStock: Stock | undefined,
  behindFront: boolean,
): DrawersSpec['packing'] | undefined {
  if (packing === undefined) return moduleStock
  if (!behindFront) {
    context.report(packing.path, 'has no meaning, since no door lies before these drawers', {
      expected: 'a front before the drawers, or this key taken out',
      on: 'key',
    })
  }
  const written = writtenName(context, packing.path, packing.value)
  if (written === 'auto') return moduleStock
  return written === 'none' ? 'none' : stockNamed(context, packing)
}
