import fc from 'fast-check'
import { isMap, isSeq, type Pair, parseDocument, type YAMLMap } from 'yaml'

/** One change of a text as a person might make it, right or wrong; `at` and `to` are taken modulo what there is. */
export interface TextEdit {
  readonly kind: keyof typeof EDITS
  readonly at: number
  readonly to: number
}

/** What is typed at odd places: whatever has a meaning in YAML, and what has none. */
const TYPED = ['7', ' ', '\n', '\t', ':', '#', ' # ', "'", '"', '{', '}', '[', ']', '- ', '&a ', '*a', '|\n', '? ', '~']
const WRITTEN = [
  'null',
  '---\n',
  '...\n',
  '%YAML 1.2\n',
  '\r\n',
  '\r',
  '!!str ',
  '× ',
  '# a comment\n',
  '   # inside\n',
  '\n\n',
]

const lines = (text: string): string[] => text.split('\n')

/** Changes the parsed text, where it can be parsed; modules, stock and rows keep their comments. */
function inDocument(text: string, change: (root: YAMLMap) => void): string {
  const document = parseDocument(text, { uniqueKeys: false })
  if (document.errors.length > 0 || !isMap(document.contents)) return text
  change(document.contents as YAMLMap)
  return document.toString({ lineWidth: 0 })
}

function pairsOf(root: YAMLMap, key: string): Pair[] {
  const group = root.get(key)
  return isMap(group) ? (group.items as Pair[]) : []
}

/** The digits of a text that another digit can stand for. */
const digits = (text: string): number[] => [...text.matchAll(/\d/g)].map((match) => match.index)

const withDigit = (text: string, at: number | undefined, to: number): string =>
  at === undefined ? text : `${text.slice(0, at)}${to % 10}${text.slice(at + 1)}`

const EDITS = {
  digit: (text, at, to) => withDigit(text, digits(text)[at % Math.max(1, digits(text).length)], to),
  /** In the modules, where most changes are. */
  size: (text, at, to) => {
    const spots = [...text.matchAll(/(?:width|height|size|depth|share|shelves)"?: "?\d+/g)]
    const spot = spots[at % Math.max(1, spots.length)]
    return withDigit(text, spot && spot.index + spot[0].length - 1, to)
  },
  type: (text, at, to) => {
    const all = [...TYPED, ...WRITTEN]
    const here = at % (text.length + 1)
    return text.slice(0, here) + (all[to % all.length] ?? '') + text.slice(here)
  },
  remove: (text, at, to) => {
    const here = at % (text.length + 1)
    return text.slice(0, here) + text.slice(here + 1 + (to % 3))
  },
  'line out': (text, at) =>
    lines(text)
      .toSpliced(at % lines(text).length, 1)
      .join('\n'),
  'line twice': (text, at) => {
    const all = lines(text)
    return all.toSpliced(at % all.length, 0, all[at % all.length] ?? '').join('\n')
  },
  comment: (text, at, to) => {
    const all = lines(text)
    const k = at % all.length
    return all.with(k, to % 2 === 0 ? `${all[k]} # note ${to}` : `${' '.repeat(to % 7)}# note\n${all[k]}`).join('\n')
  },
  'module moved': (text, at, to) =>
    inDocument(text, (root) => {
      const modules = pairsOf(root, 'modules')
      const [one] = modules.splice(at % Math.max(1, modules.length), 1)
      if (one !== undefined) modules.splice(to % (modules.length + 1), 0, one)
    }),
  'module out': (text, at) =>
    inDocument(text, (root) => {
      const modules = pairsOf(root, 'modules')
      modules.splice(at % Math.max(1, modules.length), 1)
    }),
  'module twice': (text, at, to) =>
    inDocument(text, (root) => {
      const modules = root.get('modules')
      const one = pairsOf(root, 'modules')[at % Math.max(1, pairsOf(root, 'modules').length)]
      const value = one?.value as { clone?: () => unknown } | null | undefined
      if (isMap(modules) && value?.clone !== undefined) modules.set(`another ${to}`, value.clone())
    }),
  /** Everywhere, so that the rows name it still. */
  'module renamed': (text, at, to) => {
    const names = [...text.matchAll(/^ {1,4}"?([a-z][a-z ]*\d*)"?:/gm)].map((match) => match[1] ?? '')
    const name = names[at % Math.max(1, names.length)]
    return name === undefined ? text : text.replaceAll(name, `${name} ${to}`)
  },
  'stock changed': (text, at, to) => {
    const spots = [...text.matchAll(/thickness"?: *\[?"?\d+(?:\.\d)?/g)]
    const spot = spots[at % Math.max(1, spots.length)]
    return withDigit(text, spot && spot.index + spot[0].length - 1, to)
  },
  'row changed': (text, at, to) =>
    inDocument(text, (root) => {
      const plan = root.get('floor plan')
      const rows = isSeq(plan) ? plan.items.filter((item) => isMap(item)) : []
      const row = rows[at % Math.max(1, rows.length)]
      if (!isMap(row)) return
      const names = row.get('row')
      if (to % 4 === 0) row.set('join', 'bolted')
      else if (to % 4 === 1) row.delete('join')
      else if (to % 4 === 2) row.set('level', 'tops')
      else if (isSeq(names)) names.items.reverse()
    }),
  'limit changed': (text, _, to) =>
    inDocument(text, (root) => {
      if (to % 3 === 0) root.delete('findings')
      else root.set('findings', { 'bolt-blocked': { wall: 3 + (to % 9), farthest: 20 + to } })
    }),
  'common changed': (text, _, to) =>
    inDocument(text, (root) => {
      const common = root.get('common')
      if (isMap(common)) common.set('loads', { 'on a shelf': 100 + to })
    }),
  'line ends': (text, _, to) => (to % 2 === 0 ? text.replace(/\r?\n/g, '\r\n') : text.replace(/\r\n/g, '\n')),
} as const satisfies Record<string, (text: string, at: number, to: number) => string>

const KINDS = Object.keys(EDITS) as (keyof typeof EDITS)[]

/** One change of any kind; every second one a figure. */
export const textEdit: fc.Arbitrary<TextEdit> = fc.record({
  kind: fc.oneof(fc.constantFrom('size' as const, 'digit' as const), fc.constantFrom(...KINDS)),
  at: fc.nat(1_000_000),
  to: fc.nat(100),
})

/** The text after a change. */
export const edited = (text: string, { kind, at, to }: TextEdit): string => EDITS[kind](text, at, to)

/**
 * The texts that a chain of changes passes through. A change may go on from the text before it, or from the last one that
 * is right, as `mend` says: what is broken is mended.
 */
export function chain(
  text: string,
  edits: readonly { readonly edit: TextEdit; readonly mend: boolean }[],
  isRight: (text: string) => boolean,
): string[] {
  let right = text
  let now = text
  return edits.map(({ edit, mend }) => {
    now = edited(mend ? right : now, edit)
    if (isRight(now)) right = now
    return now
  })
}

export const someEdits = (least: number, most: number) =>
  fc.array(fc.record({ edit: textEdit, mend: fc.boolean() }), { minLength: least, maxLength: most })
