import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../src/drawing/index.ts'
import { dxfOf, lintDxf } from '../../src/writers/index.ts'
import { EVERYTHING } from './drawings.ts'

const options = { units: 'mm', version: '2007', notes: true, name: 'planted.dxf' } as const
const FILE = dxfOf(EVERYTHING, { ...options, contours: 'bulges' })
const PIECES = dxfOf(EVERYTHING, { ...options, contours: 'lines and arcs' })

/** Pairs written `code value`, one a line, as the file has them. */
const lines = (pairs: string): string =>
  pairs
    .trim()
    .split('\n')
    .map((pair) => pair.trim().replace(' ', '\r\n'))
    .join('\r\n')
    .concat('\r\n')

/** The first place where these pairs stand in the file is replaced by other pairs (or by nothing). */
function plant(from: string, to: string, file = FILE): string {
  const [old, fresh] = [lines(from), to === '' ? '' : lines(to)]
  if (!file.includes(`\r\n${old}`)) throw new Error(`not in the file: ${from}`)
  return file.replace(`\r\n${old}`, () => `\r\n${fresh}`)
}

/** The text of the first entity of a kind on a layer. */
function entity(kind: string, layer: string, file = FILE): string {
  const record = file
    .split(/(?<=\r\n)(?=0\r\n)/)
    .find((r) => r.startsWith(`0\r\n${kind}\r\n`) && r.includes(`\r\n8\r\n${layer}\r\n`))
  if (record === undefined) throw new Error(`no ${kind} on ${layer}`)
  return record
}

/** A copy of an entity under a handle of its own, put where the original stands. */
const twice = (kind: string, layer: string, change = (record: string) => record, file = FILE): string => {
  const record = entity(kind, layer, file)
  const copy = change(record).replace(/\r\n5\r\n[0-9A-F]+\r\n/, '\r\n5\r\nFFF\r\n')
  return file.replace(record, () => record + copy).replace(/(\$HANDSEED\r\n5\r\n)[0-9A-F]+/, '$11000')
}

const edited = (kind: string, layer: string, change: (record: string) => string, file = FILE): string => {
  const record = entity(kind, layer, file)
  const fresh = change(record)
  if (fresh === record) throw new Error('nothing was planted')
  return file.replace(record, () => fresh)
}

const value = (code: number, from: string, to: string) => (record: string) =>
  record.replace(`\r\n${code}\r\n${from}\r\n`, () => `\r\n${code}\r\n${to}\r\n`)

/** A second contour on the same layer, by its points. */
const contour = (layer: string, points: [number, number][]): string =>
  twice('LWPOLYLINE', layer, (record) => {
    const head = record.slice(0, record.indexOf('\r\n10\r\n')).replace(/\r\n90\r\n\d+/, `\r\n90\r\n${points.length}`)
    return `${head}\r\n${points.map(([x, y]) => `10\r\n${x.toFixed(1)}\r\n20\r\n${y.toFixed(1)}\r\n`).join('')}`
  })

const linetypesLast = (): string => {
  const table = /0\r\nTABLE\r\n2\r\nLTYPE\r\n[\s\S]*?0\r\nENDTAB\r\n/.exec(FILE)?.[0] ?? ''
  return FILE.replace(table, '').replace(/(0\r\nTABLE\r\n2\r\nVPORT)/, (next) => table + next)
}

test('the files that the faults are planted in have none', () => {
  expect([...lintDxf(FILE), ...lintDxf(PIECES)]).toEqual([])
})

describe('every rule reports what is planted for it', () => {
  test.each<[rule: string, fault: string, file: string]>([
    ['bytes', 'bare LF', FILE.replaceAll('\r\n', '\n')],
    ['bytes', 'CR CR LF', FILE.replace('\r\n', '\r\r\n')],
    ['bytes', 'byte order mark', `\ufeff${FILE}`],
    ['bytes', 'no line end after EOF', FILE.slice(0, -2)],
    ['bytes', 'something after EOF', `${FILE}0\r\nEOF2\r\n`],
    ['bytes', 'a letter that is not ASCII', plant('1 front D5', '1 frönt D5')],
    ['pairs', 'a lost line', FILE.replace('ENTITIES\r\n', '')],
    ['pairs', 'a code that is no number', plant('8 MARK', 'x8 MARK')],
    ['pairs', 'a control character', plant('1 front D5', '1 front\u0001D5')],
    ['pairs', 'a line break in a text', FILE.replace('front D5', 'front\r\nD5')],
    ['sections', 'a section that is not closed', plant('0 ENDSEC\n0 SECTION\n2 TABLES', '0 SECTION\n2 TABLES')],
    ['sections', 'a section that is missing', plant('0 SECTION\n2 CLASSES\n0 ENDSEC', '')],
    ['sections', 'an entity outside', plant('0 EOF', '0 POINT\n0 EOF')],
    ['blank', 'a unit without value', FILE.replace('$INSUNITS\r\n70\r\n4\r\n', '$INSUNITS\r\n70\r\n\r\n')],
    ['blank', 'an empty text', FILE.replace('\r\n1\r\nfront D5\r\n', '\r\n1\r\n\r\n')],
    ['reals', 'a decimal comma', plant('40 2.5', '40 2,5')],
    ['reals', 'an exponent', plant('40 2.5', '40 2.5e0')],
    ['reals', 'NaN', plant('40 2.5', '40 NaN')],
    ['reals', 'no decimal point', plant('40 2.5', '40 2')],
    ['reals', 'minus nothing', plant('30 0.0', '30 -0.0')],
    ['reals', 'seven digits', plant('40 2.5', '40 1000000.0')],
    ['reals', 'seven places', plant('40 2.5', '40 2.5000001')],
    ['words', 'a Unicode escape', plant('1 front D5', '1 front \\U+00D8')],
    ['words', 'a percent order', plant('1 front D5', '1 front %%c')],
    ['words', 'a caret order', plant('1 front D5', '1 front ^J')],
    ['colours', 'a true colour', plant('2 MARK\n62 6', '2 MARK\n62 6\n420 255')],
    ['colours', 'a colour of none of our operations', plant('2 MARK\n62 6', '2 MARK\n62 99')],
    ['colours', 'colour 0', plant('2 MARK\n62 6', '2 MARK\n62 0')],
    ['extrusion', 'a mirrored plane', edited('CIRCLE', 'MARK', (r) => `${r}230\r\n-1.0\r\n`)],
    ['handles', 'one used twice', plant('5 3\n330 1', '5 2\n330 1')],
    ['handles', 'zero', plant('5 3\n330 1', '5 0\n330 1')],
    ['handles', 'not hexadecimal', plant('5 3\n330 1', '5 3G\n330 1')],
    ['handles', 'missing', edited('CIRCLE', 'MARK', (r) => r.replace(/\r\n5\r\n[0-9A-F]+/, ''))],
    ['handles', 'a seed that is too low', FILE.replace(/(\$HANDSEED\r\n5\r\n)[0-9A-F]+/, '$12')],
    ['handles', 'an owner that does not exist', plant('5 3\n330 1', '5 3\n330 FFFF')],
    ['handles', 'a reference to nothing', FILE.replace(/\r\n350\r\n[0-9A-F]+/, '\r\n350\r\nFFFF')],
    [
      'owners',
      'an entity of another owner',
      edited('CIRCLE', 'MARK', (r) => r.replace(/\r\n330\r\n[0-9A-F]+/, '\r\n330\r\n1')),
    ],
    ['header', 'R12 over newer tables', plant('1 AC1021', '1 AC1009')],
    ['header', 'no version', plant('9 $ACADVER\n1 AC1021', '')],
    ['header', 'inches and metric', FILE.replace('$INSUNITS\r\n70\r\n4', '$INSUNITS\r\n70\r\n1')],
    ['header', 'no measurement', plant('9 $MEASUREMENT\n70 1', '')],
    ['header', 'no code page', plant('9 $DWGCODEPAGE\n3 ANSI_1252', '')],
    ['header', 'extents too large', plant('10 400.0\n20 300.0\n30 0.0', '10 400.1\n20 300.0\n30 0.0')],
    ['header', 'extents without the room of a text', plant('10 -17.44\n20 -20.0', '10 -15.0\n20 -20.0')],
    [
      'reals',
      'a view with seven places',
      FILE.replace(/(AcDbViewportTableRecord[\s\S]*?\r\n12\r\n)[\d.-]+/, '$11.0000001'),
    ],
    ['place', 'a bore over the edge', edited('CIRCLE', 'BORE-D5-DEEP13', value(10, '37.0', '2.4'))],
    ['header', 'extents with placeholders', plant('10 -17.44\n20 -20.0', '10 999999.0\n20 999999.0')],
    ['linetypes', 'one that is not defined', plant('6 CONTINUOUS', '6 WIGGLY')],
    ['linetypes', 'the table after the layers', linetypesLast()],
    ['layers', 'a space in a name', FILE.replaceAll('BORE-D5-DEEP13', 'BORE D5')],
    ['layers', 'small letters', FILE.replaceAll('BORE-D5-DEEP13', 'bore')],
    ['layers', 'a name of 32 characters', FILE.replaceAll('BORE-D5-DEEP13', 'B'.repeat(32))],
    ['layers', 'two of one name', plant('2 COUNTERSINK-D8', '2 MARK')],
    ['layers', 'an entity on a layer that is not in the table', edited('CIRCLE', 'MARK', value(8, 'MARK', 'MARKS'))],
    ['layers', 'an entity on layer 0', edited('CIRCLE', 'MARK', value(8, 'MARK', '0'))],
    ['kinds', 'text on a cutting layer', edited('TEXT', 'NOTE', value(8, 'NOTE', 'OUTLINE'))],
    ['kinds', 'text on a mark layer', edited('TEXT', 'NOTE', value(8, 'NOTE', 'MARK'))],
    ['kinds', 'a loose line beside contours', edited('LINE', 'MARK', value(8, 'MARK', 'OUTLINE'))],
    ['kinds', 'a spline', edited('CIRCLE', 'MARK', (r) => r.replace('CIRCLE', 'SPLINE'))],
    ['kinds', 'an old polyline', edited('LWPOLYLINE', 'CUTOUT', (r) => r.replace('LWPOLYLINE', 'POLYLINE'))],
    ['markers', 'an arc without its own', edited('ARC', 'CUTOUT', (r) => r.replace('100\r\nAcDbArc\r\n', ''), PIECES)],
    ['markers', 'a circle marked as a line', edited('CIRCLE', 'MARK', value(100, 'AcDbCircle', 'AcDbLine'))],
    ['contours', 'open', edited('LWPOLYLINE', 'OUTLINE', value(70, '1', '0'))],
    ['contours', 'a wrong count', edited('LWPOLYLINE', 'OUTLINE', value(90, '4', '5'))],
    [
      'contours',
      'a single vertex',
      edited('LWPOLYLINE', 'OUTLINE', (r) => value(90, '4', '1')(r).replace(/(20\r\n0\.0\r\n)10\r\n[\s\S]*/, '$1')),
    ],
    [
      'contours',
      'the first point again at the end',
      contour('OUTLINE', [
        [10, 10],
        [20, 10],
        [20, 20],
        [10, 10],
      ]),
    ],
    ['contours', 'a gap of 0.001', edited('LINE', 'OUTLINE', value(11, '400.0', '400.001'), PIECES)],
    ['contours', 'a gap at an arc', edited('ARC', 'CUTOUT', value(40, '15.0', '15.0001'), PIECES)],
    ['sizes', 'a hole of nothing', edited('CIRCLE', 'BORE-D5-DEEP13', value(40, '2.5', '0.0'))],
    ['sizes', 'a negative radius', edited('CIRCLE', 'BORE-D5-DEEP13', value(40, '2.5', '-2.5'))],
    [
      'sizes',
      'a segment of 0.0005 mm',
      contour('OUTLINE', [
        [10, 10],
        [10, 10],
        [20, 20],
      ]),
    ],
    [
      'sizes',
      'a contour of half a square millimetre',
      contour('OUTLINE', [
        [10, 10],
        [11, 10],
        [10, 11],
      ]),
    ],
    ['angles', 'below 0', edited('ARC', 'CUTOUT', value(50, '270.0', '-90.0'), PIECES)],
    ['angles', '360', edited('ARC', 'CUTOUT', value(51, '90.0', '360.0'), PIECES)],
    ['angles', 'a full turn', edited('ARC', 'CUTOUT', value(51, '90.0', '270.0'), PIECES)],
    ['twice', 'a circle', twice('CIRCLE', 'BORE-D5-DEEP13')],
    ['twice', 'a contour', twice('LWPOLYLINE', 'CUTOUT')],
    ['twice', 'an arc', twice('ARC', 'CUTOUT', undefined, PIECES)],
    [
      'twice',
      'part of an edge, the other way',
      contour('OUTLINE', [
        [30, 0],
        [10, 0],
        [20, 20],
      ]),
    ],
    [
      'twice',
      'an edge shared with a cutout',
      contour('CUTOUT', [
        [390, 10],
        [400, 10],
        [400, 20],
      ]),
    ],
    ['place', 'a bore outside', edited('CIRCLE', 'BORE-D5-DEEP13', value(10, '37.0', '-37.0'))],
    [
      'place',
      'an outline elsewhere',
      edited('LWPOLYLINE', 'OUTLINE', (r) => r.replaceAll('\r\n0.0\r\n', '\r\n1.0\r\n')),
    ],
  ])('%s: %s', (rule, _fault, file) => {
    expect(lintDxf(file).map((found) => found.split(':')[0])).toContain(rule)
  })
})

test('an entity injected through a text is read as one more entity, which the writer counts', () => {
  const injected = FILE.replace(
    'front D5',
    'front\r\n0\r\nCIRCLE\r\n8\r\nOUTLINE\r\n10\r\n5.0\r\n20\r\n5.0\r\n40\r\n2.0',
  )
  expect(lintDxf(injected).map((found) => found.split(':')[0])).toContain('handles')
})

test('where grooves share an edge with the outline, or with another groove layer, nothing is cut twice', () => {
  const rebate = (name: string) => ({
    name,
    operation: 'groove' as const,
    entities: EVERYTHING.layers.find((l) => l.operation === 'groove')?.entities ?? [],
  })
  const drawing: Drawing = { ...EVERYTHING, layers: [...EVERYTHING.layers, rebate('REBATE-W6P2-DEEP4')] }
  expect(lintDxf(dxfOf(drawing, { ...options, contours: 'bulges' }))).toEqual([])
})

test('nothing at all is not a DXF file', () => {
  expect(lintDxf('').map((found) => found.split(':')[0])).toContain('bytes')
})
