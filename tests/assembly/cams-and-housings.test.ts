import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dowelOffsets } from '../../src/assembly/joints/cams.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

const box = (carcase: string, inside = '', stock = ROUND_STOCK): string => `${stock}
modules:
  box:
    { width: 600, depth: 400, carcase height: 500, stock: board, carcase: { ${carcase}, back: none }, inside: { ${inside} } }
`

const rounded = (values: readonly number[]): number[] => values.map((value) => Math.round(value * 1000) / 1000 + 0)

describe('cam and dowel', () => {
  // Housing 15, depth 13.5 in 18 mm boards, 34 from the joint, bolt bore 8, bolt 5 × 12 in the face: cam fitting
  // catalogues, from memory. One 8 mm dowel 32 mm from each cam: common practice, no source.
  const of = built(box('joint: cam and dowel'))
  const bottom = panelOf(of, 'box/bottom')
  const side = panelOf(of, 'box/left-side')

  test('cams on the underside, 34 from the ends, at the joint places', () => {
    // Bottom 564 × 400. Joint 400 long: end 50, spacing 160 → fasteners at 50, 200, 350.
    const cams = bottom.bores.filter((bore) => bore.purpose === 'cam')
    expect(cams.map((bore) => [bore.surface, ...rounded(bore.at), bore.diameter, bore.depth])).toEqual([
      ['B', 34, 50, -18, 15, 13.5],
      ['B', 34, 200, -18, 15, 13.5],
      ['B', 34, 350, -18, 15, 13.5],
      ['B', 530, 50, -18, 15, 13.5],
      ['B', 530, 200, -18, 15, 13.5],
      ['B', 530, 350, -18, 15, 13.5],
    ])
  })

  test('the bolt runs in the edge to the middle of the cam, and stands in the side on the same axis', () => {
    const edge = bottom.bores.filter((bore) => bore.purpose === 'cam bolt' && bore.surface === 'x0')
    expect(edge.map((bore) => [...rounded(bore.at), bore.diameter, bore.depth])).toEqual([
      [0, 50, -9, 8, 34],
      [0, 200, -9, 8, 34],
      [0, 350, -9, 8, 34],
    ])
    // The bottom's middle is 9 above the lower end of the side: x = 500 − 9 = 491.
    expect(places(side, 'A', 'cam bolt').filter((place) => place.startsWith('491'))).toEqual([
      '491 50',
      '491 200',
      '491 350',
    ])
    expect(side.bores.find((bore) => bore.purpose === 'cam bolt')).toMatchObject({ diameter: 5, depth: 12 })
  })

  test('a dowel 32 nearer the middle of each, and one after the cam in the middle', () => {
    // Offsets −150, 0, 150 from the middle (200): −118, 32, 118 → y = 82, 232, 318.
    expect(dowelOffsets([-150, 0, 150])).toEqual([-118, 32, 118])
    expect(places(bottom, 'x0', 'dowel')).toEqual(['0 82', '0 232', '0 318'])
    expect(places(side, 'A', 'dowel').filter((place) => place.startsWith('491'))).toEqual([
      '491 82',
      '491 232',
      '491 318',
    ])
  })

  test('two dowels that would come near each other are one between them', () => {
    // Cams at ±40: dowels at −8 and 8, 16 apart.
    expect(dowelOffsets([-40, 40])).toEqual([0])
  })

  test('in a board of 17.6 the bolt keeps the depth of its housing, 9 under the face with the cam', () => {
    const thin = built(box('joint: cam and dowel', '', ROUND_STOCK.replace('thickness: 18', 'thickness: 17.6')))
    const edge = panelOf(thin, 'box/bottom').bores.find((bore) => bore.purpose === 'cam bolt' && bore.surface === 'x0')
    // The cam is on face B (z = −17.6): −17.6 + 9 = −8.6. The dowels stay in the middle, at −8.8.
    expect(rounded(edge?.at ?? [])).toEqual([0, 50, -8.6])
    const dowel = panelOf(thin, 'box/bottom').bores.find((bore) => bore.purpose === 'dowel')
    expect(rounded(dowel?.at ?? [])).toEqual([0, 82, -8.8])
  })

  test('nothing is found wrong, and the board decides the housing', () => {
    expect(of.findings).toEqual([])
    const items = (thickness: number): string[] => [
      ...new Set(
        built(box('joint: cam and dowel', '', ROUND_STOCK.replace('thickness: 18', `thickness: ${thickness}`)))
          .assembly.hardware.map((piece) => piece.item.id)
          .filter((id) => id.startsWith('cam')),
      ),
    ]
    expect([15.8, 17.6, 18.9].map(items)).toEqual([['cam 15 for 16'], ['cam 15 for 18'], ['cam 15 for 19']])
  })

  test('in boards of any thickness that they suit, bolt and cam cross, and no hole leaves its board', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 205 }).map((tenths) => tenths / 10),
        fc.constantFrom('between', 'over'),
        fc.constantFrom('between', 'over'),
        (thickness, top, bottom) => {
          const any = built(
            box(
              `joint: cam and dowel, top: ${top}, bottom: ${bottom}`,
              '',
              ROUND_STOCK.replace('thickness: 18', `thickness: ${thickness}`),
            ),
          )
          expect(any.findings.filter((finding) => finding.rule.startsWith('mate-'))).toEqual([])
          expect(any.assembly.hardware.filter((piece) => piece.item.kind === 'cam fitting')).toHaveLength(12)
          for (const panel of any.panels) {
            for (const bore of panel.bores) {
              const [x, y, z] = bore.at
              expect([x >= 0, x <= panel.length, y >= 0, y <= panel.width, z <= 0, z >= -panel.thickness]).toEqual(
                Array(6).fill(true),
              )
              expect(bore.depth).toBeLessThan(bore.surface === 'A' || bore.surface === 'B' ? panel.thickness : 100)
            }
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  test('dowel: none leaves the cams alone', () => {
    const bare = built(box('joint: { fasten: cam and dowel, dowel: none }'))
    expect(panelOf(bare, 'box/bottom').bores.some((bore) => bore.purpose === 'dowel')).toBe(false)
  })
})

describe('housings', () => {
  // Depth a third of the board: common practice, no source. Slot for a board: measured thickness + 0.1 (glue).
  const inside = 'dividers: { joint: housing }, stacked: [{ size: 200 }, {}]'

  test('a fixed shelf is let 6 into sides of 18, and its groove runs out at both edges', () => {
    const of = built(box('joint: dowel', inside))
    const shelf = panelOf(of, 'box/fixed-shelf-1')
    // Opening 564 + 2 × 18 / 3 = 576.
    expect(shelf.length).toBeCloseTo(576, 9)
    expect(shelf.bores).toEqual([])
    expect(shelf.cutouts).toEqual([])
    const side = panelOf(of, 'box/left-side')
    // Clear height 464 from 18 to 482; the upper bay is 200: shelf from 264 to 282, its middle 273 above the foot:
    // x = 500 − 273 = 227 on the left side; groove 18.1 wide: 217.95 to 236.05.
    expect(side.grooves).toHaveLength(1)
    expect(side.grooves[0]).toMatchObject({ kind: 'groove', face: 'A', roundEnds: false })
    expect(rounded([...(side.grooves[0]?.min ?? []), ...(side.grooves[0]?.max ?? [])])).toEqual([
      217.95, 0, 236.05, 400,
    ])
    expect(side.grooves[0]?.depth).toBeCloseTo(6, 9)
    expect(of.findings).toEqual([])
  })

  test('stopped ends: the groove starts 12 from the front, round, and the shelf is notched behind its round', () => {
    const of = built(
      box('joint: dowel', 'dividers: { joint: { fasten: housing, stop front: 12 } }, stacked: [{ size: 200 }, {}]'),
    )
    const side = panelOf(of, 'box/right-side')
    // Right side: x from the foot up: 273 ± 9.05.
    expect(rounded([...(side.grooves[0]?.min ?? []), ...(side.grooves[0]?.max ?? [])])).toEqual([
      263.95, 12, 282.05, 400,
    ])
    expect(side.grooves[0]?.roundEnds).toBe(true)
    // The square corner stands behind the half circle: 12 + 18.1 / 2 + 0.5 = 21.55 deep, 6 along the shelf.
    const notches = panelOf(of, 'box/fixed-shelf-1').cutouts
    expect(notches.map((one) => [one.id, ...one.path.map((vertex) => rounded(vertex.at).join(' '))])).toEqual([
      ['notch-left-side-front', '0 0', '6 0', '6 21.55', '0 21.55'],
      ['notch-right-side-front', '570 0', '576 0', '576 21.55', '570 21.55'],
    ])
    expect(of.findings).toEqual([])
  })

  test('between two rails the grooves run out: a partition keeps what it has in both', () => {
    const joint = '{ fasten: housing, stop front: 10, stop rear: 12 }'
    const of = built(box('joint: dowel, top: rails', `dividers: { joint: ${joint} }, side by side: [{}, {}]`))
    // Rails 100 wide, seen from below: the front one from 0 to 100, the rear one from 300 to 400 of the depth.
    const alongOf = (key: string): number[] => {
      const [groove] = panelOf(of, key).grooves
      return rounded([groove?.min[1] ?? Number.NaN, groove?.max[1] ?? Number.NaN])
    }
    expect(alongOf('box/front-top-rail')).toEqual([10, 100])
    expect(alongOf('box/rear-top-rail')).toEqual([0, 88])
    expect(panelOf(of, 'box/partition-1').cutouts.map(({ id }) => id)).toEqual([
      'notch-bottom-front',
      'notch-bottom-rear',
      'notch-front-top-rail-front',
      'notch-rear-top-rail-rear',
    ])
    expect(of.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
  })

  test('the largest reading rules the groove, the mean the shelf', () => {
    const uneven = ROUND_STOCK.replace('thickness: 18', 'thickness: [17.8, 18.0, 18.2]')
    const of = built(box('joint: dowel', inside, uneven))
    const groove = panelOf(of, 'box/left-side').grooves[0]
    // 18.2 + 0.1.
    expect((groove?.max[0] ?? 0) - (groove?.min[0] ?? 0)).toBeCloseTo(18.3, 9)
    expect(panelOf(of, 'box/fixed-shelf-1').thickness).toBe(18)
  })

  test('behind an inset door the groove stops where the shelf begins', () => {
    const of = built(box('joint: dowel', `front: { kind: door, lay: inset }, ${inside}`))
    // Inset door 18 thick and 1.5 behind it (a hinge catalogue, planning page): the shelf begins at 19.5.
    expect(panelOf(of, 'box/left-side').grooves[0]?.min[1]).toBeCloseTo(19.5, 9)
    expect(panelOf(of, 'box/fixed-shelf-1').cutouts).toHaveLength(2)
    expect(of.findings.filter((finding) => finding.severity === 'stop')).toEqual([])
  })

  test('at the corners of a carcase a housing is a rebate', () => {
    const of = built(box('joint: housing, top: over'))
    // The bottom stands between the sides: 564 + 12. The sides go 6 up into the top: 500 − 18 + 6 = 488 long.
    expect(panelOf(of, 'box/bottom').length).toBeCloseTo(576, 9)
    expect(panelOf(of, 'box/left-side').length).toBeCloseTo(488, 9)
    // The top lies with its underside up, x from the right: the left side's rebate is at its far end.
    const top = panelOf(of, 'box/top').grooves
    expect(
      top.map((one) => [one.kind, ...rounded([...one.min, ...one.max]), Math.round(one.depth * 1e6) / 1e6]),
    ).toEqual([
      ['rebate', 581.95, 0, 600, 400, 6],
      ['rebate', 0, 0, 18.05, 400, 6],
    ])
    expect(of.findings).toEqual([])
  })

  test('fixed shelves housed in both faces of a partition leave wood between them, or it is said', () => {
    const both = (depth: string): string =>
      box(
        'joint: dowel',
        `side by side: [${[1, 2].map(() => `{ dividers: { joint: { fasten: housing, depth: ${depth} } }, stacked: [{ size: 200 }, {}] }`).join(', ')}]`,
      )
    // 18 − 2 × 6 = 6 left: enough. 18 − 2 × 8 = 2 left: less than 3 is worth a look; (18 − 3) / 2 = 7.5 each would do.
    expect(built(both('6')).findings).toEqual([])
    expect(built(both('8')).findings.filter((finding) => finding.rule === 'groove-wood')).toMatchObject([
      {
        severity: 'warn',
        message:
          'box, partition 1: the housing for the fixed shelf 2 and the housing for the fixed shelf 1 on the other face leave only 2 mm of wood between them',
        fix: 'cut each of them no deeper than 7.5 mm',
      },
    ])
  })

  test('one that is too short between its stops says what would do', () => {
    const of = built(
      box(
        'joint: dowel',
        'dividers: { joint: { fasten: housing, stop front: 200, stop rear: 170 } }, stacked: [{}, {}]',
      ),
    )
    const found = of.findings.find((finding) => finding.rule === 'housing-short')
    expect(found).toMatchObject({
      severity: 'stop',
      message:
        'the housing for fixed shelf 1 in the left side is only 30 mm long between its ends; 48.1 mm is the least',
      // 18.1 more, of 370: 200 and 170 each less by 4.892 %: 190.216 and 161.684.
      fix: 'set `stop front: 190.2 mm` and `stop rear: 161.6 mm`',
    })
  })
})
