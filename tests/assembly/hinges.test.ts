import { describe, expect, test } from 'vitest'
import { doorMass, hingeHeights, hingesNeeded, solveOverlay } from '../../src/assembly/index.ts'
import { type CupHinge, findItem } from '../../src/hardware/index.ts'
import { built, panelOf, places, ROUND_STOCK } from '../support/define.ts'

function hinge(id: string, plateHeights?: readonly number[], base?: number): CupHinge {
  const item = findItem(id)
  if (item?.kind !== 'cup hinge') throw new Error(`${id} is no hinge`)
  return { ...item, ...(plateHeights && { plateHeights }), ...(base !== undefined && { base }) }
}

describe('overlay = K + C − H', () => {
  // Entries (C, H) → overlay of a hinge catalogue's planning table, page 15
  // (mediacenter.grass.eu/Produktkataloge/Hinges/EN/15): K 15, 5.5 and −4 by crank; K 12 from the same formula in a
  // small-hinge catalogue (hettich.com/blaetterkataloge/Minimat_hmv_2011, page 9).
  test.each([
    [15, 7, -2, 24],
    [15, 5, 0, 20],
    [15, 4, 0, 19],
    [15, 7, 3.5, 18.5],
    [15, 3, 3, 15],
    [12, 7, -2, 21],
    [5.5, 7, -2, 14.5],
    [5.5, 7, 3.5, 9],
    [5.5, 3, 0, 8.5],
    [-4, 4, 0, 0],
    [-4, 6, 2, 0],
    [-4, 5, 2, -1],
    [-4, 7, 3.5, -0.5],
    [-4, 3, 3, -4],
  ])('K %d, C %d, H %d gives overlay %d', (base, cupDistance, plateHeight, overlay) => {
    expect(solveOverlay(hinge('hinge 35 full', [plateHeight], base), overlay)).toEqual({ plateHeight, cupDistance })
  })

  test('18 board with a reveal of 1.5: overlay 16.5', () => {
    // C = 16.5 − 15 + H = 1.5 + H. H 2: 3.5; H 3: 4.5; H 3.5: 5.0, which is the usual cup distance.
    expect(solveOverlay(hinge('hinge 35 full'), 16.5)).toEqual({ plateHeight: 3.5, cupDistance: 5 })
  })

  test('no plate: the nearest overlay that there is', () => {
    // Largest overlay: 15 + 7 − (−2) = 24; smallest: 15 + 3 − 3.5 = 14.5.
    expect(solveOverlay(hinge('hinge 35 full'), 26)).toEqual({ nearest: 24 })
    expect(solveOverlay(hinge('hinge 35 full'), 9)).toEqual({ nearest: 14.5 })
  })
})

describe('hinges a door', () => {
  test('mass = area × thickness × density', () => {
    // 400 × 700 × 18 mm at 685 kg/m³: 0.4 × 0.7 × 0.018 × 685 = 3.4524 kg.
    expect(doorMass(700, 400, 18, 685)).toBeCloseTo(3.4524, 6)
  })

  // Number by mass and height: hinge catalogue, page 156 (mediacenter.grass.eu/Produktkataloge/Hinges/DE/156);
  // heights are the marks of its chart. Masses worked by hand: 11.10 kg and 10.54 kg.
  test.each([
    [700, 400, 2],
    [1500, 600, 4],
    [1900, 450, 4],
  ])('an 18 mm birch door %d × %d takes %d', (height, width, hinges) => {
    expect(hingesNeeded(height, width, doorMass(height, width, 18, 685))).toBe(hinges)
  })

  test('wider than 600 takes one more (ea.blum.com/en/number-of-hinges: from 600 to 650)', () => {
    expect(hingesNeeded(800, 600, 4)).toBe(2)
    expect(hingesNeeded(800, 640, 4)).toBe(3)
  })

  test('beyond 22 kg or 2500 mm there is no number', () => {
    expect(hingesNeeded(2600, 500, 20)).toBeUndefined()
    expect(hingesNeeded(2000, 500, 23)).toBeUndefined()
  })

  test('heights: 80 from both ends, the rest evenly between', () => {
    expect(hingeHeights(0, 1300, 3, { end: 80, room: 29.5 })).toEqual([80, 650, 1220])
  })

  test('heights on a grid: the plate holes 16 above and below fall on pin holes, ends never beyond 80', () => {
    // Grid 0, 32, 64 …; middles at 16, 48, 80, 112 … Door from 1.5: 81.5 → 80 is 78.5 from its end. Upper end 798.5:
    // 718.5 → the next middle up is 720 (16 + 22 × 32), 78.5 from the end.
    // A low door, 200: a quarter, 50 and 150. On a grid with middles at 16, 48, 80, 112, 144, 176: 48 and 176 would leave
    // 24 at the upper end, less than the 29.5 that the cup needs, so 144.
    expect(hingeHeights(0, 200, 2, { end: 80, room: 29.5 })).toEqual([50, 150])
    expect(hingeHeights(0, 200, 2, { end: 80, room: 29.5 }, { datum: 0, pitch: 32 })).toEqual([48, 144])
    expect(hingeHeights(1.5, 798.5, 2, { end: 80, room: 29.5 }, { datum: 0, pitch: 32 })).toEqual([80, 720])
  })
})

// A door on one opening of a module 500 wide, 500 deep, 720 high, 18 mm board. Carcase front 20 behind the module's.
const box = (front: string, extra = ''): string => `${ROUND_STOCK}
modules:
  box:
    width: 500
    depth: 500
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
      front: { ${front} }
      ${extra}
`

describe('cup and plate positions', () => {
  test('full overlay, hung left', () => {
    const of = built(box('kind: door'))
    const door = panelOf(of, 'box/door')
    // Door 717 × 497; overlay 16.5: plate 3.5, C 5, so cups 5 + 17.5 = 22.5 from the hinge edge (y = 0), 80 from the ends.
    expect(places(door, 'A', 'hinge cup')).toEqual(['80 22.5', '637 22.5'])
    // 45/9.5: dowels 9.5 further in, 22.5 to each side.
    expect(places(door, 'A', 'hinge dowel')).toEqual(['57.5 32', '102.5 32', '614.5 32', '659.5 32'])
    // The door's lower end lies 1.5 above the module's, so hinges at z 81.5 and 638.5; plate holes 16 off, 37 from the
    // front edge of the side. On the left side x runs down from its upper end: x = 720 − z.
    const side = panelOf(of, 'box/left-side')
    expect(places(side, 'A', 'hinge plate')).toEqual(['65.5 37', '97.5 37', '622.5 37', '654.5 37'])
    expect(panelOf(of, 'box/right-side').bores.filter((bore) => bore.purpose.includes('hinge'))).toEqual([])
  })

  test('full overlay, hung right: the mirror of hung left', () => {
    const left = built(box('kind: door, hang: left'))
    const right = built(box('kind: door, hang: right'))
    const mirrored = places(panelOf(left, 'box/left-side'), 'A', 'hinge plate').map((place) => {
      const [x, y] = place.split(' ').map(Number)
      return `${720 - (x ?? 0)} ${y}`
    })
    expect(places(panelOf(right, 'box/right-side'), 'A', 'hinge plate')).toEqual(mirrored.reverse())
    // Door 497 wide, hinge edge at y = 497.
    expect(places(panelOf(right, 'box/door'), 'A', 'hinge cup')).toEqual(['80 474.5', '637 474.5'])
  })

  test('inset', () => {
    const of = built(box('kind: door, lay: inset, inset gap: 2'))
    // Opening 464 × 684, gap 2 all round: 680 × 460. Overlay −2: C = −2 + 4 + H = 2 + H; H 3: C 5. Cups at 22.5.
    const door = panelOf(of, 'box/door')
    expect([door.length, door.width]).toEqual([680, 460])
    expect(places(door, 'A', 'hinge cup')).toEqual(['80 22.5', '600 22.5'])
    // Plate line 37 + door 18 + 1.5 = 56.5 (S10); the door starts at z 20: hinges at 100 and 620, x = 720 − z.
    expect(places(panelOf(of, 'box/left-side'), 'A', 'hinge plate')).toEqual([
      '84 56.5',
      '116 56.5',
      '604 56.5',
      '636 56.5',
    ])
  })

  test('half overlay at a shared partition', () => {
    const of = built(`${ROUND_STOCK}
modules:
  box:
    width: 818
    depth: 500
    carcase height: 720
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside:
      side by side:
        - front: { kind: door, hang: right }
        - front: { kind: door, hang: left }
`)
    // Openings (818 − 3 × 18) / 2 = 382. Partition from x 400 to 418. Overlay there (18 − 3) / 2 = 7.5, outside 16.5:
    // doors 382 + 7.5 + 16.5 = 406 wide, 3 apart. Half crank: C = 7.5 − 5.5 + H = 2 + H; H 3: C 5.
    const first = panelOf(of, 'box/door-1')
    const second = panelOf(of, 'box/door-2')
    expect([first.width, second.width]).toEqual([406, 406])
    expect(places(first, 'A', 'hinge cup')).toEqual(['80 383.5', '637 383.5'])
    // Screws 13 deep from both faces would meet in 18 mm, so the second door has its hinges 16 nearer to its ends:
    // 80 − 16 = 64, 637 + 16 = 653.
    expect(places(second, 'A', 'hinge cup')).toEqual(['64 22.5', '653 22.5'])
    // The partition stands between top and bottom, so its upper end lies at 702, and x = 702 − z on face A. First door,
    // from z 1.5: 81.5 ± 16 and 638.5 ± 16; second door: 65.5 ± 16 and 654.5 ± 16.
    const partition = panelOf(of, 'box/partition-1')
    expect(places(partition, 'A', 'hinge plate')).toEqual(['31.5 37', '63.5 37', '620.5 37', '652.5 37'])
    expect(places(partition, 'B', 'hinge plate')).toEqual(['47.5 37', '79.5 37', '604.5 37', '636.5 37'])
    expect(of.findings).toEqual([])
  })

  test('a partition of 31 takes plates at the same heights from both faces: 13 + 13 and 5 between; one of 30 does not', () => {
    const cups = (thickness: number): string[] =>
      places(
        panelOf(
          built(`${ROUND_STOCK}
  thick: { thickness: ${thickness} }
modules:
  box:
    width: 818
    depth: 500
    carcase height: 720
    stock: board
    carcase: { back: none }
    inside:
      dividers: { stock: thick, joint: dowel }
      side by side: [{ front: { kind: door, hang: right } }, { front: { kind: door, hang: left } }]
`),
          'box/door-2',
        ),
        'A',
        'hinge cup',
      ).map((place) => place.split(' ')[0] ?? '')
    expect(cups(31)).toEqual(['80', '637'])
    expect(cups(30)).toEqual(['64', '653'])
  })

  test('a pair splits what is left after the middle gap', () => {
    // Carcase 304 wide: reveal 2 and gap 4: (304 − 2 × 2 − 4) / 2 = 148 ("Frameless cabinet door dimensions",
    // woodweb.com); reveal 1.5 and gap 3: 149.
    const pair = (front: string): number[] => {
      const of = built(box(`kind: pair, ${front}`).replace('width: 500', 'width: 304'))
      return ['box/door-left', 'box/door-right'].map((id) => panelOf(of, id).width)
    }
    expect(pair('reveal: 2, gap: 4')).toEqual([148, 148])
    expect(pair('reveal: 1.5, gap: 3')).toEqual([149, 149])
  })

  test('plates share the holes of a pin row on their line', () => {
    const of = built(box('kind: door', 'loose shelves: 1'))
    const side = panelOf(of, 'box/left-side')
    // Pins at z = 32 k; the door's ends 1.5 and 718.5. Lower hinge at most 81.5 → 80 (holes at 64 and 96); upper at
    // least 638.5 → 656 (640 and 672). Pins are kept 64 from the bottom's upper face (82) and the top's underside (638).
    const shared = side.bores.filter((bore) => bore.uses.length === 2)
    expect(shared.map((bore) => 720 - bore.at[0])).toEqual([96])
    expect(shared[0]?.purpose).toBe('shelf pin, hinge plate')
    expect(places(side, 'A', 'hinge plate').map((place) => 720 - Number(place.split(' ')[0]))).toEqual([
      672, 640, 96, 64,
    ])
  })
})

test('both doors of a pair take the same plate where two would do equally well', () => {
  // Overlay 17.7 − 0.2 = 17.5 = 15 + C − H: H 2 with C 4.5 and H 3 with C 5.5 are both half a millimetre off the usual 5;
  // the lower plate is taken, and float noise does not decide it.
  const of = built(`storyrod: 1
stock: { board: { thickness: [17.6, 17.8] } }
modules:
  box:
    { width: 400, depth: 400, carcase height: 500, stock: board, inside: { front: { kind: pair, reveal: 0.2, gap: 1 } } }
`)
  const notes = of.assembly.hardware.filter((piece) => piece.item.kind === 'cup hinge').map((piece) => piece.note)
  expect([...new Set(notes)]).toEqual(['plate height 2 mm, cup distance 4.5 mm, overlay 17.5 mm'])
})
