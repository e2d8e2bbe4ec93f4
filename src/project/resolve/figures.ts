import type { Builder, Figure, FigureSpec, Figures } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { isGroup } from '../layers.ts'
import { orList } from '../schema/kinds.ts'
import type { DefinitionPath } from '../types.ts'

/** Degrees and kilograms above this are a slip of the pen. */
const MOST_COUNT = 10_000

/**
 * Figures of an item with those that a project says in the place of the old ones. `undefined` when one has a problem
 * or when they cannot be together, which is reported at the figure that is said.
 */
export function readFigures(
  context: Context,
  path: DefinitionPath,
  said: readonly (readonly [word: string, value: unknown])[],
  builder: Builder,
  old: Figures,
): Figures | undefined {
  const changes: [string, Figure][] = []
  let whole = true
  for (const [word, value] of said) {
    const spec = Object.hasOwn(builder.figures, word) ? builder.figures[word] : undefined
    if (spec === undefined) reportNoFigure(context, [...path, word], builder)
    const figure = spec && readFigure(context, { value, path: [...path, word] }, spec)
    if (spec === undefined || figure === undefined) whole = false
    else changes.push([spec.field, figure])
  }
  const figures = { ...old, ...Object.fromEntries(changes) }
  if (!whole || said.some(([word]) => context.troubled([...path, word]))) return undefined
  const faults = builder.faults(figures, (mm) => context.show(mm))
  const words = said.map(([word]) => word)
  for (const { word, what, expected } of faults) {
    const at = words.includes(word) ? [...path, word] : path
    const place = at === path ? `${word}: ${what}` : what
    context.report(at, place, { expected, ...(at === path && { on: 'key' as const }) })
  }
  return faults.length === 0 ? figures : undefined
}

function reportNoFigure(context: Context, path: DefinitionPath, builder: Builder): void {
  const word = String(path[path.length - 1])
  const known = Object.keys(builder.figures)
  const span = context.source.span(path, 'key')
  context.reportAt(span, path.slice(0, -1), `a ${builder.kind} has no figure ${quoted(word)}`, {
    expected: ['like', 'title', 'source', 'holes', ...known].join(', '),
    nearest: context.nearest(word, known),
  })
}

/** One figure in mm, kg, degrees or as a word; `undefined` for one that is none, which is reported. */
function readFigure(context: Context, said: Said<unknown>, spec: FigureSpec): Figure | undefined {
  const { value, path } = said
  switch (spec.form) {
    case 'length':
      return aLength(context, said, spec)
    case 'size':
      return readSize(context, said, spec)
    case 'lengths':
      return readLengths(context, said, spec)
    case 'range':
    case 'limits':
      return readRange(context, said, spec)
    case 'kilograms':
    case 'degrees': {
      if (typeof value === 'number' && value > 0 && value <= MOST_COUNT) return value
      context.reportKind(path, value, spec.form)
      return undefined
    }
    case 'word': {
      const words = spec.words ?? []
      if (typeof value === 'string' && words.includes(value)) return value
      const nearest = typeof value === 'string' ? context.nearest(value, words) : undefined
      context.report(path, `${context.written(path, value)} is none of the words here`, {
        expected: orList(words),
        nearest,
      })
      return undefined
    }
    case 'text':
      return typeof value === 'string' ? value : undefined
    default:
      return spec.form satisfies never
  }
}

function aLength(context: Context, { value, path }: Said<unknown>, { sign }: FigureSpec): number | undefined {
  if (typeof value !== 'number' && typeof value !== 'string') {
    if (value !== undefined) context.reportKind(path, value, 'length')
    return undefined
  }
  return context.length({ value, path }, { aboveZero: sign === 'above 0', negative: sign === 'any' })
}

function readLengths(context: Context, { value, path }: Said<unknown>, spec: FigureSpec): number[] | undefined {
  if (!Array.isArray(value)) {
    context.reportKind(path, value, 'lengths')
    return undefined
  }
  const lengths = value.map((one, i) => aLength(context, { value: one, path: [...path, i] }, spec))
  const good = lengths.filter((one) => one !== undefined)
  return good.length === lengths.length && good.length > 0 ? good : undefined
}

function readSize(context: Context, said: Said<unknown>, spec: FigureSpec): Figure | undefined {
  if (!Array.isArray(said.value) || said.value.length !== 2) {
    context.reportKind(said.path, said.value, 'two lengths')
    return undefined
  }
  const [x, y] = readLengths(context, said, spec) ?? []
  return x === undefined || y === undefined ? undefined : { x, y }
}

function readRange(context: Context, { value, path }: Said<unknown>, spec: FigureSpec): Figure | undefined {
  if (!isGroup(value)) {
    context.reportKind(path, value, 'range')
    return undefined
  }
  const one = (key: string) => aLength(context, { value: value[key], path: [...path, key] }, spec)
  const [min, max] = [one('least'), one('most')]
  if (spec.form === 'limits' && value.usual !== undefined) {
    const expected = 'least and most, or this key taken out'
    context.report([...path, 'usual'], 'has no meaning, since these are limits only', { expected, on: 'key' })
    return undefined
  }
  if (min === undefined || max === undefined) return undefined
  if (spec.form === 'limits') return { min, max }
  const usual = value.usual === undefined ? (min + max) / 2 : one('usual')
  return usual === undefined ? undefined : { min, max, usual }
}
