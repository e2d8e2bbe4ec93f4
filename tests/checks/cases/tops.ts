import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const topped = (keys: string): string => `${ROUND_STOCK}
  top 27: { thickness: 27, sheet: [2500, 1250] }
  top 20: { thickness: 20, sheet: [2500, 1250] }
  top 16: { thickness: 16, sheet: [2500, 1250] }
  top 12: { thickness: 12, sheet: [2500, 1250] }
common: { width: 800, depth: 600, working height: 900, stock: board, carcase: { back: { sits: applied, stock: thin } } }
modules:
  router: { ${keys} }
`
// A plate of 12 × 9 inches, rounded.
const PLATE = 'width: 306, depth: 229, corner radius: 9.5, ledge: { width: 15, depth: 9.5 }'
const machine = (keys: string, more = 'carcase: { top: none }', stock = 'top 27'): string =>
  topped(`machine top: { stock: ${stock}, ${keys} }, ${more}`)
const SPLIT = 'carcase: { top: none }, inside: { side by side: [{}, {}] }'
const slot = (from: number): string => `{ kind: track, along: width, width: 19, depth: 9.5, from front: ${from} }`
const port = (keys: string, height = 160): string => machine(`chamber: { height: ${height}, port: { ${keys} } }`)

export const topCases: readonly RuleCase[] = [
  {
    rule: 'top-screws',
    what: 'one that comes out',
    // At least 18 + 8 = 26; at most 18 + 27 less the skin of 3 and 1 that the pilot goes deeper: 41.
    trips: topped('worktop: { stock: top 27, fix: screw 4.5x45 }'),
    severity: 'stop',
    message:
      'router: through the top of 18 mm into the worktop of 27 mm, a screw 4.5x45 does not both hold and leave 3 mm of wood over it',
    fix: 'take a screw between 26 and 41 mm long: screw 4x40',
    inside: topped('worktop: { stock: top 27, fix: screw 4x40 }'),
  },
  {
    rule: 'top-screws',
    what: 'a top too thin',
    // The shortest that bites is 30 long: 30 + 1 + 3 − 18 = 16.
    trips: topped('worktop: { stock: top 12 }'),
    severity: 'stop',
    message:
      'router: through the top of 18 mm into the worktop of 12 mm, no screw of the catalogue does both hold and leave 3 mm of wood over it',
    fix: 'use a top of 16 mm or more, or `fix: none` and fasten it by hand',
    inside: topped('worktop: { stock: top 16 }'),
  },
  {
    rule: 'ledge-narrow',
    // 8 + 2 × 3 = 14.
    trips: machine(`insert: { ${PLATE.replace('width: 15', 'width: 13')} }`),
    severity: 'stop',
    message: 'router: the ledge is 13 mm wide; a bore of 8 mm for a levelling screw M6 needs 14 mm',
    fix: 'make the ledge 14 mm wide, or set `levelling screws: none`',
    inside: machine(`insert: { ${PLATE.replace('width: 15', 'width: 14')} }`),
  },
  {
    rule: 'ledge-thin',
    // 20 − 9.5 = 10.5; an insert M6 is 12 long, M5 10.
    trips: machine(`insert: { ${PLATE} }`, 'carcase: { top: none }', 'top 20'),
    severity: 'warn',
    message:
      'router: 10.5 mm of wood under the ledge is less than the threaded insert of a levelling screw M6 is long, 12 mm',
    fix: 'make the top 21.5 mm thick or more, or glue a block under the ledge, or take a levelling screw M5: 10 mm',
    inside: machine(`insert: { ${PLATE.replace('depth: 9.5', 'depth: 8')} }`, 'carcase: { top: none }', 'top 20'),
  },
  {
    rule: 'insert-carcase',
    what: 'over a middle partition',
    // Centred: the plate from (800 − 306) / 2 = 247 to 553, the opening from 262 to 538. The partition stands from 391 to
    // 409, 18 thick. With the levelling screws in its ledge the whole plate and its play of 0.25 keep clear: from 409.25, or
    // up to 390.75, as far the other way.
    trips: machine(`insert: { ${PLATE} }`, SPLIT),
    severity: 'stop',
    message: 'router: the opening under the insert lies 18 mm over partition 1',
    fix: 'the plate can lie `from left: 409.3 mm`',
    inside: machine(`insert: { ${PLATE}, from left: 394 }`, SPLIT),
  },
  {
    rule: 'insert-carcase',
    what: 'a top that it does not fit into',
    // The carcase's top lies from 18; its way through, the plate and 0.25, begins at 17.75.
    trips: machine(`insert: { ${PLATE}, from left: 18 }`, 'carcase: { top: between }'),
    severity: 'stop',
    message: 'router: the way through for the insert does not lie whole on the top of the carcase',
    // Pilots, 5 thick, go 35 into the top's edge, up to 53; with 2.5, 10 of room and the play of 0.25: 65.75.
    fix: 'the plate can lie `from left: 65.8 mm`',
    inside: machine(`insert: { ${PLATE}, from left: 18.3 }`, 'carcase: { top: between }'),
  },
  {
    rule: 'slot-wall',
    // The recess begins at 180 − 0.25 = 179.75: 157 + 19 leaves 3.75; 179.75 − 5 − 19 = 155.75.
    trips: machine(`insert: { ${PLATE}, from front: 180 }, slots: [${slot(157)}]`),
    severity: 'warn',
    message: 'router: the track slot 1 leaves 3.75 mm of wood beside the insert; 5 mm is wanted',
    fix: 'set its `from front: 155.7 mm`',
    inside: machine(`insert: { ${PLATE}, from front: 180 }, slots: [${slot(155.75)}]`),
  },
  {
    rule: 'slot-wall',
    what: 'two slots',
    // 100 + 19 = 119 to 121: 2. 119 + 5 = 124.
    trips: machine(`slots: [${slot(100)}, ${slot(121)}]`),
    severity: 'stop',
    message: 'router: the track slot 2 leaves 2 mm of wood beside the track slot 1; 5 mm is wanted',
    fix: 'set its `from front: 124 mm`',
    inside: machine(`slots: [${slot(100)}, ${slot(124)}]`),
  },
  {
    rule: 'port-fit',
    what: 'meets the floor',
    // A radius of 50, 40 above the floor.
    trips: port('diameter: 100, from bottom: 40'),
    severity: 'stop',
    message: 'router: the port, 100 mm across, meets the chamber floor by 10 mm',
    fix: 'set its `from bottom: 50 mm`',
    inside: port('diameter: 100, from bottom: 50'),
  },
  {
    rule: 'port-fit',
    what: 'larger than the chamber is high',
    // Centred in 90: 45 to the floor and to the upper edge, where 10 of wood are to be left.
    trips: port('diameter: 100', 90),
    severity: 'stop',
    message: 'router: the port, 100 mm across, meets the chamber floor by 5 mm',
    fix: 'make it 70 mm across, or the chamber higher',
    inside: port('diameter: 90', 90),
  },
]
