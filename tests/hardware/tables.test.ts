import { describe, expect, test } from 'vitest'
import { type Drilling, findItem, type Item } from '../../src/hardware/index.ts'

function item(id: string): Item {
  const found = findItem(id)
  if (found === undefined) throw new Error(`no ${id}`)
  return found
}

function drilling(id: string, part: string, key = 'hole'): Drilling {
  const found = item(id).parts[part]?.find((one) => one.key === key)
  if (found === undefined) throw new Error(`${id} has no ${key} in ${part}`)
  return found
}

/** `x y` of the holes of a part. */
const places = (id: string, part: string): string[] => (item(id).parts[part] ?? []).map(({ x, y }) => `${x} ${y}`)

/** Thousandths of a millimetre are finer than any bit. */
const inches = (value: number): number => value * 25.4

describe('joining bolts', () => {
  // ISO 273, coarse series H14 (engineeringhardware.com): M6 7.0, M8 10.0, M10 12.0.
  test.each([
    ['bolt M6', 7],
    ['bolt M8', 10],
    ['bolt M10', 12],
  ])('%s passes a hole of %d mm (ISO 273 coarse)', (id, diameter) => {
    expect(drilling(id, 'head').diameter).toBe(diameter)
  })

  // Machinery's Handbook, 31st ed., p. 1743 (ASME B18.2.8, loose, table 3a): 1/4 7.5, 5/16 9.1, 3/8 10.5 mm drill.
  test.each([
    ['bolt 1/4 in', 7.5],
    ['bolt 5/16 in', 9.1],
    ['bolt 3/8 in', 10.5],
  ])('%s passes a hole of %d mm (ASME B18.2.8 loose)', (id, diameter) => {
    expect(drilling(id, 'head').diameter).toBe(diameter)
  })

  // Pronged tee nuts, data sheet ATNUT05 (pts-uk.com): barrel and flange M6 7.7, 19; M8 10.0, 22; M10 12.0, 25.
  test.each([
    ['bolt M6', 7.7, 8, 19],
    ['bolt M8', 10, 10, 22],
    ['bolt M10', 12, 12, 25],
  ])('the nut of %s has a barrel of %d, a bore of %d and a flange of %d', (id, barrel, bore, flange) => {
    const bolt = item(id)
    expect(drilling(id, 'nut').diameter).toBe(bore)
    expect(bore - barrel).toBeGreaterThanOrEqual(0)
    expect(bore - barrel).toBeLessThan(0.5)
    expect(bolt.kind === 'joining bolt' && bolt.nutDiameter).toBe(flange)
  })

  test('a sleeve connector takes one bore through both boards: M6 in 8, M4 in the 5 of the system row', () => {
    for (const part of ['head', 'nut']) {
      expect(drilling('sleeve connector M6', part)).toMatchObject({ diameter: 8, depth: 'through' })
      expect(drilling('sleeve connector M4', part)).toMatchObject({ diameter: 5, depth: 'through' })
    }
  })
})

describe('screws', () => {
  // Countersunk chipboard screws (mpi-inox.odoo.com): head 2 × d.
  test.each([
    ['screw 3.5x25', 7],
    ['screw 3.5x30', 7],
    ['screw 4x40', 8],
    ['screw 4.5x45', 9],
    ['screw 5x60', 10],
    ['screw 6x80', 12],
  ])('%s has a head of %d mm under 90°', (id, head) => {
    expect(drilling(id, 'head').sink).toEqual({ shape: 'cone', diameter: head, angleDeg: 90 })
  })

  // Pilots 0.7 d (common practice): 4 × 0.7 = 2.8, 5 × 0.7 = 3.5, 6 × 0.7 = 4.2.
  test.each([
    ['screw 4x40', 2.8],
    ['screw 5x60', 3.5],
    ['screw 6x80', 4.2],
  ])('%s has a pilot of %d mm', (id, pilot) => {
    expect(drilling(id, 'tip').diameter).toBe(pilot)
  })

  // Wood screw chart, plate 6B (glenlarchive.com): hardwood pilot and shank hole, #8 7/64 and 11/64, #10 1/8 and 3/16;
  // #6 shank hole 9/64.
  test.each([
    ['screw #6x1-1/4', undefined, 9 / 64],
    ['screw #8x1-3/4', 7 / 64, 11 / 64],
    ['screw #8x2', 7 / 64, 11 / 64],
    ['screw #10x2', 1 / 8, 3 / 16],
  ])('%s: pilot and shank hole in inches, 82°', (id, pilot, shank) => {
    expect(drilling(id, 'head').diameter).toBeCloseTo(inches(shank), 3)
    if (pilot !== undefined) expect(drilling(id, 'tip').diameter).toBeCloseTo(inches(pilot), 3)
    expect(drilling(id, 'head').sink).toMatchObject({ angleDeg: 82 })
  })

  test('the inch names say the length: 1-5/8 in is 41.275, 2-1/2 in is 63.5', () => {
    expect(item('screw #6x1-5/8')).toMatchObject({ length: 41.275 })
    expect(item('screw #10x2-1/2')).toMatchObject({ length: 63.5 })
  })

  test('a pilot goes 1 mm deeper than the screw (mdf-info.eu), a one-piece screw 3 (common practice)', () => {
    expect(drilling('screw 5x60', 'tip').depth).toEqual({ reach: 61, from: 'head' })
    expect(drilling('one-piece screw 7x70', 'tip').depth).toEqual({ reach: 73, from: 'head' })
    // 7 × 40: pilot 5 as for the core of 4 (Eur. J. Wood Wood Prod. 2023).
    expect(drilling('one-piece screw 7x40', 'tip')).toMatchObject({ diameter: 5, depth: { reach: 43 } })
  })
})

describe('dowels', () => {
  // woodweb.com, Dowel drilling and use guidelines: a third in the face, two thirds in the edge, 1 mm more in each.
  // 30: 11, 21. 35: 11.67 + 1 = 12.67, 23.33 + 1 = 24.33. 40: 14.33, 27.67.
  test.each([
    ['dowel 6x30', 6, 11, 21],
    ['dowel 8x30', 8, 11, 21],
    ['dowel 8x35', 8, 12.67, 24.33],
    ['dowel 8x40', 8, 14.33, 27.67],
    ['dowel 10x40', 10, 14.33, 27.67],
    // 1-1/4 in: 5/12 + 1/32 = 0.448, 10/12 + 1/32 = 0.865 in. 1-1/2 in: 17/32, 1-1/32 in.
    ['dowel 1/4x1-1/4', inches(1 / 4), inches(0.448), inches(0.865)],
    ['dowel 5/16x1-1/2', inches(5 / 16), inches(17 / 32), inches(1 + 1 / 32)],
    ['dowel 3/8x1-1/2', inches(3 / 8), inches(17 / 32), inches(1 + 1 / 32)],
  ])('%s: %d wide, %d in the face, %d in the edge, to half a millimetre', (id, diameter, face, edge) => {
    expect(drilling(id, 'face').diameter).toBeCloseTo(diameter, 6)
    expect(drilling(id, 'edge').diameter).toBeCloseTo(diameter, 6)
    expect(Math.abs((drilling(id, 'face').depth as number) - face)).toBeLessThan(0.5)
    expect(Math.abs((drilling(id, 'edge').depth as number) - edge)).toBeLessThan(0.5)
  })
})

describe('pins', () => {
  // davelers.com/32mm/4988.html: 5, rarely 3; engineerfix.com: 1/4 in.
  test.each([
    ['pin 5', 5],
    ['pin 3', 3],
    ['pin 1/4 in', 6.35],
    ['pin 3/16 in', 4.7625],
    ['pin 5 sleeve 7.5', 7.5],
  ])('%s in a hole of %d mm, both sides alike', (id, diameter) => {
    expect(drilling(id, 'left', 'pin').diameter).toBe(diameter)
    expect(item(id).parts.left).toEqual(item(id).parts.right)
  })
})

describe('hinges and plates', () => {
  // Hinge catalogue, planning page 15 (mediacenter.grass.eu): base figure 15 less the crank, pattern 45/9.5.
  test.each([
    ['hinge 35 full', 15],
    ['hinge 35 half', 5.5],
    ['hinge 35 inset', -4],
    ['hinge 35 half 48/6', 5.5],
    ['hinge 35 inset 52/5.5', -4],
    // Small-hinge catalogue 2011, page 9 (hettich.com): base figure 12.
    ['hinge 26 full', 12],
    // The house of page 156 (mediacenter.grass.eu): −2 for an inset door.
    ['hinge 35 inset wide', -2],
  ])('%s has the base figure %d', (id, base) => {
    expect(item(id)).toMatchObject({ base })
  })

  // Read as two holes apart along the door's edge, their line beyond the middle of the cup.
  test.each([
    ['hinge 35 full', ['0 0', '9.5 -22.5', '9.5 22.5']],
    ['hinge 35 full 48/6', ['0 0', '6 -24', '6 24']],
    ['hinge 35 full 52/5.5', ['0 0', '5.5 -26', '5.5 26']],
  ])('%s: cup and dowels', (id, holes) => {
    expect(places(id, 'cup')).toEqual(holes)
  })

  test('opening angles are data: 110 and 165', () => {
    expect(item('hinge 35 half')).toMatchObject({ openingDeg: 110 })
    expect(item('hinge 35 half wide')).toMatchObject({ openingDeg: 165 })
  })

  test('plates: holes 5 mm, 32 apart on a line of 37 (davelers.com/32mm/4988.html); 28; wood screws in pilots', () => {
    expect(places('hinge plate 3', 'plate')).toEqual(['0 -16', '0 16'])
    expect(drilling('hinge plate 3', 'plate', 'screw-1').diameter).toBe(5)
    expect(item('hinge plate 3')).toMatchObject({ height: 3, plateLine: 37 })
    expect(item('hinge plate 3 line 28')).toMatchObject({ height: 3, plateLine: 28 })
    // 0.7 × 3.5 = 2.45.
    expect(drilling('hinge plate 0 wood screws', 'plate', 'screw-2').diameter).toBe(2.5)
  })
})

describe('casters', () => {
  // thecasterguy.com, Top Plate Sizes: 1-7/8 × 2-9/16 with holes 15/16 × 2-1/8; 2-1/2 in wheel 2-3/4 × 3-7/8;
  // 3-1/8 × 4-1/8 with holes 2-3/8 × 3-3/8; 4 in wheel 4 × 5. Holes 2-5/8 × 3-5/8: casterspecialists.com.
  test.each([
    ['caster 2 in', 1 + 7 / 8, 2 + 9 / 16, 15 / 16, 2 + 1 / 8],
    ['caster 2-1/2 in', 2 + 3 / 4, 3 + 7 / 8, undefined, undefined],
    ['caster 3 in', 3 + 1 / 8, 4 + 1 / 8, 2 + 3 / 8, 3 + 3 / 8],
    ['caster 4 in', 4, 5, 2 + 5 / 8, 3 + 5 / 8],
  ])('%s: plate %d × %d in, holes %d × %d', (id, narrow, wide, short, long) => {
    const found = item(id)
    if (found.kind !== 'caster') throw new Error(id)
    const sorted = (a = 0, b = 0) => [Math.abs(a), Math.abs(b)].sort((one, other) => one - other)
    const [least, most] = sorted(found.plate.x, found.plate.y)
    expect(least).toBeCloseTo(inches(narrow), 6)
    expect(most).toBeCloseTo(inches(wide), 6)
    if (short === undefined || long === undefined) return
    const [first] = found.parts.plate ?? []
    const [near, far] = sorted(first?.x, first?.y)
    expect(near).toBeCloseTo(inches(short) / 2, 6)
    expect(far).toBeCloseTo(inches(long) / 2, 6)
    // The long side of the pattern lies along the long side of the plate.
    expect(found.plate.x > found.plate.y).toBe(Math.abs(first?.x ?? 0) > Math.abs(first?.y ?? 0))
  })

  test('a 50 mm wheel: overall 64, swivel radius 43, 40 kg, one hole for M8 (data sheet 28-040), 9 by ISO 273 medium', () => {
    expect(item('caster 50')).toMatchObject({ overallHeight: 64, swivelRadius: 43, loadKg: 40 })
    expect(item('caster 50').parts.plate).toMatchObject([{ x: 0, y: 0, diameter: 9, depth: 'through' }])
  })

  test('80 × 60 holes for 100 and 125 wheels on a plate of 105 × 80 (qedcastors.co.uk)', () => {
    for (const id of ['caster 100', 'caster 125']) {
      expect(places(id, 'plate')).toEqual(['-40 -30', '40 -30', '40 30', '-40 30'])
      expect(item(id)).toMatchObject({ plate: { x: 105, y: 80 } })
    }
  })
})

describe('pulls', () => {
  test.each([
    ['pull 64', 64],
    ['pull 160', 160],
    ['pull 320', 320],
    ['pull 3 in', 76.2],
    // Sold as 3-3/4 in (95.25), made to 96 (common practice).
    ['pull 3-3/4 in', 96],
    ['pull 5 in', 127],
  ])('%s: holes %d mm apart', (id, centres) => {
    expect(places(id, 'front')).toEqual([`0 ${-centres / 2}`, `0 ${centres / 2}`])
  })

  test('a knob has one hole', () => {
    expect(places('knob', 'front')).toEqual(['0 0'])
  })
})
