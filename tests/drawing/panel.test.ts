import { describe, expect, test } from 'vitest'
import type { Circle, Drawing, Line, Text } from '../../src/drawing/index.ts'
import { facesDrawn, hasWork, panelDrawing } from '../../src/drawing/index.ts'
import { checkDrawing } from '../../src/writers/check-drawing.ts'
import { type BoreFigures, PATTERNS, panelOf, row } from './fixture.ts'

const OPTIONS = { patterns: PATTERNS, units: 'mm' } as const

const layer = (drawing: Drawing, name: string) => drawing.layers.find((one) => one.name === name)?.entities ?? []
const circles = (drawing: Drawing, name: string) =>
  layer(drawing, name).filter((one): one is Circle => one.kind === 'circle')
const lines = (drawing: Drawing, name: string) => layer(drawing, name).filter((one): one is Line => one.kind === 'line')
const texts = (drawing: Drawing) => layer(drawing, 'NOTE').filter((one): one is Text => one.kind === 'text')
const words = (drawing: Drawing) => texts(drawing).map((one) => one.text)

/** The cells of the table's line with a tag: the lowest texts that share that tag's baseline. */
function tableLine(drawing: Drawing, tag: string): string[] {
  const all = texts(drawing)
  const tags = all.filter((one) => one.text === tag && one.bold === true)
  const y = Math.min(...tags.map((one) => one.at[1]))
  return all
    .filter((one) => one.at[1] === y)
    .sort((a, b) => a.at[0] - b.at[0])
    .map((one) => one.text)
}

const pin = (x: number, y: number): BoreFigures => ({
  surface: 'A',
  at: [x, y, 0],
  diameter: 5,
  depth: 13,
  purpose: 'shelf pin',
})
const SCREW: BoreFigures = {
  surface: 'B',
  at: [9, 50, -18],
  diameter: 5,
  depth: 'through',
  purpose: 'screw',
  sink: { shape: 'cone', diameter: 9, angleDeg: 90 },
}

// A side 720 × 560: two columns of 14 pins from 96 above the bottom, 37 from the front and 60 from the back; the last
// of a column is at 96 + 13 × 32 = 512. Screws from the outside 9 from the bottom, at 50, 198, 346 and 494.
const SIDE = panelOf({
  bores: [...row(14, 'x', 32, pin(96, 37)), ...row(14, 'x', 32, pin(96, 500)), ...row(4, 'y', 148, SCREW)],
})

describe('a side with two rows of pins', () => {
  const drawing = panelDrawing(SIDE, 'A', OPTIONS)

  test('the outline is the panel, at the origin', () => {
    expect(layer(drawing, 'OUTLINE')).toEqual([
      {
        kind: 'path',
        id: 'outline',
        vertices: [
          { at: [0, 0], bulge: 0 },
          { at: [720, 0], bulge: 0 },
          { at: [720, 560], bulge: 0 },
          { at: [0, 560], bulge: 0 },
        ],
      },
    ])
    expect(drawing.flipHeight).toBe(560)
  })

  test('layers in order, the screws of the other face not among them', () => {
    expect(drawing.layers.map((one) => one.name)).toEqual(['OUTLINE', 'BORE-D5-DEEP13', 'NOTE'])
  })

  test('each pin where it is, with a title that measures from front and bottom', () => {
    const found = circles(drawing, 'BORE-D5-DEEP13')
    expect(found).toHaveLength(28)
    expect(found.find((one) => one.id === 'bore-1')).toEqual({
      kind: 'circle',
      at: [96, 37],
      radius: 2.5,
      id: 'bore-1',
      title: 'shelf pin 5 deep 13, 37 from front, 96 from bottom',
    })
    expect(found.find((one) => one.id === 'bore-28')?.at).toEqual([512, 500])
  })

  test('one label a row, at its first hole', () => {
    const labels = texts(drawing).filter((one) => one.text === '14 × 5 deep 13, every 32')
    expect(labels).toHaveLength(2)
    const tag = texts(drawing).find((one) => one.text === 'A')
    expect(tag?.at[0]).toBeCloseTo(93.5, 6)
    expect(Math.abs((tag?.at[1] ?? 0) - 37)).toBeLessThan(25)
  })

  test('its tag stands at the other end too', () => {
    // The last pin of the lower row is at 512; the tag starts at the hole's rim.
    const tags = texts(drawing).filter((one) => one.text === 'A' && one.at[1] > 0)
    expect(tags).toHaveLength(2)
    expect(Math.min(...tags.map((one) => Math.hypot(one.at[0] - 512, one.at[1] - 37)))).toBeLessThan(25)
  })

  test('the table says all that a rule and a drill need', () => {
    expect(tableLine(drawing, 'A')).toEqual(['A', '14', '5', '13', '37', '96 … 512, every 32', 'shelf pin'])
    expect(tableLine(drawing, 'B')).toEqual(['B', '14', '5', '13', '500', '96 … 512, every 32', 'shelf pin'])
    expect(words(drawing)).toEqual(expect.arrayContaining(['from front', 'from bottom']))
  })

  test('what it is, its size, its edges, where to measure from', () => {
    expect(words(drawing)).toEqual(
      expect.arrayContaining([
        'Glaze store: left side, face A (inside)',
        '720 × 560 × 18 mm  ·  birch plywood 18  ·  grain along the length',
        'store/left-side  ·  28 holes  ·  face B has a drawing of its own: 4 holes',
        'FRONT',
        'back',
        'top',
        'bottom',
        'grain',
        'measure from here',
        'check bar: 100 mm  ·  all lengths in mm',
      ]),
    )
    expect(drawing.title).toBe('Glaze store: left side, face A')
  })

  test('the front edge is named below the panel, the datum corner is lower left', () => {
    const at = (text: string) => texts(drawing).find((one) => one.text === text)?.at ?? [Number.NaN, Number.NaN]
    expect(at('FRONT')[0]).toBe(360)
    expect(at('FRONT')[1]).toBeLessThan(0)
    expect(at('measure from here')[0]).toBeLessThan(0)
    expect(at('measure from here')[1]).toBeLessThan(0)
  })

  test('the check bar is 100 mm long', () => {
    const long = lines(drawing, 'NOTE').filter((one) => one.from[1] === one.to[1] && one.to[0] - one.from[0] === 100)
    expect(long).toHaveLength(1)
  })

  test('the same bytes every time', () => {
    expect(JSON.stringify(panelDrawing(SIDE, 'A', OPTIONS))).toBe(JSON.stringify(drawing))
  })

  test('the writers take it', () => {
    expect(() => checkDrawing(drawing)).not.toThrow()
  })
})

describe('the other face of it', () => {
  const drawing = panelDrawing(SIDE, 'B', OPTIONS)

  // Turned over about y: 9 from the bottom edge, which is now on the right, so x = 720 − 9 = 711.
  test('x is mirrored, the distances are from the same edges', () => {
    expect(circles(drawing, 'BORE-D5-THROUGH').map((one) => one.at)).toEqual([
      [711, 50],
      [711, 198],
      [711, 346],
      [711, 494],
    ])
    expect(circles(drawing, 'BORE-D5-THROUGH')[0]?.title).toBe(
      'screw 5 through, countersunk to 9, 90°, 50 from front, 9 from bottom',
    )
  })

  test('the countersink is a circle of its own, of the head’s diameter', () => {
    expect(circles(drawing, 'COUNTERSINK-D9-DEG90')[0]).toEqual({
      kind: 'circle',
      at: [711, 50],
      radius: 4.5,
      id: 'bore-29-sink',
      title: 'countersink 9, 90° for: screw 5 through, countersunk to 9, 90°, 50 from front, 9 from bottom',
    })
  })

  test('bottom is on the right now, and so is the corner to measure from', () => {
    const at = (text: string) => texts(drawing).find((one) => one.text === text)?.at[0]
    expect(at('bottom')).toBeGreaterThan(720)
    expect(at('top')).toBeLessThan(0)
    expect(at('FRONT')).toBe(360)
    expect(at('measure from here')).toBeGreaterThan(360)
  })

  test('its table', () => {
    expect(tableLine(drawing, 'A')).toEqual([
      'A',
      '4',
      '5',
      'through, countersunk to 9, 90°',
      '50 … 494, every 148',
      '9',
      'screw',
    ])
  })

  test('face B is drawn because it has work', () => {
    expect(facesDrawn(SIDE)).toEqual(['A', 'B'])
    expect(facesDrawn(panelOf({ bores: row(2, 'x', 32, pin(96, 37)) }))).toEqual(['A'])
    expect(hasWork(panelOf({}), 'A')).toBe(false)
    const grooved = panelOf({
      grooves: [
        {
          kind: 'groove',
          face: 'B',
          min: [0, 50],
          max: [720, 56],
          depth: 8,
          roundEnds: false,
          purpose: 'groove for the back',
        },
      ],
    })
    expect(hasWork(grooved, 'B')).toBe(true)
  })
})

describe('hand work', () => {
  const shelf = panelOf({
    name: 'fixed shelf',
    role: 'fixed shelf',
    length: 764,
    width: 300,
    faces: { A: 'upper face', B: 'underside' },
    edges: { x0: 'left', x1: 'right', y0: 'front', y1: 'back' },
    bores: [
      ...row(2, 'y', 200, { surface: 'x0', at: [0, 50, -9], diameter: 8, depth: 21, purpose: 'dowel' }),
      ...row(4, 'x', 200, { surface: 'y1', at: [82, 300, -9], diameter: 8, depth: 21, purpose: 'dowel' }),
      {
        surface: 'B',
        at: [33.588, 150, -18],
        diameter: 9.5,
        depth: 18.13,
        purpose: 'pocket screw',
        lean: { deg: 15, axis: [-Math.cos(Math.PI / 12), 0, Math.sin(Math.PI / 12)] },
      },
    ],
  })
  const faceA = panelDrawing(shelf, 'A', OPTIONS)
  const faceB = panelDrawing(shelf, 'B', OPTIONS)

  test('edge bores are marks on face A: no circle, no drill’s layer, nothing on face B', () => {
    expect(faceA.layers.map((one) => one.name)).toEqual(['OUTLINE', 'MARK', 'NOTE'])
    expect(layer(faceA, 'MARK').filter((one) => one.kind === 'circle')).toEqual([])
    expect(layer(faceB, 'MARK').flatMap((one) => (one.kind === 'path' ? [one.id] : []))).toEqual(['bore-7'])
  })

  // 764 / 60 = 12.733 is the text height; the centre line sticks out 0.55 of it, 7.003, and goes 21 in.
  test('the centre line of an edge bore crosses the edge and is as long inside as the bore is deep', () => {
    const first = lines(faceA, 'MARK')[0]
    expect(first?.from[0]).toBeCloseTo(-7.003, 3)
    expect(first?.from[1]).toBe(50)
    expect(first?.to).toEqual([21, 50])
    const back = lines(faceA, 'MARK')[2]
    expect(back?.from[1]).toBeCloseTo(307.003, 3)
    expect(back?.to).toEqual([82, 279])
  })

  test('the hidden hole is drawn at its true size, with its title', () => {
    const hole = layer(faceA, 'MARK').find((one) => one.kind === 'path' && one.id === 'bore-1')
    expect(hole).toEqual({
      kind: 'path',
      id: 'bore-1',
      title: 'dowel 8 deep 21 in the left edge, 9 from face A, 50 from front',
      pen: 'dashed',
      vertices: [
        { at: [0, 46], bulge: 0 },
        { at: [21, 46], bulge: 0 },
        { at: [21, 54], bulge: 0 },
        { at: [0, 54], bulge: 0 },
      ],
    })
  })

  test('labels and table name the edge', () => {
    expect(words(faceA)).toContain('4 × 8 deep 21 in this edge, 9 from face A')
    expect(words(faceA)).toContain('By hand')
    expect(tableLine(faceA, 'A')).toEqual(['A', '2', '8', '21', '50, 250', 'left edge, 9 from face A', 'dowel'])
    expect(tableLine(faceA, 'B')).toEqual([
      'B',
      '4',
      '8',
      '21',
      'back edge, 9 from face A',
      '82 … 682, every 200',
      'dowel',
    ])
  })

  // Face B: x = 764 − 33.588 = 730.412; the bit leans toward x0 of the panel, which is on the right.
  test('a pocket is a cross and an arrow the way it leans', () => {
    const cross = lines(faceB, 'MARK').find((one) => one.from[1] === one.to[1])
    expect(((cross?.from[0] ?? 0) + (cross?.to[0] ?? 0)) / 2).toBeCloseTo(730.412, 6)
    const head = layer(faceB, 'MARK').find((one) => one.kind === 'path')
    expect(head?.kind === 'path' && head.title).toBe(
      'pocket screw pocket 15°, bit 9.5, collar at 18.1, 150 from front, 33.59 from left',
    )
    expect(head?.kind === 'path' && Math.max(...head.vertices.map((one) => one.at[0]))).toBeGreaterThan(730.412 + 20)
    expect(words(faceB)).toContain('pocket 15°, bit 9.5, collar at 18.1')
    expect(tableLine(faceB, 'A')).toEqual([
      'A',
      '1',
      '9.5',
      'pocket 15°, collar at 18.1',
      '150',
      '33.59',
      'pocket screw',
    ])
  })
})

describe('pilots at the shoulder of a rebate', () => {
  // A rebate 6.2 wide along the back: its shoulder is at 560 − 6.2 = 553.8. Pilots 50 to 670, every 124.
  const panel = panelOf({
    bores: row(6, 'x', 124, { surface: 'y1', at: [50, 553.8, -4], diameter: 2.5, depth: 20, purpose: 'screw pilot' }),
  })
  const drawing = panelDrawing(panel, 'A', OPTIONS)

  test('are not in the edge', () => {
    expect(words(drawing)).toContain('6 × 2.5 deep 20 in the rebate once it is cut, 4 from face A')
    const title = layer(drawing, 'MARK').find((one) => one.kind === 'path' && one.id === 'bore-1')
    expect(title?.kind === 'path' && title.title).toBe(
      'screw pilot 2.5 deep 20 in the back rebate once it is cut (6.2 from the edge), 4 from face A, 50 from bottom',
    )
  })

  test('have a line in the table that is broken at its comma', () => {
    expect(tableLine(drawing, 'A')).toEqual([
      'A',
      '6',
      '2.5',
      '20',
      'back rebate once cut (6.2 from the edge),',
      '50 … 670, every 124',
      'screw pilot',
    ])
    expect(words(drawing)).toContain('4 from face A')
  })
})

describe('pitches that would be rounded', () => {
  // 446.6 / 4 = 111.65 is one to 0.01; 500 / 7 = 71.428… and 500 / 3 = 166.666… are not.
  test('to 0.01 mm they are said', () => {
    const drawing = panelDrawing(panelOf({ bores: row(5, 'x', 111.65, pin(50, 100)) }), 'A', OPTIONS)
    expect(words(drawing)).toContain('5 × 5 deep 13, every 111.65')
    expect(tableLine(drawing, 'A')).toContain('50 … 496.6, every 111.65')
  })

  test('up to six places are listed in the table, each rounded by itself', () => {
    const drawing = panelDrawing(panelOf({ bores: row(4, 'x', 500 / 3, pin(50, 100)) }), 'A', OPTIONS)
    expect(words(drawing)).toContain('4 × 5 deep 13, evenly 50 to 550 from bottom')
    expect(tableLine(drawing, 'A').slice(5)).toEqual(['50, 216.67, 383.33, 550', 'shelf pin'])
  })

  test('more of them lie evenly between their ends', () => {
    const drawing = panelDrawing(panelOf({ bores: row(8, 'x', 500 / 7, pin(50, 100)) }), 'A', OPTIONS)
    expect(tableLine(drawing, 'A')).toContain('8 evenly from 50 to 550')
  })

  // 50.8 = 2 in, 558.8 = 22 in; 508 / 7 = 72.571… = 2 55/64 in less 0.04. 32 mm is no fraction, but it is 32 mm.
  test('in inches', () => {
    const inches = { patterns: PATTERNS, units: 'in' } as const
    const uneven = panelDrawing(panelOf({ bores: row(8, 'x', 508 / 7, pin(50.8, 100)) }), 'A', inches)
    expect(words(uneven)).toContain('8 × 5 mm deep 13 mm, evenly 2 in to 22 in from bottom')
    expect(tableLine(uneven, 'A')).toContain('8 evenly from 2 in to 22 in')
    const metric = panelDrawing(panelOf({ bores: row(8, 'x', 32, pin(50.8, 100)) }), 'A', inches)
    expect(words(metric)).toContain('8 × 5 mm deep 13 mm, every 32 mm')
  })
})

describe('long names', () => {
  const heading = (drawing: Drawing) => texts(drawing).filter((one) => one.bold === true && one.height > 20)

  test('the title is broken to the width of the panel; panel name and face stay whole', () => {
    const moduleName = 'store for glazes, slips, oxides and everything else that must stay dry, and W'.concat(
      'W'.repeat(60),
    )
    const drawing = panelDrawing(panelOf({ moduleName }), 'A', OPTIONS)
    const lines = heading(drawing)
    expect(lines.length).toBeGreaterThan(2)
    expect(lines.some((one) => one.text.endsWith('left side, face A (inside)'))).toBe(true)
    // 1.5 text heights of 12 are the margin; the plain panel is as wide.
    expect(drawing.view.max[0]).toBeCloseTo(panelDrawing(panelOf({}), 'A', OPTIONS).view.max[0], 6)
    // Nothing of the name is lost.
    const all = [...lines].sort((a, b) => b.at[1] - a.at[1]).map((one) => one.text.replace(/\s/g, ''))
    expect(all.join('')).toBe(`${moduleName}: left side, face A (inside)`.replace(/\s/g, ''))
  })
})

describe('grooves, sinks, stamps and inches', () => {
  test('a stopped groove on face B, mirrored, with round ends only inside the panel', () => {
    const panel = panelOf({
      grooves: [
        {
          kind: 'groove',
          face: 'B',
          min: [0, 535.8],
          max: [700, 542],
          depth: 8,
          roundEnds: true,
          purpose: 'groove for the back',
        },
      ],
    })
    const drawing = panelDrawing(panel, 'B', OPTIONS)
    // 0 … 700 becomes 20 … 720; the round of radius 3.1 is at the left end, the right end runs out of the panel.
    expect(layer(drawing, 'GROOVE-W6P2-DEEP8')).toEqual([
      {
        kind: 'path',
        id: 'groove-1',
        title: 'groove for the back, 6.2 wide, 8 deep, 535.8 to 542 from front, 0 to 700 from bottom',
        vertices: [
          { at: [23.1, 535.8], bulge: 0 },
          { at: [720, 535.8], bulge: 0 },
          { at: [720, 542], bulge: 0 },
          { at: [23.1, 542], bulge: 1 },
        ],
      },
    ])
    expect(tableLine(drawing, 'A')).toEqual([
      'A',
      '6.2 wide',
      '8',
      '535.8 to 542',
      '0 to 700',
      'groove for the back, ends round',
    ])
  })

  test('a counterbore is a second bore with its own depth', () => {
    const bore: BoreFigures = {
      ...pin(100, 100),
      diameter: 7,
      depth: 'through',
      purpose: 'one-piece screw',
      sink: { shape: 'counterbore', diameter: 10, depth: 5 },
    }
    const drawing = panelDrawing(panelOf({ bores: [bore] }), 'A', OPTIONS)
    expect(circles(drawing, 'BORE-D10-DEEP5').map((one) => [one.at, one.radius, one.id])).toEqual([
      [[100, 100], 5, 'bore-1-sink'],
    ])
    expect(words(drawing)).toContain('one-piece screw 7 through, counterbored 10 deep 5')
  })

  test('a warning stands over the title in larger letters than anything else but it', () => {
    const drawing = panelDrawing(SIDE, 'A', { ...OPTIONS, stamp: 'Do not make: two bores meet' })
    const stamp = texts(drawing).find((one) => one.text === 'Do not make: two bores meet')
    const title = texts(drawing).find((one) => one.text.startsWith('Glaze store'))
    expect(stamp?.bold).toBe(true)
    expect(stamp?.at[1]).toBeGreaterThan(title?.at[1] ?? Number.NaN)
    expect(stamp?.height).toBeCloseTo(1.7 * 12, 6)
  })

  // 6.35 = 1/4 in, 9.525 = 3/8 in, 31.75 = 1 1/4 in, 190.5 = 7 1/2 in, 50.8 = 2 in; 190.5 + 11 × 31.75 = 539.75 =
  // 21 1/4 in. Datum at x1: 762 − 539.75 = 222.25 = 8 3/4 in, 762 − 190.5 = 571.5 = 22 1/2 in. A 35 mm cup is no fraction.
  test('inch projects read inches, and millimetres where a bit has no fraction', () => {
    const panel = panelOf({
      length: 762,
      width: 558.8,
      datum: { x: 'x1', y: 'y0' },
      edges: { x0: 'top', x1: 'bottom', y0: 'front', y1: 'back' },
      bores: [
        ...row(12, 'x', 31.75, {
          surface: 'A',
          at: [190.5, 50.8, 0],
          diameter: 6.35,
          depth: 9.525,
          purpose: 'shelf pin',
        }),
        { surface: 'A', at: [381, 279.4, 0], diameter: 35, depth: 12.5, purpose: 'hinge cup' },
      ],
    })
    const drawing = panelDrawing(panel, 'A', { patterns: PATTERNS, units: 'in' })
    expect(words(drawing)).toContain('12 × 1/4 in deep 3/8 in, every 1 1/4 in')
    expect(words(drawing)).toContain('hinge cup 35 mm deep 12.5 mm')
    expect(words(drawing)).toContain('check bar: 4 in')
    expect(tableLine(drawing, 'A')).toEqual([
      'A',
      '12',
      '1/4 in',
      '3/8 in',
      '2 in',
      '8 3/4 in … 22 1/2 in, every 1 1/4 in',
      'shelf pin',
    ])
    expect(circles(drawing, 'BORE-D6P35-DEEP9P525')).toHaveLength(12)
  })

  test('a hole that two things use says so', () => {
    const shared = row(4, 'x', 32, pin(96, 37)).map((one, k) => (k === 1 ? { ...one, also: 'hinge plate' } : one))
    const drawing = panelDrawing(panelOf({ bores: shared }), 'A', OPTIONS)
    expect(circles(drawing, 'BORE-D5-DEEP13')[1]?.title).toBe(
      'shelf pin and hinge plate 5 deep 13, 37 from front, 128 from bottom',
    )
    expect(tableLine(drawing, 'A').at(-1)).toBe('shelf pin; 1 also hinge plate')
  })

  test('a panel without a hole is still drawn, named and sized', () => {
    const drawing = panelDrawing(panelOf({ name: 'loose shelf' }), 'A', OPTIONS)
    expect(drawing.layers.map((one) => one.name)).toEqual(['OUTLINE', 'NOTE'])
    expect(words(drawing)).toContain('store/left-side  ·  nothing to make in this face')
  })

  test('panels without a front edge are led by their top', () => {
    const door = panelOf({ edges: { x0: 'bottom', x1: 'top', y0: 'left', y1: 'right' } })
    const top = texts(panelDrawing(door, 'A', OPTIONS)).find((one) => one.text === 'TOP')
    expect(top?.turnDeg).toBe(90)
    expect(top?.at[0]).toBeGreaterThan(720)
  })
})
