import { IDENTITY } from '../../src/geometry/index.ts'
import type { Sink } from '../../src/hardware/index.ts'
import type { Bore, Groove, Panel, Surface } from '../../src/panel/index.ts'

/** A bore in few words; square to its surface unless `lean` says which way it leans. */
export interface BoreWords {
  readonly on?: Surface
  readonly x: number
  readonly y: number
  readonly z?: number
  readonly d: number
  readonly deep: number | 'through'
  readonly series?: string
  readonly purpose?: string
  readonly sink?: Sink
  readonly lean?: readonly [number, number]
}

const SQUARE: Readonly<Record<Surface, readonly [number, number, number]>> = {
  A: [0, 0, -1],
  B: [0, 0, 1],
  x0: [1, 0, 0],
  x1: [-1, 0, 0],
  y0: [0, 1, 0],
  y1: [0, -1, 0],
}

const LEAN_DEG = 15
const COS_15 = Math.cos((LEAN_DEG * Math.PI) / 180)
const SIN_15 = Math.sin((LEAN_DEG * Math.PI) / 180)

export function boreOf(words: BoreWords, index: number, thickness: number): Bore {
  const { on = 'A', x, y, d, deep, series = 'alone', purpose = 'test hole', sink, lean } = words
  const z = words.z ?? (on === 'A' ? 0 : on === 'B' ? -thickness : -thickness / 2)
  return {
    id: `bore-${index + 1}`,
    surface: on,
    at: [x, y, z],
    axis: lean === undefined ? SQUARE[on] : [lean[0] * COS_15, lean[1] * COS_15, -SIN_15],
    diameter: d,
    depth: deep === 'through' ? thickness : deep,
    through: deep === 'through',
    ...(sink !== undefined && { sink }),
    ...(lean !== undefined && { leanDeg: LEAN_DEG }),
    purpose,
    uses: [
      {
        hardware: `h-${index}`,
        item: 'item',
        part: 'part',
        drilling: 'hole',
        series,
        purpose,
        surface: on,
        depth: deep === 'through' ? thickness : deep,
        keepsApart: false,
      },
    ],
  }
}

/** `count` like bores in a row. */
export function row(first: BoreWords, step: readonly [number, number], count: number): BoreWords[] {
  return Array.from({ length: count }, (_, k) => ({ ...first, x: first.x + k * step[0], y: first.y + k * step[1] }))
}

export interface PanelWords {
  readonly name: string
  readonly length: number
  readonly width: number
  readonly thickness?: number
  readonly role?: Panel['role']
  readonly edges?: Panel['edges']
  readonly datum?: Panel['datum']
  readonly faces?: Panel['faces']
  readonly bores: readonly BoreWords[]
  readonly grooves?: readonly Groove[]
}

const SIDE_EDGES = { x0: 'bottom', x1: 'top', y0: 'front', y1: 'back' } as const

export function panelOf(words: PanelWords): Panel {
  const thickness = words.thickness ?? 18.1
  return {
    id: `glaze-store/${words.name.replaceAll(' ', '-')}`,
    module: 'glaze-store',
    moduleName: 'Glaze store',
    key: words.name.replaceAll(' ', '-'),
    name: words.name,
    role: words.role ?? 'left side',
    stock: {
      name: 'birch ply 18',
      readings: [thickness],
      thickness,
      thickest: thickness,
      sheet: { length: 2440, width: 1220 },
      grain: 'along length',
      edgeTrim: 5,
      density: 680,
      stiffness: 8000,
      at: ['stock', 'birch'],
    },
    length: words.length,
    width: words.width,
    thickness,
    moduleFromPanel: IDENTITY,
    faces: words.faces ?? { A: 'inside', B: 'outside' },
    datum: words.datum ?? { x: 'x0', y: 'y0' },
    at: ['modules', 'glaze store'],
    edges: words.edges ?? SIDE_EDGES,
    bores: words.bores.map((bore, index) => boreOf(bore, index, thickness)),
    grooves: words.grooves ?? [],
    cutouts: [],
  }
}

const SCREW_SINK: Sink = { shape: 'cone', diameter: 9, angleDeg: 90 }
const pin = (series: string) => ({ d: 5, deep: 13, series, purpose: 'shelf pin' }) as const

/** 760 × 540: two pin rows, two hinge plates, screws into top and bottom, bolts to the neighbour. */
export const SIDE: Panel = panelOf({
  name: 'left side',
  length: 760,
  width: 540,
  bores: [
    ...row({ x: 96, y: 37, ...pin('pins front') }, [32, 0], 18),
    ...row({ x: 96, y: 485, ...pin('pins rear') }, [32, 0], 18),
    ...row({ x: 64, y: 37, d: 5, deep: 13, series: 'hinge 1', purpose: 'hinge plate' }, [-32, 0], 2),
    ...row({ x: 672 + 32, y: 37, d: 5, deep: 13, series: 'hinge 2', purpose: 'hinge plate' }, [24, 0], 2),
    ...row(
      { x: 9.05, y: 50, d: 5, deep: 'through', series: 'bottom', purpose: 'screw', sink: SCREW_SINK, on: 'B' },
      [0, 146.667],
      4,
    ),
    ...row({ x: 150, y: 75, d: 7, deep: 'through', series: 'join', purpose: 'joining bolt' }, [460, 0], 2),
    ...row({ x: 150, y: 440, d: 7, deep: 'through', series: 'join', purpose: 'joining bolt' }, [460, 0], 2),
  ],
  grooves: [
    {
      id: 'groove-1',
      kind: 'groove',
      face: 'A',
      min: [0, 515],
      max: [760, 521.2],
      depth: 8,
      roundEnds: false,
      purpose: 'groove for the back',
    },
  ],
})

const cup = (x: number) => [
  { x, y: 22.5, d: 35, deep: 12.5, series: 'door hinge', purpose: 'hinge cup' },
  { x: x - 22.5, y: 32, d: 8, deep: 11, series: 'door hinge', purpose: 'hinge dowel' },
  { x: x + 22.5, y: 32, d: 8, deep: 11, series: 'door hinge', purpose: 'hinge dowel' },
]

/** 715 × 397 door: two hinges, a pull. Face A is hidden. */
export const DOOR: Panel = panelOf({
  name: 'left door',
  role: 'door',
  length: 715,
  width: 397,
  faces: { A: 'hidden face', B: 'front' },
  edges: { x0: 'bottom', x1: 'top', y0: 'left', y1: 'right' },
  bores: [
    ...cup(80),
    ...cup(635),
    ...row({ x: 500, y: 347, d: 5, deep: 'through', series: 'pull', purpose: 'pull' }, [128, 0], 2),
  ],
})

/** 764 × 521 bottom: dowels in both ends, pocket screws at the back, caster screws, a groove for the back. */
export const BOTTOM: Panel = panelOf({
  name: 'bottom',
  role: 'bottom',
  length: 764,
  width: 521,
  faces: { A: 'inside', B: 'underneath' },
  edges: { x0: 'left', x1: 'right', y0: 'front', y1: 'back' },
  bores: [
    ...(['x0', 'x1'] as const).flatMap((on) =>
      row(
        { on, x: on === 'x0' ? 0 : 764, y: 40, z: -9, d: 8, deep: 21, series: `dowels ${on}`, purpose: 'dowel' },
        [0, 110.25],
        5,
      ),
    ),
    ...row(
      { x: 60, y: 490, d: 9.5, deep: 18.1, series: 'pockets', purpose: 'pocket screw', lean: [0, 1] },
      [161, 0],
      5,
    ),
    ...row({ x: 66, y: 56, d: 7, deep: 'through', series: 'caster 1', purpose: 'caster' }, [60, 0], 2),
    ...row({ x: 66, y: 136, d: 7, deep: 'through', series: 'caster 1', purpose: 'caster' }, [60, 0], 2),
  ],
  grooves: [
    {
      id: 'groove-1',
      kind: 'groove',
      face: 'A',
      min: [0, 500],
      max: [764, 506.2],
      depth: 8,
      roundEnds: false,
      purpose: 'groove for the back',
    },
  ],
})

/** A square to see which way round a face is drawn: one corner bored on each face. */
export const FLAG: Panel = panelOf({
  name: 'flag',
  length: 300,
  width: 200,
  bores: [
    { x: 40, y: 30, d: 10, deep: 8 },
    { on: 'B', x: 40, y: 30, d: 8, deep: 8 },
  ],
})
