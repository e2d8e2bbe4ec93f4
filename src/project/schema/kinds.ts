import { BOARD_KINDS } from '../boards.ts'
import { PAPER_NAMES } from '../spec/outputs.ts'

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

/** Stands for a size that the sheets on hand decide. */
export const AS_LARGE_AS_FITS = 'as large as fits'

/** What a length is, in the words of every kind that may be one. */
export const LENGTH = 'a length such as 600, 600 mm, 23 7/16 in'
export const BACKS = ['applied', 'between sides', 'inset', 'grooved', 'rebated', 'none'] as const
const EDGES = ['front', 'back', 'left', 'right', 'top', 'bottom'] as const
export const JOINT_WORDS = [
  'through screw',
  'one-piece screw',
  'dowel',
  'pocket screw',
  'cam and dowel',
  'housing',
] as const

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
  limit: { noun: 'a limit', expected: 'a number' },
  reason: { noun: 'a reason', expected: 'a text of 3 to 200 characters that says why it is all right' },
  density: { noun: 'a density', expected: 'kilograms in a cubic metre, such as 680' },
  stiffness: { noun: 'a stiffness', expected: 'a modulus of elasticity in N/mm², such as 7000' },
  board: words('a kind of board', ...BOARD_KINDS),
  'length or same as width': {
    noun: 'a depth',
    expected: `${LENGTH}, or: same as width, as large as fits`,
    words: ['same as width', AS_LARGE_AS_FITS],
  },
  'length or as large as fits': {
    noun: 'a size',
    expected: `${LENGTH}, or: as large as fits`,
    words: [AS_LARGE_AS_FITS],
  },
  sheets: { noun: 'a number of sheets', expected: 'a whole number from 1 to 1000' },
  lap: words('a way for a panel to meet the sides', 'over', 'between', 'none'),
  top: words('a way to close the top', 'over', 'between', 'rails', 'none'),
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
  'own hardware': { noun: 'a piece of hardware', expected: 'keys such as {like: caster 75, overall height: 98}' },
  kilograms: { noun: 'a number of kilograms', expected: 'a number of kilograms above 0' },
  degrees: { noun: 'a number of degrees', expected: 'a number of degrees above 0' },
  'two lengths': { noun: 'two lengths', expected: 'a list of two lengths, such as [45, 9.5]' },
  lengths: { noun: 'a list of lengths', expected: 'a list of 1 to 50 lengths, such as [0, 3]' },
  range: { noun: 'a range', expected: 'keys such as {least: 3, most: 7, usual: 5}' },
  figure: {
    noun: 'a figure',
    expected: 'a length, two lengths such as [60, 60], a list of them, or keys such as {least: 3, most: 7}',
  },
  holes: { noun: 'a list of holes', expected: 'a list of 1 to 50 holes such as {at: [0, 16], diameter: 5, depth: 13}' },
  'holes by part': {
    noun: 'holes by part',
    expected: 'the part, with a list of holes such as [{at: [0, 16], diameter: 5, depth: 13}]',
  },
  'hole name': { noun: 'a text of at most 40 characters', expected: 'a text of at most 40 characters' },
  bays: { noun: 'a list of bays', expected: 'a list of 2 to 200 bays, each beginning with a dash' },
  share: { noun: 'a share', expected: 'a number from 0.001 to 1000, such as 1 or 2' },
  'loose shelves': {
    noun: 'a number of shelves',
    expected: 'a whole number from 1 to 100, or keys such as {count: 2, rear gap: 3}',
  },
  count: { noun: 'a number of shelves', expected: 'a whole number from 1 to 100' },
  drawers: {
    noun: 'a number of drawers',
    expected: 'a whole number from 1 to 20, or keys such as {stack: 3, slide: slide 500}',
  },
  stack: {
    noun: 'a stack of drawers',
    expected: 'a whole number from 1 to 20, or a list from the top such as [{height: 140}, {share: 1}]',
  },
  'drawer bottom': words('a way for a bottom to sit', 'grooved', 'applied'),
  'drawer fronts': {
    noun: 'what drawers have for fronts',
    expected: 'none, or keys such as {lay: inset}',
    words: ['none'],
  },
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
  'fixed end': words('an end for fixed casters', 'left', 'right', 'back'),
  stretchers: { noun: 'a list of stretchers', expected: 'a list of 1 to 20 stretchers, each beginning with "- at:"' },
  'end of a stretcher': words('a place for a stretcher', 'front', 'back'),
  'length or below top': { noun: 'a height', expected: `below top, or ${LENGTH}`, words: ['below top'] },
  lipping: { noun: 'a list of lippings', expected: 'a list of 1 to 50, each beginning with "- thickness:"' },
  'lipped edges': {
    noun: 'a list of edges',
    expected: `all, or a list of ${orList(EDGES)} such as [front]`,
    words: ['all'],
  },
  'lipped edge': words('an edge of a panel', ...EDGES),
  'lipped panels': { noun: 'a list of panels', expected: 'a list of panels such as [left side, shelves]' },
  'length or auto': { noun: 'an inset', expected: `auto, or ${LENGTH}`, words: ['auto'] },
  'flip-over top': { noun: 'a flip-over top', expected: 'keys such as {machines: …}' },
  well: { noun: 'a depth of a well', expected: `auto, or ${LENGTH}`, words: ['auto'] },
  machines: { noun: 'a group of machines', expected: 'upper or lower, each with keys such as {width: 300}' },
  machine: { noun: 'a machine', expected: 'keys such as {width: 300, depth: 400, height: 250}' },
  loads: { noun: 'a group of loads', expected: 'keys such as {on a shelf: 150, on the top: 40 kg}' },
  load: { noun: 'a mass', expected: 'kilograms such as 40 or 40 kg, or pounds such as 90 lb' },
  'load on an area': { noun: 'a load', expected: 'kilograms on each m² such as 195 or 195 kg/m2, or 40 lb/ft2' },
  mass: { noun: 'a mass', expected: 'kilograms, such as 32' },
  'locking bolts': {
    noun: 'a way to lock the platform',
    expected: 'the name of a locking bolt, or keys such as {each side: 1}',
  },
  'locking bolts each side': { noun: 'a number of locking bolts', expected: '1 or 2' },
  worktop: { noun: 'a worktop', expected: 'none, or keys such as {stock: birch 27, overhang: 20}', words: ['none'] },
  overhang: { noun: 'an overhang', expected: `${LENGTH}, or keys such as {front: 20, left: 10}` },
  'top fix': {
    noun: 'a way to fix a top',
    expected: 'none, through screw, pocket screw, the name of a screw, or keys such as {spacing: 200}',
    words: ['none', 'through screw', 'pocket screw'],
  },
  'kind of slot': words('a kind of slot', 'fence', 'track'),
  along: words('a way for a slot to run', 'width', 'depth'),
  slots: { noun: 'a list of slots', expected: 'a list of at most 50 slots, each beginning with a dash' },
  join: {
    noun: 'a way to join modules',
    expected: 'none, bolted, or keys such as {bolt: bolt M6}',
    words: ['none', 'bolted'],
  },
  'floor plan': { noun: 'a list of rows', expected: 'a list of rows, each beginning with "- row:"' },
  row: { noun: 'a list of modules', expected: 'a list of module names such as [left one, right one]' },
  level: words('a way to level modules', 'floors', 'tops'),
  stands: { noun: 'a place for a row', expected: 'keys such as {against: glaze store, at its: back}' },
  'side of a module': words('a side of a module', 'left', 'right', 'front', 'back'),
  'way of fronts': words('a way for fronts to look', 'forward', 'left', 'right', 'back'),
  'line up': words('a way to line up', 'left', 'right', 'front', 'back', 'middle'),
  paper: words('a paper', ...PAPER_NAMES),
  'page budget': { noun: 'a number of sheets of paper', expected: 'a whole number from 1 to 50' },
  bits: { noun: 'a list of bits', expected: 'a list of 1 to 200 bits such as {kind: forstner, diameter: 35}' },
  'bit angle': { noun: 'the angle of a countersink', expected: 'degrees from 30 to 150, such as 90' },
  bit: { noun: 'a bit', expected: 'keys such as {kind: forstner, diameter: 35}' },
  'kind of bit': words(
    'a kind of bit',
    'twist',
    'brad point',
    'forstner',
    'countersink',
    'step',
    'straight',
    'end mill',
  ),
  'check bars': {
    noun: 'a pair of readings',
    expected: 'two lengths, along the short and the long side of the sheet, such as [179.1, 180]',
  },
  'dxf version': words('a DXF version that is written', '2007', '2000'),
  contours: words('a way to write contours', 'bulges', 'lines and arcs'),
  'true or false': words('a choice', 'true', 'false'),
  openings: { noun: 'a list of openings', expected: 'a list of at most 200 openings, each beginning with "- panel:"' },
  opening: { noun: 'an opening', expected: 'keys such as {panel: back, shape: round, diameter: 60, from: centred}' },
  shape: words('a shape', 'round', 'slot', 'rectangle', 'path'),
  from: { noun: 'a place on a panel', expected: 'centred, or two edges that meet, such as {left: 100, bottom: 80}' },
  'length or centred': { noun: 'a distance from an edge', expected: `${LENGTH}, or: centred`, words: ['centred'] },
  'length or through': { noun: 'a depth', expected: `${LENGTH}, or: through`, words: ['through'] },
  face: words(
    'a face of a panel',
    'inside',
    'outside',
    'upper face',
    'underside',
    'hidden face',
    'show face',
    'left face',
    'right face',
  ),
  turn: { noun: 'a turn', expected: '0 or 90' },
  scale: { noun: 'a scale', expected: 'a number from 0.0001 to 10000, such as 1 or 0.5' },
  'svg unit': words('a unit of a path', 'mm', 'in', 'px'),
  svg: { noun: 'a path', expected: 'an SVG document, or the d of a path such as M0 0 H60 V40 Z' },
  file: { noun: 'the name of a file', expected: 'the name of an SVG file beside the definition, such as badge.svg' },
  pattern: { noun: 'a layer name', expected: 'a text of A-Z, 0-9, - and _, such as OUTLINE' },
} as const satisfies Readonly<Record<string, Kind>>

export type KindKey = keyof typeof KINDS
