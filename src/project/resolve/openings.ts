import { type ClosedPath, circlePath, NOISE_MM, rectanglePath, slotPath, turnedQuarter } from '../../geometry/index.ts'
import type { Context, Said } from '../context.ts'
import { isGroup, type Layer, type Loose, said } from '../layers.ts'
import { printable } from '../problem.ts'
import type { RawOpening } from '../schema/definition.ts'
import { orList } from '../schema/kinds.ts'
import type { EdgeWord, FromEdgeSpec, OpeningSpec } from '../types.ts'
import { resolvePath } from './opening-path.ts'

type Shape = RawOpening['shape']
type Key = keyof RawOpening & string

/** The keys that give each shape its figures; `true` where it cannot do without. */
const FIGURES: Readonly<Record<Shape, Readonly<Partial<Record<Key, boolean>>>>> = {
  round: { diameter: true },
  slot: { length: true, width: true, turn: false },
  rectangle: { width: true, height: true, 'corner radius': false, turn: false },
  path: { svg: false, file: false, unit: false, scale: false, turn: false },
}
const SHAPE_KEYS = [
  'diameter',
  'length',
  'width',
  'height',
  'corner radius',
  'svg',
  'file',
  'unit',
  'scale',
  'turn',
] as const

const EDGES = ['left', 'right', 'front', 'back', 'top', 'bottom'] as const satisfies readonly EdgeWord[]
const ACROSS: Readonly<Record<EdgeWord, EdgeWord>> = {
  left: 'right',
  right: 'left',
  front: 'back',
  back: 'front',
  top: 'bottom',
  bottom: 'top',
}

/** The openings of a module. Those with problems are left out; all problems are reported. */
export function resolveOpenings(
  context: Context,
  openings: Said<readonly (Loose<RawOpening> | undefined)[]> | undefined,
): OpeningSpec[] {
  if (openings === undefined) return []
  return openings.value.flatMap((raw, k) => {
    if (!isGroup(raw)) return []
    return resolveOpening(context, { raw, path: [...openings.path, k] }) ?? []
  })
}

function resolveOpening(context: Context, layer: Layer<RawOpening>): OpeningSpec | undefined {
  const layers = [layer]
  const { path: at } = layer
  const shape = said(layers, 'shape')?.value
  const panel = said(layers, 'panel')
  const path = shape === undefined ? undefined : resolveShape(context, layer, shape)
  const from = resolveFrom(context, said(layers, 'from'))
  const depth = resolveDepth(context, layer)
  const face = said(layers, 'face')
  if (depth === 'through' && face !== undefined && shape !== 'path' && shape !== undefined) {
    context.report(face.path, 'has no meaning, since the opening goes through', {
      expected: 'a depth for a recess, or this key taken out',
      on: 'key',
    })
  }
  if (panel === undefined || shape === undefined || path === undefined || from === undefined || depth === undefined)
    return undefined
  const purpose = printable(said(layers, 'for')?.value ?? '').trim() || 'opening'
  return { panel: printable(String(panel.value)).trim(), shape, path, from, depth, face: face?.value, purpose, at }
}

/** The shape about (0, 0); nothing, with a report, where its figures make none. */
function resolveShape(context: Context, layer: Layer<RawOpening>, shape: Shape): ClosedPath | undefined {
  const figures = FIGURES[shape]
  for (const key of SHAPE_KEYS) {
    const found = said([layer], key)
    if (found === undefined || Object.hasOwn(figures, key)) continue
    context.report(found.path, `has no meaning for the shape "${shape}"`, {
      expected: `${orList(Object.keys(figures))}, or this key taken out`,
      on: 'key',
    })
  }
  for (const [key, needed] of Object.entries(figures)) {
    if (needed && said([layer], key as Key) === undefined) {
      context.reportMissing(layer.path, key, `the ${key} of the ${shape === 'round' ? 'round opening' : shape}`)
    }
  }
  const path = shape === 'path' ? resolvePath(context, layer) : shapeOf(context, layer, shape)
  return path !== undefined && said([layer], 'turn')?.value === 90 ? turnedQuarter(path) : path
}

function shapeOf(context: Context, layer: Layer<RawOpening>, shape: Exclude<Shape, 'path'>): ClosedPath | undefined {
  const size = (key: 'diameter' | 'length' | 'width' | 'height'): number | undefined =>
    context.length(said([layer], key), { aboveZero: true })
  if (shape === 'round') {
    const diameter = size('diameter')
    return diameter === undefined ? undefined : circlePath([0, 0], diameter / 2)
  }
  const width = size('width')
  if (shape === 'slot') return slotOf(context, layer, size('length'), width)
  const height = size('height')
  const radius = context.lengthOr(said([layer], 'corner radius'), 0)
  if (width === undefined || height === undefined) return undefined
  const most = Math.min(width, height) / 2
  if (radius > most + NOISE_MM || radius < 0) {
    context.report([...layer.path, 'corner radius'], `corners of ${context.show(radius)} do not fit in the rectangle`, {
      expected: `0 to ${context.show(most)}, half its shorter side`,
    })
    return undefined
  }
  return rectanglePath([-width / 2, -height / 2], [width / 2, height / 2], radius)
}

/** A slot as wide as it is long is a circle; shorter than wide it is none. */
function slotOf(
  context: Context,
  layer: Layer<RawOpening>,
  length: number | undefined,
  width: number | undefined,
): ClosedPath | undefined {
  if (length === undefined || width === undefined) return undefined
  if (length <= width + NOISE_MM) {
    context.report(
      [...layer.path, 'length'],
      `a slot ${context.show(width)} wide is not ${context.show(length)} long`,
      {
        expected: `more than its width, ${context.show(width)}, from end to end; or shape: round`,
      },
    )
    return undefined
  }
  const half = (length - width) / 2
  return slotPath([-half, 0], [half, 0], width)
}

function resolveFrom(context: Context, from: Said<unknown> | undefined): FromEdgeSpec[] | undefined {
  if (from === undefined) return undefined
  if (from.value === 'centred') return []
  if (!isGroup(from.value)) return undefined
  const group = from.value
  const named = EDGES.filter((edge) => group[edge] !== undefined)
  const [one, other, third] = named
  const expected = 'two edges that meet, such as {left: 100, bottom: 80}, or: centred'
  const tried = EDGES.some((edge) => context.troubled([...from.path, edge]) || context.isMisspelt([...from.path, edge]))
  if (tried) return undefined
  if (one === undefined || other === undefined || third !== undefined) {
    context.report(
      from.path,
      `${named.length === 0 ? 'no edge is' : named.length === 1 ? 'one edge is' : `${named.length} edges are`} named`,
      {
        expected,
        on: 'key',
      },
    )
    return undefined
  }
  if (ACROSS[one] === other) {
    context.report(from.path, `the ${one} and the ${other} edge do not meet`, { expected, on: 'key' })
    return undefined
  }
  const distances = [one, other].flatMap((edge): FromEdgeSpec[] => {
    const value = group[edge] as number | string
    if (value === 'centred') return [{ edge, mm: value }]
    const mm = context.length({ value, path: [...from.path, edge] }, { aboveZero: true, kind: 'length or centred' })
    return mm === undefined ? [] : [{ edge, mm }]
  })
  return distances.length === 2 ? distances : undefined
}

/** A depth, with the face that it needs. */
function resolveDepth(context: Context, layer: Layer<RawOpening>): number | 'through' | undefined {
  const depth = said([layer], 'depth')
  if (depth === undefined || depth.value === 'through') return 'through'
  const mm = context.length(depth, { aboveZero: true, kind: 'length or through' })
  if (said([layer], 'face') === undefined) {
    context.reportMissing(layer.path, 'face', 'the face that the recess is cut from, such as inside or show face')
  }
  return mm
}
