/** A kind of value, in the words of messages: `"60O" is not <noun>`, `expected: <expected>`. */
export interface Kind {
  readonly noun: string
  readonly expected: string
  /** All words that are allowed, where there is a list; the nearest one is offered. */
  readonly words?: readonly string[]
}

const words = (noun: string, ...list: string[]): Kind => ({ noun, expected: orList(list), words: list })

/** `a, b or c`. */
export function orList(list: readonly string[]): string {
  if (list.length < 2) return list.join('')
  return `${list.slice(0, -1).join(', ')} or ${list[list.length - 1] ?? ''}`
}

const LENGTH = 'a length such as 600, 600 mm, 23 7/16 in'
const BACKS = ['applied', 'inset', 'grooved', 'rebated', 'none'] as const
export const JOINT_WORDS = ['through screw', 'one-piece screw', 'dowel', 'pocket screw'] as const

/**
 * Every kind of value in a definition. A schema node carries the key of its kind as its error text; that is how an
 * issue of the schema finds its words.
 */
export const KINDS = {
  group: { noun: 'a group of keys', expected: 'keys, each on its own line and indented' },
  front: { noun: 'a front', expected: 'keys such as {kind: door}' },
  names: { noun: 'a group of names', expected: 'names, each on its own line, with what belongs to it indented below' },
  'format version': { noun: 'a format that this program reads', expected: '1' },
  text: { noun: 'a text', expected: 'a text of at most 200 characters' },
  'short text': { noun: 'a text of at most 200 characters', expected: 'a text of at most 200 characters' },
  name: { noun: 'a name', expected: 'a name' },
  units: words('a unit of a project', 'mm', 'in'),
  length: { noun: 'a length', expected: LENGTH },
  'length or list': { noun: 'a length or a list of lengths', expected: `${LENGTH}, or a list such as [17.8, 18.1]` },
  sheet: { noun: 'the size of a sheet', expected: 'length and width, such as [2440, 1220]' },
  grain: words('a grain direction', 'along length', 'none'),
  density: { noun: 'a density', expected: 'kilograms in a cubic metre, such as 680' },
  stiffness: { noun: 'a stiffness', expected: 'a modulus of elasticity in N/mm², such as 7000' },
  'length or same as width': {
    noun: 'a depth',
    expected: `${LENGTH}, or: same as width`,
    words: ['same as width'],
  },
  lap: words('a way for a panel to meet the sides', 'over', 'between', 'none'),
  back: {
    noun: 'a way for a back to sit',
    expected: `${orList(BACKS)}, or keys such as {sits: inset, recess: 20}`,
    words: BACKS,
  },
  sits: words('a way for a back to sit', ...BACKS),
  joint: {
    noun: 'a joint',
    expected: `${orList(JOINT_WORDS)}, the name of a piece of hardware, or keys such as {fasten: dowel, spacing: 128}`,
    words: JOINT_WORDS,
  },
  'joint or none': {
    noun: 'a joint',
    expected: `none, ${orList(JOINT_WORDS)}, the name of a piece of hardware, or keys such as {fasten: dowel, spacing: 128}`,
    words: ['none', ...JOINT_WORDS],
  },
  hardware: { noun: 'the name of a piece of hardware', expected: 'the name of a piece of hardware' },
  bays: { noun: 'a list of bays', expected: 'a list of 2 to 200 bays, each beginning with a dash' },
  share: { noun: 'a share', expected: 'a number from 0.001 to 1000, such as 1 or 2' },
  'loose shelves': {
    noun: 'a number of shelves',
    expected: 'a whole number from 1 to 100, or keys such as {count: 2, rear gap: 3}',
  },
  count: { noun: 'a number of shelves', expected: 'a whole number from 1 to 100' },
  'both faces': words('a way to bore both faces', 'share', 'stagger'),
  'kind of front': words('a kind of front', 'door', 'pair', 'flap', 'fixed'),
  hang: words('an edge to hang a front from', 'left', 'right', 'top', 'bottom'),
  stays: words('a number of stays', 'auto', 'one', 'both'),
  lay: words('a lay of a front', 'overlay', 'inset'),
  cover: {
    noun: 'a cover',
    expected: 'auto, full or half, or keys such as {left: half}',
    words: ['auto', 'full', 'half'],
  },
  'cover of an edge': words('a cover', 'auto', 'full', 'half'),
  reveal: { noun: 'a reveal', expected: `${LENGTH}, or keys such as {left: 1.5, top: 3}` },
  hinges: {
    noun: 'a number of hinges',
    expected: 'auto, a whole number from 2 to 6, or a list of 2 to 6 heights such as [80, 620]',
    words: ['auto'],
  },
  pull: { noun: 'a pull', expected: 'none, or keys such as {item: pull 128}', words: ['none'] },
  'end of a door': words('an end of a door or flap', 'top', 'bottom', 'left', 'right', 'middle'),
  base: { noun: 'a base', expected: 'none, or keys such as {casters: caster 75}', words: ['none'] },
  'length or auto': { noun: 'an inset', expected: `auto, or ${LENGTH}`, words: ['auto'] },
  join: {
    noun: 'a way to join modules',
    expected: 'none, bolted, or keys such as {bolt: bolt M6}',
    words: ['none', 'bolted'],
  },
  'floor plan': { noun: 'a list of rows', expected: 'a list of rows, each beginning with "- row:"' },
  row: { noun: 'a list of modules', expected: 'a list of module names such as [left one, right one]' },
  paper: words('a paper', 'A4', 'A3', 'Letter', 'Legal', 'Tabloid'),
  'dxf version': words('a DXF version that is written', '2007', '2000'),
  contours: words('a way to write contours', 'bulges', 'lines and arcs'),
  'true or false': words('a choice', 'true', 'false'),
  pattern: { noun: 'a layer name', expected: 'a text of A-Z, 0-9, - and _, such as OUTLINE' },
} as const satisfies Readonly<Record<string, Kind>>

export type KindKey = keyof typeof KINDS
