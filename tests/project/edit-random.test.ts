import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { isCollection, isMap, isSeq, type Node, parseDocument } from 'yaml'
import { applyInFullView } from '../../src/project/edit/apply.ts'
import { applyEdits, changeOf, type DefinitionPath, type Edit, type EditValue } from '../../src/project/index.ts'
import { dataAt, dataOf, edited, isGroupData, type Plain, pathsOf, unordered } from '../support/plain-data.ts'
import { triedDefinition } from '../support/random.ts'
import { anyYaml } from '../support/random-yaml.ts'
import { sampleStems, sampleText } from '../support/samples.ts'

const value: fc.Arbitrary<EditValue> = fc.letrec<{ value: EditValue }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 2, depthSize: 'small' },
    fc.constantFrom(
      '610 mm',
      'board',
      '23 7/16 in',
      'yes',
      'true',
      '610',
      '',
      ' ',
      'a, b',
      'a: b',
      '# x',
      "it's",
      '"',
      '- a',
      'x ]',
      '01',
      '~',
      'é\u2028',
      '{}',
      '*a',
      '&a',
      'a\nb',
      '?',
      '0x1f',
      'key #',
      'key:',
    ),
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((figure) => figure + 0),
    fc.integer({ min: -5, max: 3000 }),
    fc.boolean(),
    fc.string({ unit: 'binary', maxLength: 6 }).filter((text) => text.isWellFormed()),
    fc.array(tie('value'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('width', 'loose shelves', 'a: b', 'true', ''), tie('value'), {
      maxKeys: 3,
      noNullPrototype: true,
    }),
  ),
})).value

/** What is chosen of a text that is not known yet. */
interface Choice {
  readonly kind: 'set' | 'add' | 'take' | 'insert' | 'move' | 'rename' | 'lift' | 'lower'
  readonly where: number
  readonly at: number
  readonly value: EditValue
}
const choice: fc.Arbitrary<Choice> = fc.record({
  kind: fc.constantFrom('set', 'add', 'take', 'insert', 'move', 'rename', 'lift', 'lower'),
  where: fc.nat(),
  at: fc.nat(),
  value,
})

const picked = <T>(list: readonly T[], index: number): T | undefined => list[index % list.length]
const namesNothing = (path: DefinitionPath): boolean =>
  path.length !== 2 || !['stock', 'modules', 'hardware'].includes(String(path[0]))
const sizeOf = (data: Plain | undefined): number =>
  Array.isArray(data) ? data.length : isGroupData(data) ? data.keys.length : 0

/** Every third of the keys of a group. */
const someKeys = (data: Plain | undefined, at: number): string[] =>
  isGroupData(data) ? data.keys.flatMap(([key], k) => ((k + at) % 3 === 0 ? [key] : [])) : []

/** An item of a list that a group has, to be put in the place of that list. */
function liftOf(data: Plain, holders: readonly DefinitionPath[], where: number, at: number): Edit | undefined {
  const items = holders.flatMap((path): DefinitionPath[] => {
    const list = dataAt(data, path)
    return Array.isArray(list) && typeof path.at(-1) === 'string'
      ? list.flatMap((one, k) => (isGroupData(one) ? [[...path, k]] : []))
      : []
  })
  const path = picked(items, where)
  return path && { path, lift: someKeys(dataAt(data, path), at) }
}

/** The edit that is chosen, where the text has a place for it. */
function editOf(data: Plain, { kind, where, at, value: wanted }: Choice): Edit | undefined {
  const paths = pathsOf(data)
  const holders = paths.filter((path) => Array.isArray(dataAt(data, path)) || isGroupData(dataAt(data, path)))
  const parts = paths.filter((path) => path.length > 0)
  const path = picked(parts, where)
  const group = picked(
    holders.filter((one) => isGroupData(dataAt(data, one))),
    where,
  )
  const list = picked(
    holders.filter((one) => Array.isArray(dataAt(data, one))),
    where,
  )
  if (kind === 'add') return group && { path: [...group, `new ${at % 3}`], value: wanted }
  if (kind === 'insert') return list && { path: [...list, at % (sizeOf(dataAt(data, list)) + 1)], insert: wanted }
  if (kind === 'lift') return liftOf(data, holders, where, at)
  if (kind === 'lower') {
    if (group === undefined || group.length === 0) return undefined
    return { path: group, lower: someKeys(dataAt(data, group), at), into: 'new: list', items: 1 + (at % 3) }
  }
  if (path === undefined) return undefined
  if (kind === 'set') return { path, value: wanted }
  const siblings = sizeOf(dataAt(data, path.slice(0, -1)))
  if (kind === 'move') return { path, move: at % siblings }
  if (kind === 'rename') {
    return typeof path.at(-1) === 'string' && namesNothing(path) ? { path, rename: `other: ${at % 3}` } : undefined
  }
  // An emptied list goes with its key where a definition has no use for it: not what plain code does.
  return siblings === 1 && Array.isArray(dataAt(data, path.slice(0, -1))) ? undefined : { path, value: undefined }
}

function expectAsPlainCode(
  text: string,
  chosen: Choice,
  tried: { edits: number },
): { edit: Edit; after: string } | undefined {
  const data = dataOf(text)
  const edit = editOf(data, chosen)
  if (edit === undefined) return undefined
  tried.edits += 1
  const after = applyEdits(text, [edit])
  // What is nested anew says the same wherever in its group it stands.
  const told = 'lift' in edit || 'lower' in edit ? unordered : (one: Plain) => one
  const what = `${JSON.stringify(edit)}\n${text}\n-----\n${after}`
  expect(told(dataOf(after)), what).toEqual(told(edited(data, edit)))
  return { edit, after }
}

/** The node at a path and its group's, as the YAML library has them. */
function extentOf(text: string, edit: Edit): readonly [from: number, to: number] {
  const document = parseDocument(text, { uniqueKeys: false, keepSourceTokens: true })
  const siblings = sizeOf(dataAt(dataOf(text), edit.path.slice(0, -1)))
  const alone = 'value' in edit && (edit.value === undefined ? siblings > 1 : document.hasIn(edit.path))
  let node: Node | null | undefined = document.contents
  let from = 0
  let outer: readonly [number, number] = [0, text.length]
  let flow = false
  edit.path.forEach((step) => {
    flow = flow || (isCollection(node) && node.flow === true)
    const item = isMap(node)
      ? node.items.find(
          ({ key }) =>
            String((key as { source?: string }).source) === String(step) || (key as { value?: unknown }).value === step,
        )
      : undefined
    outer = [from, node?.range?.[2] ?? text.length]
    if (item !== undefined) from = (item.key as Node).range?.[0] ?? from
    const dashes = isSeq(node) && node.srcToken?.type === 'block-seq' ? node.srcToken.items : []
    const dash = dashes[Number(step)]?.start.find(({ type }) => type === 'seq-item-ind')?.offset
    node = (item?.value ?? (isSeq(node) ? node.items[Number(step)] : undefined)) as Node | null | undefined
    if (item === undefined) from = dash ?? node?.range?.[0] ?? from
  })
  // Behind a dash, the next key takes the place of the first.
  const ownLine = !('value' in edit) || edit.value !== undefined || /(?:^|\n) *$/.test(text.slice(0, from))
  const own = alone && !flow && ownLine
  const end = own ? (node?.range?.[2] ?? outer[1]) : outer[1]
  const start = own ? from : outer[0]
  const lineStart = text.lastIndexOf('\n', start - 1) + 1
  const lineEnd = text.indexOf('\n', end)
  return [lineStart, end > 0 && text[end - 1] === '\n' ? end : lineEnd === -1 ? text.length : lineEnd + 1]
}

/** All before and behind the lines of what is edited is there afterwards. */
function expectRestStays(text: string, edit: Edit, after: string): void {
  // Of several keys the place where they were and the end of their group change.
  if ('lift' in edit || 'lower' in edit) return
  const [from, to] = extentOf(text, edit)
  const what = `${JSON.stringify(edit)} ${from}-${to}\n${text}\n-----\n${after}`
  // The last line may be taken out with the end of the line before it.
  const head = to >= text.length ? text.slice(0, from).replace(/\r?\n$/, '') : text.slice(0, from)
  expect(after.startsWith(head), what).toBe(true)
  expect(after.endsWith(text.slice(to)), what).toBe(true)
  expect(after.length, what).toBeGreaterThanOrEqual(head.length + text.length - to)
}

describe('an edit is what plain code would do to the data, and leaves all other lines', () => {
  test('in any YAML', () => {
    const tried = { edits: 0 }
    fc.assert(
      fc.property(anyYaml, choice, (text, chosen) => {
        const done = expectAsPlainCode(text, chosen, tried)
        if (done !== undefined) expectRestStays(text, done.edit, done.after)
      }),
      { numRuns: 1000 },
    )
    expect(tried.edits).toBeGreaterThan(700)
  })

  test.each(sampleStems)('in %s', (stem) => {
    const tried = { edits: 0 }
    fc.assert(
      fc.property(choice, (chosen) => {
        const text = sampleText(stem)
        const done = expectAsPlainCode(text, chosen, tried)
        if (done !== undefined) expectRestStays(text, done.edit, done.after)
      }),
      { numRuns: 40 },
    )
    expect(tried.edits).toBeGreaterThan(20)
  })

  test('in definitions that are JSON, which stay JSON', () => {
    fc.assert(
      fc.property(triedDefinition, choice, (text, chosen) => {
        const done = expectAsPlainCode(text, chosen, { edits: 0 })
        if (done !== undefined) JSON.parse(done.after)
      }),
      { numRuns: 100 },
    )
  })

  test('where values are shared by aliases, of which no other one changes', () => {
    const shared = fc
      .tuple(fc.constantFrom(...SHARED), fc.constantFrom('\n', '\r\n'))
      .map(([text, eol]) => text.replaceAll('\n', eol))
    fc.assert(
      fc.property(shared, choice, (text, chosen) => {
        expectAsPlainCode(text, chosen, { edits: 0 })
      }),
      { numRuns: 400 },
    )
  })

  test('where any YAML at all is shared', () => {
    fc.assert(
      fc.property(anyYaml.map(sharedTwice), choice, (text, chosen) => {
        expectAsPlainCode(text, chosen, { edits: 0 })
      }),
      { numRuns: 250 },
    )
  })
})

/** A text in a group with an anchor, which a key, an item and a group in brackets share. */
function sharedTwice(text: string): string {
  const eol = /\r?\n/.exec(text)?.[0] ?? '\n'
  const lines = text.replace('\ufeff', '').trimEnd().split(/\r?\n/)
  const inner = lines[0]?.startsWith('{')
    ? [`a: &x ${lines[0]}`, ...lines.slice(1).map((line) => `  ${line}`)]
    : ['a: &x # shared', ...lines.map((line) => (line === '' ? '' : `  ${line}`))]
  const others = text.length % 2 === 0 ? ['b: *x'] : ['b:', '    - *x', 'c: { d: *x }']
  return [...inner, ...others, ''].join(eol)
}

const SHARED = [
  'a: &x\n  - k: 1 # one\n    l: &y [1, 2]\nb: *x\nc: { d: *x, e: *y }\nf: *y\n',
  'a: &x 600\nb: { c: *x, d: &x { e: 1 } }\ng: *x\nh: [*x, &z, *z]\ni: &q\n  j: &r { s: *x }\nt: *q\nu: *r\nv: &e # empty\n  w: &n # so\n  - 1\nz: [*e, *n]\n',
  '{ a: &x { b: 1 }, c: [*x, *x], d: { e: *x } }\n',
]

test.each(sampleStems)(
  'in %s, an edit inside a module, made with that module alone in view, is that of the whole text',
  (stem) => {
    const names = dataAt(dataOf(sampleText(stem)), ['modules'])
    const modules = isGroupData(names) ? names.keys.map(([name]) => name) : []
    const within = pathsOf(names ?? null).filter((path) => path.length > 1)
    const inherited = modules.map((name): DefinitionPath => [name, 'base', 'inset'])
    fc.assert(
      fc.property(
        fc.constantFrom(...within, ...inherited),
        value,
        fc.constantFrom('\n', '\r\n'),
        (path, wanted, eol) => {
          const text = sampleText(stem).replaceAll('\n', eol)
          for (const one of [wanted, undefined]) {
            const edit = { path: ['modules', ...path], value: one }
            expect(applyEdits(text, [edit])).toBe(applyInFullView(text, [edit]))
          }
        },
      ),
      { numRuns: 20 },
    )
  },
)

describe('an edit and the one that undoes it', () => {
  const plain = fc.constantFrom('610 mm', 'board', '23 7/16 in', 'two words', 'none')
  const figure = fc.oneof(fc.integer({ min: 0, max: 3000 }), fc.constantFrom(0.5, 17.8, -3.25))

  test.each(sampleStems)('give the very text back in %s', (stem) => {
    const text = sampleText(stem)
    const data = dataOf(text)
    // Those that are written as the program writes them: 96.0 and 0x60 could not come back.
    const scalars = pathsOf(data).flatMap((path): [DefinitionPath, string | number][] => {
      const one = dataAt(data, path)
      return typeof one === 'string' || typeof one === 'number' ? [[path, one]] : []
    })
    expect(scalars.length).toBeGreaterThan(15)
    fc.assert(
      fc.property(fc.constantFrom(...scalars), plain, figure, ([path, before], word, number) => {
        const other = typeof before === 'string' ? word : number
        const there = applyEdits(text, [{ path, value: other }])
        expect(applyEdits(there, [{ path, value: before }])).toBe(text)
      }),
      { numRuns: 30 },
    )
  })

  test('give the very text back for moves in any YAML', () => {
    fc.assert(
      fc.property(anyYaml, fc.nat(), fc.nat(), (text, where, at) => {
        const data = dataOf(text)
        const path =
          picked(
            pathsOf(data).filter((one) => one.length > 0),
            where,
          ) ?? []
        const above = path.slice(0, -1)
        const holder = dataAt(data, above)
        const from = isGroupData(holder) ? holder.keys.findIndex(([key]) => key === path.at(-1)) : Number(path.at(-1))
        const to = at % sizeOf(holder)
        const moved = applyEdits(text, [{ path, move: to }])
        expect(applyEdits(moved, [{ path: isGroupData(holder) ? path : [...above, to], move: from }])).toBe(text)
      }),
      { numRuns: 600 },
    )
  })
})

describe('the change that an editor is told of', () => {
  test('makes the one text of the other, and is no longer than it must be', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('a', 'b', '\r\n', '\n', '😀', '😁') }),
        fc.string({ unit: fc.constantFrom('a', 'b', '\r\n', '\n', '😀', '😁') }),
        (before, after) => {
          const change = changeOf(before, after)
          expect(before.slice(0, change.from) + change.insert + before.slice(change.to)).toBe(after)
          expect(change.from).toBeLessThanOrEqual(change.to)
          expect(change.insert.isWellFormed()).toBe(true)
          expect(before.slice(change.from, change.to).isWellFormed()).toBe(true)
          if (before === after) expect(change.insert + before.slice(change.from, change.to)).toBe('')
        },
      ),
    )
    expect(changeOf('width: 600 # as', 'width: 610 # as')).toEqual({ from: 8, to: 9, insert: '1' })
  })
})
