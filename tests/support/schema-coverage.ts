/** JSON Schema as far as definitions use it. */
export interface Schema {
  readonly $ref?: string
  readonly $defs?: Readonly<Record<string, Schema>>
  readonly type?: string | readonly string[]
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly anyOf?: readonly Schema[]
  readonly items?: Schema
  readonly properties?: Readonly<Record<string, Schema>>
  readonly additionalProperties?: Schema | boolean
}

/**
 * All that a definition can say, as lines such as `modules › * › width` and `… › lay: inset`: each key and each word of a
 * list of words. `common` says what modules say, and a bay within a bay says what a bay says: both count once.
 */
export function sayable(schema: Schema): Set<string> {
  const lines = new Set<string>()
  walk(schema, schema, undefined, '', lines, new Set())
  return lines
}

/** Of all that a definition can say, what this one says. */
export function saidBy(schema: Schema, data: unknown): Set<string> {
  const lines = new Set<string>()
  walk(schema, schema, { data }, '', lines, new Set())
  return lines
}

/** With data: only what it says. Without: everything, each `$ref` once. */
function walk(
  root: Schema,
  node: Schema,
  given: { readonly data: unknown } | undefined,
  path: string,
  lines: Set<string>,
  seen: Set<string>,
): void {
  if (node.$ref !== undefined) {
    const name = node.$ref.split('/').at(-1) ?? ''
    if (given === undefined && seen.has(name)) return
    seen.add(name)
    const target = root.$defs?.[name]
    if (target === undefined) throw new Error(`no definition ${node.$ref}`)
    walk(root, target, given, name, lines, seen)
    return
  }
  for (const one of node.anyOf ?? []) walk(root, one, given, path, lines, seen)
  for (const word of node.const === undefined ? (node.enum ?? []) : [node.const]) {
    if (given === undefined || String(given.data) === String(word)) lines.add(`${path}: ${word}`)
  }
  if (node.items !== undefined && (given === undefined || Array.isArray(given.data))) {
    const items = given === undefined ? [undefined] : (given.data as readonly unknown[]).map((data) => ({ data }))
    for (const item of items) walk(root, node.items, item, path, lines, seen)
  }
  const group = isGroup(given?.data) ? given.data : undefined
  if (given !== undefined && group === undefined) return
  for (const [key, child] of Object.entries(node.properties ?? {})) {
    if (group !== undefined && group[key] === undefined) continue
    const inner = (path === '' ? key : `${path} › ${key}`).replace(/^common/, 'modules › *')
    if (inner !== 'modules › *') lines.add(inner)
    walk(root, child, group && { data: group[key] }, inner, lines, seen)
  }
  if (typeof node.additionalProperties === 'object') {
    const values = group === undefined ? [undefined] : Object.values(group).map((data) => ({ data }))
    for (const value of values) walk(root, node.additionalProperties, value, `${path} › *`, lines, seen)
  }
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
