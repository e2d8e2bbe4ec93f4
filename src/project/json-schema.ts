import * as z from 'zod'
import { definitionSchema } from './schema/definition.ts'

/** JSON Schema (2020-12) of a definition, for editors: keys, words and what each key means, with its default. */
export function definitionJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(definitionSchema, { target: 'draft-2020-12', io: 'input' })
  return { ...schema, title: 'Storyrod definition' }
}
