import type { IArcEntity, ICircleEntity, ILineEntity, ILwpolylineEntity, ITextEntity } from 'dxf-parser'
import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../src/drawing/index.ts'
import { type DxfOptions, dxfOf, lintDxf } from '../../src/writers/index.ts'
import { blankWith, EVERYTHING, HOSTILE, polygon, SLOT } from './drawings.ts'
import { entitiesOf, readDxf, readGuarded } from './read-dxf.ts'

const PLAIN: DxfOptions = { units: 'mm', version: '2007', contours: 'bulges', notes: true, name: 'blank-a.dxf' }

const note = (text: string): Drawing =>
  blankWith({
    name: 'NOTE',
    operation: 'note',
    entities: [{ kind: 'text', at: [5, 5], height: 4, anchor: 'start', text }],
  })

describe('what is in the file', () => {
  test('a hole is one CIRCLE with its own centre and radius', () => {
    const circles = entitiesOf<ICircleEntity>(readDxf(dxfOf(EVERYTHING, PLAIN)), 'CIRCLE', 'BORE-D5-DEEP13')
    expect(circles.map((c) => [c.center.x, c.center.y, c.radius])).toEqual([
      [37, 60, 2.5],
      [37, 92, 2.5],
      [37, 124, 2.5],
    ])
  })

  test('a contour is one closed LWPOLYLINE whose last vertex does not repeat the first', () => {
    const [outline, ...others] = entitiesOf<ILwpolylineEntity>(
      readDxf(dxfOf(EVERYTHING, PLAIN)),
      'LWPOLYLINE',
      'OUTLINE',
    )
    expect(others).toEqual([])
    expect(outline?.shape).toBe(true)
    expect(outline?.vertices.map((v) => [v.x, v.y])).toEqual([
      [0, 0],
      [400, 0],
      [400, 300],
      [0, 300],
    ])
  })

  test('the bulge on the closing segment of a slot is there', () => {
    const [slot] = entitiesOf<ILwpolylineEntity>(readDxf(dxfOf(EVERYTHING, PLAIN)), 'LWPOLYLINE', 'CUTOUT')
    expect(slot?.vertices.map((v) => v.bulge ?? 0)).toEqual([0, 1, 0, 1])
  })

  test('as lines and arcs, the slot has two lines and two half turns about (260, 115) and (200, 115)', () => {
    const dxf = readDxf(dxfOf(EVERYTHING, { ...PLAIN, contours: 'lines and arcs' }))
    const arcs = entitiesOf<IArcEntity>(dxf, 'ARC', 'CUTOUT')
    // dxf-parser turns degrees into radians: from -90° (270°) to 90°, and from 90° to 270°.
    expect(arcs.map((a) => [a.center.x, a.center.y, a.radius])).toEqual([
      [260, 115, 15],
      [200, 115, 15],
    ])
    const [right, left] = arcs
    expect(right?.startAngle).toBeCloseTo(1.5 * Math.PI, 9)
    expect(right?.endAngle).toBeCloseTo(0.5 * Math.PI, 9)
    expect(left?.startAngle).toBeCloseTo(0.5 * Math.PI, 9)
    expect(left?.endAngle).toBeCloseTo(1.5 * Math.PI, 9)
    const lines = entitiesOf<ILineEntity>(dxf, 'LINE', 'CUTOUT')
    expect(lines.map((l) => l.vertices.map((v) => [v.x, v.y]))).toEqual([
      [
        [200, 100],
        [260, 100],
      ],
      [
        [260, 130],
        [200, 130],
      ],
    ])
    expect(entitiesOf(dxf, 'LWPOLYLINE')).toEqual([])
  })

  test('a clockwise arc is written counter-clockwise from its far end', () => {
    // A bite out of the upper edge: from (100, 50) to (60, 50) by way of (80, 30): bulge -1, centre (80, 50), radius 20,
    // counter-clockwise from 180° to 0°.
    const bitten = {
      ...polygon([0, 0], [100, 0]),
      vertices: [
        { at: [0, 0], bulge: 0 },
        { at: [120, 0], bulge: 0 },
        { at: [120, 50], bulge: 0 },
        { at: [100, 50], bulge: -1 },
        { at: [60, 50], bulge: 0 },
        { at: [0, 50], bulge: 0 },
      ],
    } as const
    const drawing: Drawing = {
      title: 'bitten',
      view: { min: [0, 0], max: [120, 50] },
      layers: [{ name: 'OUTLINE', operation: 'outline', entities: [bitten] }],
    }
    const text = dxfOf(drawing, { ...PLAIN, contours: 'lines and arcs' })
    expect(lintDxf(text)).toEqual([])
    const [arc] = entitiesOf<IArcEntity>(readDxf(text), 'ARC')
    expect([arc?.center.x, arc?.center.y, arc?.radius]).toEqual([80, 50, 20])
    expect(arc?.startAngle).toBeCloseTo(Math.PI, 9)
    expect(arc?.endAngle).toBeCloseTo(0, 9)
    // The bite is cut off the 50 high box, so the box of the drawing is still 120 by 50.
    expect(readDxf(text).header.$EXTMAX).toMatchObject({ x: 120, y: 50 })
  })

  test('the header says millimetres, version and extents', () => {
    const { header } = readDxf(dxfOf(EVERYTHING, PLAIN))
    expect(header).toMatchObject({ $ACADVER: 'AC1021', $INSUNITS: 4, $MEASUREMENT: 1, $DWGCODEPAGE: 'ANSI_1252' })
    // Left: the turned text, whose base line is at -10 and whose letters of size 8 may go 0.93 of it up; below: the bar at
    // -20; right and above: the outline.
    expect(header.$EXTMIN).toMatchObject({ x: -17.44, y: -20 })
    expect(header.$EXTMAX).toMatchObject({ x: 400, y: 300 })
  })

  // In bold DejaVu Sans of size 12, WWWW is 4 × 2259 / 2048 × 12 = 52.945313 wide; letters go up to 0.93 of the size
  // over the base line and 0.24 below it. The outline is 400 × 300.
  test.each([
    ['start', 0, 395, -10, [0, -12.88], [447.945313, 300]],
    ['middle', 0, 395, 300, [0, 0], [421.472656, 311.16]],
    ['end', 0, 5, 300, [-47.945313, 0], [400, 311.16]],
    ['start', 90, 402, 290, [0, 0], [404.88, 342.945313]],
    ['end', 90, 0, 5, [-11.16, -47.945313], [400, 300]],
  ] as const)('the extents hold a text that begins at its %s, turned by %i', (anchor, turnDeg, x, y, min, max) => {
    const entity = { kind: 'text', at: [x, y], height: 12, anchor, turnDeg, text: 'WWWW' } as const
    const text = dxfOf(blankWith({ name: 'NOTE', operation: 'note', entities: [entity] }), PLAIN)
    expect(lintDxf(text)).toEqual([])
    const { $EXTMIN, $EXTMAX } = readDxf(text).header
    expect([$EXTMIN, $EXTMAX]).toMatchObject([
      { x: min[0], y: min[1] },
      { x: max[0], y: max[1] },
    ])
  })

  test('the older version has its own word', () => {
    expect(readDxf(dxfOf(EVERYTHING, { ...PLAIN, version: '2000' })).header.$ACADVER).toBe('AC1015')
  })

  test('in inches every number is the millimetres over 25.4, to six decimals', () => {
    const dxf = readDxf(dxfOf(EVERYTHING, { ...PLAIN, units: 'in' }))
    expect(dxf.header).toMatchObject({ $INSUNITS: 1, $MEASUREMENT: 0 })
    const [first] = entitiesOf<ICircleEntity>(dxf, 'CIRCLE', 'BORE-D5-DEEP13')
    // 37 / 25.4 = 1.456692913…, 60 / 25.4 = 2.362204724…, 2.5 / 25.4 = 0.098425197…
    expect([first?.center.x, first?.center.y, first?.radius]).toEqual([1.456693, 2.362205, 0.098425])
  })

  test('capitals of a text are 0.729 of its size, and it stands where and as it should', () => {
    const texts = entitiesOf<ITextEntity>(readDxf(dxfOf(EVERYTHING, PLAIN)), 'TEXT', 'NOTE')
    expect(texts.map((t) => t.text)).toEqual(['left side 400 x 300 x 18.2', 'front D5'])
    // 12 × 0.729 = 8.748. Alignment by code 72: 1 centre, 2 right.
    expect(texts[0]).toMatchObject({ textHeight: 8.748, rotation: 0, halign: 1, startPoint: { x: 200, y: 150 } })
    expect(texts[1]).toMatchObject({ textHeight: 5.832, rotation: 90, halign: 2, startPoint: { x: -10, y: 150 } })
  })

  test('without notes there is no note layer and no text', () => {
    const text = dxfOf(EVERYTHING, { ...PLAIN, notes: false })
    const dxf = readDxf(text)
    expect(dxf.entities.filter((e) => e.type === 'TEXT' || e.layer === 'NOTE')).toEqual([])
    expect(Object.keys(dxf.tables.layer.layers)).not.toContain('NOTE')
    expect(lintDxf(text)).toEqual([])
  })

  test('each operation has a layer colour of its own', () => {
    const { layers } = readDxf(dxfOf(EVERYTHING, PLAIN)).tables.layer
    const names = ['OUTLINE', 'CUTOUT', 'BORE-D5-DEEP13', 'COUNTERSINK-D8', 'GROOVE-W6P2-DEEP8', 'MARK', 'NOTE']
    expect(new Set(names.map((name) => layers[name]?.colorIndex)).size).toBe(7)
  })

  test('a layer with nothing on it is left out', () => {
    const text = dxfOf(blankWith({ name: 'MARK', operation: 'mark', entities: [] }), PLAIN)
    expect(Object.keys(readDxf(text).tables.layer.layers)).toEqual(['0', 'OUTLINE'])
  })
})

describe('hostile labels', () => {
  test.each(HOSTILE)('%j does no harm', (hostile) => {
    const text = dxfOf({ ...note(hostile), title: hostile }, { ...PLAIN, name: hostile })
    expect(lintDxf(text)).toEqual([])
    const entities = readGuarded(text)
    expect(entities.map((e) => e.type)).toEqual(['LWPOLYLINE', 'TEXT'])
    expect(entities[1]?.text).toMatch(/^[\x20-\x7e]+$/)
  })

  test('a label of nothing is not drawn', () => {
    expect(readGuarded(dxfOf(note(' \n '), PLAIN)).map((e) => e.type)).toEqual(['LWPOLYLINE'])
  })
})

describe('same bytes', () => {
  test('twice, and with another drawing in between', () => {
    const first = dxfOf(EVERYTHING, PLAIN)
    dxfOf(blankWith(), { ...PLAIN, units: 'in' })
    expect(dxfOf(EVERYTHING, PLAIN)).toBe(first)
  })

  test('every combination of options passes the linter', () => {
    const faults = (['mm', 'in'] as const).flatMap((units) =>
      (['2007', '2000'] as const).flatMap((version) =>
        (['bulges', 'lines and arcs'] as const).flatMap((contours) =>
          [true, false].flatMap((notes) => lintDxf(dxfOf(EVERYTHING, { ...PLAIN, units, version, contours, notes }))),
        ),
      ),
    )
    expect(faults).toEqual([])
  })
})

describe('mistakes of the program', () => {
  test('the message names file, drawing, layer, entity, field and value', () => {
    const broken = blankWith({
      name: 'BORE-D5-DEEP13',
      operation: 'bore',
      entities: [
        { kind: 'circle', at: [10, 10], radius: 2.5 },
        { kind: 'circle', at: [Number.NaN, 10], radius: 2.5 },
      ],
    })
    expect(() => dxfOf(broken, PLAIN)).toThrow(
      'blank-a.dxf: drawing "blank": layer BORE-D5-DEEP13, circle 2: centre x is NaN',
    )
  })

  test('layer 0 belongs to the format', () => {
    const drawing = blankWith({ name: '0', operation: 'cutout', entities: [SLOT] })
    expect(() => dxfOf(drawing, PLAIN)).toThrow('a DXF layer cannot be named 0')
  })
})
