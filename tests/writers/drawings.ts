import type { ClosedPath, Drawing, Layer, Point } from '../../src/drawing/index.ts'

/** A contour of straight lines. */
export function polygon(...points: Point[]): ClosedPath {
  return { kind: 'path', vertices: points.map((at) => ({ at, bulge: 0 })) }
}

/** A drawing of a blank of 400 × 300 with these layers, and room of 60 around it. */
export function blankWith(...layers: Layer[]): Drawing {
  const outline = polygon([0, 0], [400, 0], [400, 300], [0, 300])
  return {
    title: 'blank',
    view: { min: [-60, -60], max: [460, 360] },
    flipHeight: 300,
    layers: [{ name: 'OUTLINE', operation: 'outline', entities: [outline] }, ...layers],
  }
}

/**
 * A slot 90 long and 30 wide, its middle at (230, 115): straight from x = 200 to 260, round ends of radius 15. The last
 * vertex has a bulge, so the closing segment is an arc.
 */
export const SLOT: ClosedPath = {
  kind: 'path',
  vertices: [
    { at: [200, 100], bulge: 0 },
    { at: [260, 100], bulge: 1 },
    { at: [260, 130], bulge: 0 },
    { at: [200, 130], bulge: 1 },
  ],
}

/** One of everything that may be drawn. */
export const EVERYTHING: Drawing = blankWith(
  { name: 'CUTOUT', operation: 'cutout', entities: [SLOT] },
  {
    name: 'BORE-D5-DEEP13',
    operation: 'bore',
    entities: [0, 1, 2].map((i) => ({
      kind: 'circle',
      at: [37, 60 + 32 * i],
      radius: 2.5,
      id: `bore-${i + 1}`,
      title: `shelf pin 5 × 13, 37 from front, ${60 + 32 * i} from bottom`,
    })),
  },
  { name: 'COUNTERSINK-D8', operation: 'countersink', entities: [{ kind: 'circle', at: [100, 9], radius: 4 }] },
  {
    name: 'GROOVE-W6P2-DEEP8',
    operation: 'groove',
    entities: [polygon([0, 270], [400, 270], [400, 276.2], [0, 276.2])],
  },
  {
    name: 'MARK',
    operation: 'mark',
    entities: [
      { kind: 'line', from: [300, 20], to: [320, 20] },
      { kind: 'line', from: [310, 10], to: [310, 30], pen: 'hair' },
      { kind: 'circle', at: [310, 20], radius: 4.75, pen: 'dashed' },
    ],
  },
  {
    name: 'NOTE',
    operation: 'note',
    entities: [
      { kind: 'text', at: [200, 150], height: 12, anchor: 'middle', text: 'left side 400 × 300 × 18.2', bold: true },
      { kind: 'text', at: [-10, 150], height: 8, anchor: 'end', text: 'front Ø5', turnDeg: 90 },
      { ...polygon([-5, 0], [-15, 3], [-15, -3]), filled: true },
      { kind: 'line', from: [0, -20], to: [100, -20], pen: 'bold' },
    ],
  },
)

/** Names and labels that have broken writers of DXF, SVG and XML. */
export const HOSTILE: readonly string[] = [
  '0',
  '  spaces  ',
  'A & B',
  'a<b>"c\'',
  'x ]]> y ]]> z',
  'line\nbreak',
  'return\rhere',
  'tab\there',
  'nul\u0000',
  'soh\u0001',
  'nel\u0085',
  'ls\u2028ps\u2029',
  'lone \ud800 half',
  '\ufffe\uffff',
  '%%c',
  '%%%%d%',
  '^J',
  '\\P',
  '\\U+00D8',
  '0\nCIRCLE\n8\nOUTLINE\n10\n1.0\n20\n1.0\n40\n5.0',
  '0\r\nENDSEC\r\n0\r\nEOF',
  '__proto__',
  '10',
  'constructor',
  'x'.repeat(300),
  'Ø5 äöü – Жук ⌀',
  '抽屉',
  '🪵',
  'שלום \u202eabc',
  '</title><script>alert(1)</script>',
]
