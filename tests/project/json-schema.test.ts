import { describe, expect, test } from 'vitest'
import { definitionJsonSchema, readDefinition, renderProblems, starterDefinition } from '../../src/project/index.ts'

type Json = Record<string, unknown>

/** Every key of every group in a JSON Schema, with its own schema. */
function keysOf(schema: unknown, path = ''): [path: string, schema: Json][] {
  if (Array.isArray(schema)) return schema.flatMap((one, i) => keysOf(one, `${path}/${i}`))
  if (typeof schema !== 'object' || schema === null) return []
  const own = (schema as Json).properties
  const keys =
    typeof own === 'object' && own !== null
      ? Object.entries(own).map(([key, value]): [string, Json] => [`${path}/${key}`, value as Json])
      : []
  return [...keys, ...Object.entries(schema).flatMap(([key, value]) => keysOf(value, `${path}/${key}`))]
}

describe('the JSON Schema', () => {
  const schema = definitionJsonSchema()
  const keys = keysOf(schema)

  test('is one of 2020-12, and unknown keys are errors', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema.additionalProperties).toBe(false)
    expect(schema.required).toEqual(['storyrod', 'stock', 'modules'])
  })

  test('describes every key in a sentence', () => {
    // A key from each corner of the schema: the walk must reach them all.
    const names = new Set(keys.map(([path]) => path.split('/').pop()))
    const corners = [
      'storyrod',
      'edge trim',
      'both faces',
      'countersink',
      'side inset',
      'hinge end',
      'fasten',
      'casters',
    ]
    expect(corners.filter((key) => !names.has(key))).toEqual([])
    const without = keys.filter(([, key]) => typeof key.description !== 'string' || !/[.]$/.test(key.description))
    expect(without.map(([path]) => path)).toEqual([])
    expect(keys.length).toBeGreaterThan(80)
  })

  test('is the same object each time, and plain JSON', () => {
    expect(JSON.stringify(definitionJsonSchema())).toBe(JSON.stringify(schema))
  })
})

describe('the starter', () => {
  const read = readDefinition(starterDefinition(), 'new.yaml')

  test('is read without a problem', () => {
    expect(read.ok ? '' : renderProblems(read.problems)).toBe('')
  })

  test('holds two modules that are bolted together', () => {
    expect(read.ok && read.project.rows).toMatchObject([
      { modules: ['tool-cupboard', 'open-shelves'], join: { item: { id: 'bolt M6' } } },
    ])
  })

  test('fits a terminal', () => {
    expect(
      Math.max(
        ...starterDefinition()
          .split('\n')
          .map((line) => line.length),
      ),
    ).toBeLessThanOrEqual(120)
  })
})
