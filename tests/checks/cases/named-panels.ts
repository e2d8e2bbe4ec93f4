import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const box = (keys: string): string => `${ROUND_STOCK}
modules:
  one: { width: 600, depth: 500, carcase height: 700, stock: board, ${keys} }
`
const plain = 'carcase: { back: none, joint: dowel }'
const opening = (keys: string): string => box(`${plain}, openings: [{ ${keys} }]`)
const lipping = (keys: string): string =>
  box(`${plain}, inside: { loose shelves: 2 }, lipping: [{ thickness: 5, ${keys} }]`)
const rails = (thickness: number): string =>
  box(
    `carcase: { top: rails, rails: { width: 50 }, back: none, joint: dowel }, lipping: [{ thickness: ${thickness}, edges: [front, back], on: [rails] }]`,
  )

/** Openings and lippings that name what is not there. */
export const namedPanelCases: readonly RuleCase[] = [
  {
    rule: 'opening-place',
    what: 'no such panel',
    trips: opening('panel: left sidde, shape: round, diameter: 60, from: centred'),
    severity: 'stop',
    message: 'opening: the module has no panel "left sidde"',
    fix: 'name one of: left side, right side, top, bottom; did you mean "left side"?',
    inside: opening('panel: left side, shape: round, diameter: 60, from: centred'),
  },
  {
    rule: 'opening-place',
    what: 'no such face',
    trips: opening('panel: left side, shape: round, diameter: 60, depth: 5, face: upper face, from: centred'),
    severity: 'stop',
    message: 'opening: the left side has no upper face',
    fix: 'say inside or outside',
    inside: opening('panel: left side, shape: round, diameter: 60, depth: 5, face: inside, from: centred'),
  },
  {
    rule: 'opening-place',
    what: 'no such edge',
    trips: opening('panel: top, shape: round, diameter: 60, from: { left: 100, top: 60 }'),
    severity: 'stop',
    message: 'opening: the top has no top edge',
    fix: 'measure from left, right, front, back',
    inside: opening('panel: top, shape: round, diameter: 60, from: { left: 100, front: 60 }'),
  },
  {
    rule: 'lipping-panel',
    what: 'no such panel',
    trips: lipping('edges: [front], on: [shelf 3, sides]'),
    severity: 'stop',
    message: 'a lipping is asked for on "shelf 3", and this module has no such panel',
    fix: 'name one of left side, right side, top, bottom, shelf 1, shelf 2; did you mean "shelf 1"?',
    inside: lipping('edges: [front], on: [shelf 2, sides]'),
  },
  {
    rule: 'lipping-panel',
    what: 'no such edge',
    trips: lipping('edges: [left], on: [top, left side]'),
    severity: 'warn',
    message: '"left side" has no left edge to be lipped',
    fix: 'name some of its edges: top, bottom, front, back, or leave it out of `on`',
    inside: lipping('edges: [left], on: [top]'),
  },
  {
    rule: 'lipping-size',
    // 2 × 25 is all of the rail.
    trips: rails(25),
    severity: 'stop',
    message: 'the lippings of front top rail, 25 and 25 mm, leave nothing of its 50 mm to be cut',
    fix: 'take a thinner lipping, or leave this panel out',
    inside: rails(24.9),
  },
]
