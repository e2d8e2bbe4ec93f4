import * as z from 'zod'
import { builders, type FigureForm } from '../../hardware/index.ts'
import { group, hardware, kind, length, optional, required } from './parts.ts'

const pairOfLengths = z.array(length, kind('two lengths')).length(2, kind('two lengths'))
const MOST_LENGTHS = 50
const MOST_HOLES = 50

const range = group({
  least: required(length, 'The least.'),
  most: required(length, 'The most.'),
  usual: optional(length, 'What is taken where there is a choice. Default: the middle.'),
})

const lengths = z.array(length, kind('lengths')).min(1, kind('lengths')).max(MOST_LENGTHS, kind('lengths'))

const FORMS: Readonly<Record<FigureForm, z.ZodType>> = {
  length,
  size: pairOfLengths,
  lengths,
  range,
  limits: range,
  kilograms: z.number(kind('kilograms')),
  degrees: z.number(kind('degrees')),
  word: z.string(kind('figure')),
  text: z.string(kind('text')).max(200, kind('short text')),
}

/** The figures of every kind by their trade words; which of them a kind has is known when the item is. */
const figures = Object.fromEntries(
  builders.flatMap((builder) =>
    Object.entries(builder.figures).map(([word, { form, about }]) => [word, optional(FORMS[form], about)] as const),
  ),
)

const hole = group({
  at: required(pairOfLengths, "From the item's own origin: x and y, as its kind has them. May be below 0."),
  diameter: required(length, 'Diameter of the hole.'),
  depth: required(length, 'Depth of the hole, or: through.'),
  name: optional(
    z.string(kind('text')).max(40, kind('hole name')),
    'What the hole is for, in the words of the drawing. Default: as before.',
  ),
})

/** A figure of a kind that has no table: checked when the kind is known. */
const anyFigure = z.union([length, lengths, range], kind('figure'))

/** A piece of hardware of the project: another one with other figures. */
export const ownHardwareSchema = z
  .object(
    {
      like: optional(
        hardware,
        'The piece of hardware that it is like in all that is not said. Default: the one of the same name.',
      ),
      title: optional(
        z.string(kind('text')).max(200, kind('short text')),
        'What it is, in a few words. Default: its name.',
      ),
      source: optional(
        z.string(kind('text')).max(200, kind('short text')),
        'Where its figures come from: a data sheet, or measured.',
      ),
      holes: optional(
        z.record(
          z.string(),
          z.array(hole, kind('holes')).min(1, kind('holes')).max(MOST_HOLES, kind('holes')),
          kind('holes by part'),
        ),
        'Holes that replace those of a part: the part, with a list of holes.',
      ),
      ...figures,
    },
    kind('own hardware'),
  )
  .catchall(anyFigure)

export type RawOwnHardware = {
  readonly like?: string
  readonly title?: string
  readonly source?: string
  readonly holes?: Readonly<Record<string, readonly RawHole[]>>
} & { readonly [figure: string]: unknown }
export type RawHole = z.output<typeof hole>
