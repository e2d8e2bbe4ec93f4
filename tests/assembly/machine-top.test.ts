import { describe, expect, test } from 'vitest'
import { boardBox } from '../../src/assembly/index.ts'
import type { Cutout, Panel } from '../../src/panel/index.ts'
import { built, panelOf, places } from '../support/define.ts'

const HEAD = `
storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250] }
  thin: { thickness: 6, sheet: [2500, 1250] }
  top 27: { thickness: 27, sheet: [2500, 1250] }
  top 20: { thickness: 20, sheet: [2500, 1250] }
common:
  width: 800
  depth: 600
  working height: 900
  stock: board
  base: { casters: caster 75, inset: 100 }
  carcase: { top: none, back: { sits: applied, stock: thin } }
modules:
`
// A plate of 12 × 9 inches, rounded: 306 × 229 × 9.5.
const INSERT = 'width: 306, depth: 229, corner radius: 9.5, ledge: { width: 15, depth: 9.5 }'
const machine = (keys: string, more = ''): string =>
  `${HEAD}  router:\n    machine top: { stock: top 27, ${keys} }\n${more}`

const cutout = (panel: Panel, id: string): Cutout => {
  const found = panel.cutouts.find((one) => one.id === id)
  if (found === undefined) throw new Error(`${panel.id} has no ${id}`)
  return found
}

/** Least and greatest x and y of a path; round corners end on its straight sides. */
function span({ path }: Cutout): number[] {
  const xs = path.map(({ at }) => at[0])
  const ys = path.map(({ at }) => at[1])
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)].map((v) => Math.round(v * 1e6) / 1e6)
}

const messages = (text: string, rule: string) =>
  built(text)
    .findings.filter((finding) => finding.rule === rule)
    .map(({ severity, message, fix }) => [severity, message, fix])

describe('an insert', () => {
  const one = built(machine(`overhang: { left: 10, right: 10, front: 20 }, insert: { ${INSERT}, from front: 180 }`))
  const top = panelOf(one, 'router/machine-top')

  test('the recess is the plate and 0.25 each side, the opening the plate less the ledge: 276 × 199', () => {
    // Top: 820 × 620. Centred: (820 − 306) / 2 = 257 to 563; from front 180 to 409.
    expect([top.length, top.width]).toEqual([820, 620])
    const recess = cutout(top, 'insert-recess')
    expect(span(recess)).toEqual([256.75, 563.25, 179.75, 409.25])
    expect([recess.depth, recess.through, recess.face]).toEqual([9.5, false, 'A'])
    const opening = cutout(top, 'insert-opening')
    // 257 + 15 = 272, + 276 = 548; 180 + 15 = 195, + 199 = 394.
    expect(span(opening)).toEqual([272, 548, 195, 394])
    expect(opening.through).toBe(true)
  })

  test('corners have the radius of the plate: quarter rounds, four of them', () => {
    for (const id of ['insert-recess', 'insert-opening']) {
      const { path } = cutout(top, id)
      const arcs = path.filter(({ bulge }) => bulge !== 0)
      // tan(90° / 4)
      expect(arcs.map(({ bulge }) => Math.round(bulge * 1e6) / 1e6)).toEqual(Array(4).fill(0.414214))
      for (const [k, { at, bulge }] of path.entries()) {
        if (bulge === 0) continue
        const next = path[(k + 1) % path.length]?.at ?? at
        // A quarter round of 9.5 has its ends 9.5 apart both ways.
        expect([Math.abs(next[0] - at[0]), Math.abs(next[1] - at[1])].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([
          9.5, 9.5,
        ])
      }
    }
  })

  test('levelling screws in the middle of the ledge, four and two in the middle of the long sides', () => {
    // y: 180 + 7.5 and 409 − 7.5; x: in from the corners by the radius, 9.5: 266.5, 553.5; 306 is longer than 250: 410.
    expect(places(top, 'A', 'levelling screw')).toEqual(
      [266.5, 410, 553.5].flatMap((x) => [187.5, 401.5].map((y) => `${x} ${y}`)),
    )
    const bore = top.bores.find((hole) => hole.purpose === 'levelling screw')
    // Placed on the ledge, 9.5 below the upper face; a through hole is one hole from face to face, drilled before the
    // recess or after it.
    expect([bore?.at[2], bore?.depth, bore?.through, bore?.diameter]).toEqual([0, 27, true, 8])
  })

  test('a round plate has one in the middle of each side', () => {
    // 200 across in a top of 800 × 600: 300 to 500 and 200 to 400; 7.5 in: 307.5, 492.5, 207.5, 392.5.
    const round = built(
      machine('insert: { width: 200, depth: 200, corner radius: 100, ledge: { width: 15, depth: 9.5 } }'),
    )
    expect(places(panelOf(round, 'router/machine-top'), 'A', 'levelling screw')).toEqual([
      '307.5 300',
      '400 207.5',
      '400 392.5',
      '492.5 300',
    ])
  })

  test('a long side front to back has one in its middle, too; a short one has corners alone', () => {
    // 200 × 300 in 800 × 600: 300 to 500 and 150 to 450. Corners at 300 + 9.5 and 500 − 9.5, 157.5 and 442.5.
    const deep = built(
      machine('insert: { width: 200, depth: 300, corner radius: 9.5, ledge: { width: 15, depth: 9.5 } }'),
    )
    expect(places(panelOf(deep, 'router/machine-top'), 'A', 'levelling screw')).toEqual([
      '307.5 300',
      '309.5 157.5',
      '309.5 442.5',
      '490.5 157.5',
      '490.5 442.5',
      '492.5 300',
    ])
  })

  test('a ledge too narrow for bore and walls, and wood too thin for the threaded insert', () => {
    // 8 + 2 × 3 = 14.
    const narrow = INSERT.replace('width: 15', 'width: 13')
    expect(messages(machine(`insert: { ${narrow} }`), 'ledge-narrow')).toEqual([
      [
        'stop',
        'router: the ledge is 13 mm wide; a bore of 8 mm for a levelling screw M6 needs 14 mm',
        'make the ledge 14 mm wide, or set `levelling screws: none`',
      ],
    ])
    expect(messages(machine(`insert: { ${narrow}, levelling screws: levelling screw M5 }`), 'ledge-narrow')).toEqual([])
    expect(messages(machine(`insert: { ${narrow}, levelling screws: none }`), 'ledge-narrow')).toEqual([])
    // 20 − 9.5 = 10.5.
    expect(messages(machine(`insert: { ${INSERT} }`).replace('top 27,', 'top 20,'), 'ledge-thin')).toEqual([
      [
        'warn',
        'router: 10.5 mm of wood under the ledge is less than the threaded insert of a levelling screw M6 is long, 12 mm',
        'make the top 21.5 mm thick or more, or glue a block under the ledge, or take a levelling screw M5: 10 mm',
      ],
    ])
  })

  test('a full top of the carcase is cut through under the plate, as wide as the recess', () => {
    const full = built(
      machine(`insert: { ${INSERT}, from left: 150 }`, '    carcase: { top: between }\n').replace(
        'width: 800',
        'width: 700',
      ),
    )
    // Top 700 × 600: plate 150 to 456 and (600 − 229) / 2 = 185.5 to 414.5. The carcase top is 664 wide, begins at 18
    // and lies face down: x from 682 − 456.25 = 225.75 to 682 − 149.75 = 532.25.
    const way = cutout(panelOf(full, 'router/top'), 'insert-way')
    expect(span(way)).toEqual([225.75, 532.25, 185.25, 414.75])
    expect(way.through).toBe(true)
    expect(full.findings.filter((finding) => finding.severity === 'stop')).toEqual([])
    // No screw from below comes up in the recess.
    for (const place of places(panelOf(full, 'router/machine-top'), 'B', 'screw pilot')) {
      const [x = 0, y = 0] = place.split(' ').map(Number)
      expect(x > 134 && x < 472 && y > 170 && y < 430).toBe(false)
    }
  })

  test('a panel under the opening is named', () => {
    // From left 10: the opening begins at 25, beyond the side of 18; from left 0.5: at 15.5, over it.
    expect(messages(machine(`insert: { ${INSERT}, from left: 10 }`), 'insert-carcase')).toEqual([])
    expect(messages(machine(`insert: { ${INSERT}, from left: 0.5 }`), 'insert-carcase')).toEqual([
      [
        'stop',
        'router: the opening under the insert lies 2.5 mm over the left side',
        // The whole plate, and 0.25, beside the side of 18, so that its levelling screws come out beside it, too.
        'the plate can lie `from left: 18.3 mm`',
      ],
    ])
  })
})

describe('slots', () => {
  test('run where they are asked, open at the edges or stopped with round ends', () => {
    const top = panelOf(
      built(
        machine(`overhang: { front: 20 }, insert: { ${INSERT}, from front: 180 }, slots: [
          { kind: track, along: width, width: 19, depth: 9.5, from front: 100 },
          { kind: fence, along: depth, width: 19, depth: 12, from left: 60, from front: 150, length: 300 }]`),
      ),
      'router/machine-top',
    )
    // Top 800 × 620.
    expect(
      top.grooves.map(({ face, min, max, depth, roundEnds, purpose }) => [face, min, max, depth, roundEnds, purpose]),
    ).toEqual([
      ['A', [0, 100], [800, 119], 9.5, false, 'track slot 1'],
      ['A', [60, 150], [79, 450], 12, true, 'fence slot 2'],
    ])
  })

  test('keep clear of the insert and of each other', () => {
    const slot = (from: number) => `{ kind: track, along: width, width: 19, depth: 9.5, from front: ${from} }`
    // The recess begins at 179.75: 155.75 + 19 leaves 5, 157 + 19 leaves 3.75, 158 leaves 2.75, 170 runs into it.
    const at = (...from: number[]) =>
      machine(`insert: { ${INSERT}, from front: 180 }, slots: [${from.map(slot).join(', ')}]`)
    expect(messages(at(155.75), 'slot-wall')).toEqual([])
    expect(messages(at(157), 'slot-wall')).toEqual([
      [
        'warn',
        'router: the track slot 1 leaves 3.75 mm of wood beside the insert; 5 mm is wanted',
        'set its `from front: 155.7 mm`',
      ],
    ])
    expect(messages(at(158), 'slot-wall')[0]?.[0]).toBe('stop')
    expect(messages(at(170), 'slot-wall')[0]?.[1]).toBe('router: the track slot 1 runs into the insert; 5 mm is wanted')
    expect(messages(at(100, 121), 'slot-wall')[0]?.[1]).toBe(
      'router: the track slot 2 leaves 2 mm of wood beside the track slot 1; 5 mm is wanted',
    )
  })

  test('screws from below move off a slot', () => {
    // Slot from 40 to 59 over the line of screws at 50: with 15 each side, 25 to 74 is shut. 74 is 24 away, 25 is 25.
    const moved = built(
      machine(
        'slots: [{ kind: track, along: width, width: 19, depth: 20, from front: 40 }]',
        '    carcase: { top: between }\n',
      ),
    )
    const ys = places(panelOf(moved, 'router/machine-top'), 'B', 'screw pilot').map((place) =>
      Number(place.split(' ')[1]),
    )
    expect(Math.min(...ys)).toBe(74)
    expect(moved.findings.filter((finding) => finding.rule === 'bore-in-groove')).toEqual([])
  })
})

describe('a chamber', () => {
  // Carcase 900 − 100 − 27 = 773 high; chamber 160: the floor's upper face at 613, its underside at 595.
  const one = built(
    machine(
      `insert: { ${INSERT} }, chamber: { height: 160, port: { diameter: 100, from left: 150, from bottom: 60 } }`,
      '    inside: { front: { kind: pair }, side by side: [{}, {}] }\n',
    ),
  )

  test('has a floor between the sides and a strip at the front; the inside ends under it', () => {
    // The door is 18 thick with a gap of 2: the carcase begins at 20 and ends before the back at 594.
    expect(boardBox(panelOf(one, 'router/chamber-floor'))).toEqual({ min: [18, 20, 595], max: [782, 594, 613] })
    expect(boardBox(panelOf(one, 'router/chamber-front'))).toEqual({ min: [18, 20, 613], max: [782, 38, 773] })
    const partition = boardBox(panelOf(one, 'router/partition-1'))
    expect([partition.min[2], partition.max[2]]).toEqual([18, 595])
    // The doors cover the floor's edge less the reveal of 1.5: 613 − 1.5.
    expect(boardBox(panelOf(one, 'router/door-left')).max[2]).toBe(611.5)
  })

  test('floor and strip are fastened to the sides, the floor to the back', () => {
    const joined = (tip: string) => one.assembly.hardware.filter((piece) => piece.series.endsWith(tip)).length
    // Floor 574 deep: 474 / 160: 4 a side. Strip 160: 60 / 160: 2 a side.
    expect(joined('-side+chamber-floor')).toBe(8)
    expect(joined('-side+chamber-front')).toBe(4)
    expect(joined('back+chamber-floor')).toBeGreaterThan(3)
  })

  test('the port goes through the back where it is asked', () => {
    // X = 18 + 150 = 168, Z = 613 + 60 = 673. The back is seen from inside, x up, y from the right: (673, 800 − 168 = 632). The two
    // half rounds of a circle meet at its ends in y: 632 ∓ 50.
    const port = cutout(panelOf(one, 'router/back'), 'port')
    expect(span(port)).toEqual([673, 673, 582, 682])
    expect(port.through).toBe(true)
    // A circle is two half rounds, bulge 1.
    expect(port.path.map(({ bulge }) => bulge)).toEqual([1, 1])
    // Centred: 400 and 613 + 80 = 693.
    const centred = built(machine('chamber: { height: 160, port: { diameter: 100 } }'))
    expect(span(cutout(panelOf(centred, 'router/back'), 'port'))).toEqual([693, 693, 350, 450])
    expect(centred.findings.filter((finding) => finding.rule === 'port-fit')).toEqual([])
  })

  test('a port that does not fit is said with what it meets', () => {
    const port = (keys: string, height = 160) =>
      messages(machine(`chamber: { height: ${height}, port: { ${keys} } }`), 'port-fit')
    // 40 above the floor, radius 50.
    expect(port('diameter: 100, from bottom: 40')).toEqual([
      ['stop', 'router: the port, 100 mm across, meets the chamber floor by 10 mm', 'set its `from bottom: 50 mm`'],
    ])
    expect(port('diameter: 100, from left: 45')[0]?.[1]).toBe(
      'router: the port, 100 mm across, meets the left side by 5 mm',
    )
    expect(port('diameter: 100', 90).map(([, message]) => message)).toEqual([
      'router: the port, 100 mm across, meets the chamber floor by 5 mm',
      'router: the port, 100 mm across, meets the upper edge of the back by 5 mm',
    ])
    expect(port('diameter: 100', 100)).toEqual([])
  })
})
