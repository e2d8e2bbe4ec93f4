import fc from 'fast-check'

/** A value of a random text, with the way that it is written. */
export type Tree =
  | { readonly kind: 'word'; readonly text: string }
  | {
      readonly kind: 'group' | 'list'
      readonly flow: boolean
      /** Where there is a comment, and which: above a part, behind it, a blank line above. */
      readonly parts: readonly Part[]
      /** In brackets: each part on its own line. */
      readonly spread: boolean
      /** In brackets: a comma behind the last one. */
      readonly comma: boolean
    }

interface Part {
  readonly key: string
  readonly value: Tree
  readonly above: string
  readonly behind: string
  readonly blank: boolean
}

/** Plain values as people write them, of every kind and in all quotes. */
const WORDS = [
  '600',
  '18 mm',
  '23 7/16 in',
  '-3.50',
  '0x1f',
  '1e3',
  'true',
  '~',
  '',
  'board',
  'two words',
  '"quoted, with: marks"',
  "'it''s single'",
  '"600"',
  '"# no comment"',
  "''",
  'a#b',
  '10',
  '01',
]
const KEYS = ['width', 'carcase height', '"quoted key"', "'single'", '10', '01', 'é', 'stock', 'a/b', 'row', 'true']

const comment = fc.constantFrom('', '', '', 'why: it fits', ' # twice ', '{ a: 1 }', '- 3')

const { tree } = fc.letrec<{ tree: Tree; deep: Tree }>((tie) => {
  const word = fc.constantFrom(...WORDS).map((text): Tree => ({ kind: 'word', text }))
  const part = fc.record({
    key: fc.constantFrom(...KEYS),
    value: tie('deep'),
    above: comment,
    behind: comment,
    blank: fc.boolean(),
  })
  const holder = (least: number) =>
    fc
      .record({
        kind: fc.constantFrom('group' as const, 'list' as const),
        flow: fc.boolean(),
        parts: fc.uniqueArray(part, { minLength: least, maxLength: 4, selector: ({ key }) => key }),
        spread: fc.boolean(),
        comma: fc.boolean(),
      })
      .map((one): Tree => one)
  return {
    deep: fc.oneof({ depthSize: 'small', withCrossShrink: true }, word, holder(0)),
    tree: holder(1).map((one): Tree => (one.kind === 'word' ? one : { ...one, kind: 'group' })),
  }
})

const behindOf = ({ behind }: Part): string => (behind === '' ? '' : `  # ${behind}`)

/** A tree in one or several lines in brackets. */
function inBrackets(one: Tree, margin: string): string {
  if (one.kind === 'word') return one.text
  const [open, close] = one.kind === 'group' ? ['{', '}'] : ['[', ']']
  if (one.parts.length === 0) return open + close
  const inner = `${margin}  `
  const words = one.parts.map(({ key, value }) => {
    const written = inBrackets(value, inner)
    if (one.kind === 'list') return written === '' ? '~' : written
    return written === '' ? `${key}:` : `${key}: ${written}`
  })
  if (!one.spread) return `${open} ${words.join(', ')}${one.comma ? ',' : ''} ${close}`
  const lines = one.parts.map((part, i) => {
    const last = i === one.parts.length - 1
    return `${inner}${words[i]}${!last || one.comma ? ',' : ''}${behindOf(part)}`
  })
  return [open, ...lines, `${inner}${close}`].join('\n')
}

/** The lines of a tree in block style. */
function blockLines(one: Tree, margin: string): string[] {
  if (one.kind === 'word') return []
  return one.parts.flatMap((part) => {
    const { key, value, above, blank } = part
    const lead = one.kind === 'group' ? `${key}:` : '-'
    const head = [...(blank ? [''] : []), ...(above === '' ? [] : [`${margin}# ${above}`])]
    if (value.kind === 'word' || value.flow || value.parts.length === 0) {
      const written = inBrackets(value, margin)
      return [...head, `${margin}${lead}${written === '' ? '' : ` ${written}`}${behindOf(part)}`]
    }
    const lines = blockLines(value, `${margin}  `)
    // Behind a dash the first part begins on the line of the dash, where nothing stands above it.
    if (one.kind === 'list' && lines[0]?.startsWith(`${margin}  `) && !/^ *#/.test(lines[0])) {
      return [...head, `${margin}- ${lines[0].trimStart()}`, ...lines.slice(1)]
    }
    return [...head, `${margin}${lead}${behindOf(part)}`, ...lines]
  })
}

/** YAML texts of one group, in every style that people mix, with comments and blank lines; LF or CRLF, a mark in front or none. */
export const anyYaml: fc.Arbitrary<string> = fc
  .record({
    tree,
    eol: fc.constantFrom('\n', '\n', '\r\n'),
    mark: fc.constantFrom('', '', '\ufeff'),
    ended: fc.boolean(),
  })
  .map(({ tree: one, eol, mark, ended }) => {
    const flow = one.kind !== 'word' && one.flow
    const lines = flow ? inBrackets(one, '').split('\n') : blockLines(one, '').flatMap((line) => line.split('\n'))
    return mark + lines.join(eol) + (ended ? eol : '')
  })
