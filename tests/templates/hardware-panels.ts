import { rectanglePath } from '../../src/geometry/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { type BoreWords, type PanelWords, panelOf } from '../drawing/page-panels.ts'

/** Bores of one piece of hardware; `main` is what the first of them is for. */
export interface Grip {
  readonly hardware: string
  readonly item: string
  readonly bores: readonly BoreWords[]
}

/** A panel with its bores by the piece of hardware that asks for them. */
export function gripped(words: Omit<PanelWords, 'bores'>, grips: readonly Grip[]): Panel {
  const panel = panelOf({ ...words, bores: grips.flatMap(({ bores }) => bores) })
  const owners = grips.flatMap(({ hardware, item, bores }) => bores.map(() => ({ hardware, item })))
  return {
    ...panel,
    bores: panel.bores.map((bore, k) => ({ ...bore, uses: bore.uses.map((use) => ({ ...use, ...owners[k] })) })),
  }
}

/** A cup 22.5 mm from the edge y = 0, its dowels 9.5 mm further in and 22.5 mm to either side. */
export const cup = (number: number, x: number): Grip => ({
  hardware: `hinge/${number}`,
  item: 'hinge 35 full',
  bores: [
    { x, y: 22.5, d: 35, deep: 12.5, purpose: 'hinge cup' },
    { x: x - 22.5, y: 32, d: 8, deep: 11, purpose: 'hinge dowel' },
    { x: x + 22.5, y: 32, d: 8, deep: 11, purpose: 'hinge dowel' },
  ],
})

const DOOR_EDGES = { x0: 'bottom', x1: 'top', y0: 'left', y1: 'right' } as const

/** 720 × 397, three cups at its left edge, 80, 360 and 80 from the top; a pull of 128 upright near the right edge. */
export const THREE_CUPS = gripped({ name: 'left door', role: 'door', length: 720, width: 397, edges: DOOR_EDGES }, [
  cup(1, 80),
  cup(2, 360),
  cup(3, 640),
  {
    hardware: 'pull',
    item: 'pull 128',
    bores: [
      { x: 296, y: 357, d: 4.5, deep: 'through', purpose: 'pull' },
      { x: 424, y: 357, d: 4.5, deep: 'through', purpose: 'pull' },
    ],
  },
])

const mirrored = (panel: Panel, name: string): Panel => ({
  ...panel,
  id: `glaze-store/${name.replaceAll(' ', '-')}`,
  key: name.replaceAll(' ', '-'),
  name,
  datum: { x: 'x0', y: 'y1' },
  bores: panel.bores.map((bore) => ({ ...bore, at: [bore.at[0], panel.width - bore.at[1], bore.at[2]] })),
})

/** The door of the other hand: hinged on the right. */
export const OTHER_HAND = mirrored(THREE_CUPS, 'right door')

/** Two holes 32 mm apart on the line 37 mm from the front. */
const plate = (number: number, x: number): Grip => ({
  hardware: `hinge/${number}`,
  item: 'hinge 35 full',
  bores: [
    { x: x - 16, y: 37, d: 5, deep: 13, purpose: 'hinge plate' },
    { x: x + 16, y: 37, d: 5, deep: 13, purpose: 'hinge plate' },
  ],
})

/** 800 × 560 with plates 80 and 640 from the bottom, and a slide of four holes 300 from there: 37, 165, 261, 389 from the front. */
export const PLATES = gripped({ name: 'left side', length: 800, width: 560 }, [
  plate(1, 80),
  plate(2, 640),
  {
    hardware: 'slide',
    item: 'slide 500',
    bores: [37, 165, 261, 389].map((y) => ({ x: 300, y, d: 5, deep: 13, purpose: 'drawer slide' })),
  },
])

/** The four bolts of a caster plate about its middle, 60 apart along x and 80 along y. */
const caster = (number: number, x: number, y: number): Grip => ({
  hardware: `caster/${number}`,
  item: 'caster 75',
  bores: [
    [-30, -40],
    [30, -40],
    [30, 40],
    [-30, 40],
  ].map(([dx = 0, dy = 0]) => ({ x: x + dx, y: y + dy, d: 8.5, deep: 'through', purpose: 'caster bolt' })),
})

const BOTTOM_EDGES = { x0: 'left', x1: 'right', y0: 'front', y1: 'back' } as const

/** 600 × 520 with four casters, 60 from the sides and 70 from front and back. */
export const CASTERS = gripped({ name: 'bottom', role: 'bottom', length: 600, width: 520, edges: BOTTOM_EDGES }, [
  caster(1, 60, 70),
  caster(2, 540, 70),
  caster(3, 540, 450),
  caster(4, 60, 450),
])

/** 800 × 320: a pull of 128 in its middle. */
export const LONE_PULL = gripped(
  {
    name: 'drawer front',
    role: 'drawer front',
    length: 800,
    width: 320,
    edges: { ...DOOR_EDGES, x0: 'left', x1: 'right', y0: 'bottom', y1: 'top' },
  },
  [
    {
      hardware: 'pull',
      item: 'pull 128',
      bores: [336, 464].map((x) => ({ x, y: 160, d: 4.5, deep: 'through', purpose: 'pull' })),
    },
  ],
)

/** 500 × 300: two cams 34 from the left edge, each with its bolt in that edge, 9 below the face. */
export const CAMS = gripped(
  { name: 'shelf', role: 'fixed shelf', length: 500, width: 300, thickness: 18, edges: BOTTOM_EDGES },
  [50, 250].map((y, k) => ({
    hardware: `cam/${k + 1}`,
    item: 'cam 15 for 18',
    bores: [
      { x: 34, y, d: 15, deep: 12.5, purpose: 'cam' },
      { on: 'x0', x: 0, y, z: -9, d: 8, deep: 34, purpose: 'cam bolt' },
    ],
  })),
)

/** 700 × 580 with an opening of 320 × 240 whose corners are round, 12 mm; and a stopped groove along it. */
export const INSERT: Panel = {
  ...gripped({ name: 'machine top', role: 'machine top', length: 700, width: 580, edges: BOTTOM_EDGES }, []),
  cutouts: [
    {
      id: 'insert-opening',
      face: 'A',
      path: rectanglePath([190, 170], [510, 410], 12),
      depth: 18.1,
      through: true,
      purpose: 'opening for the insert',
    },
  ],
  grooves: [
    {
      id: 'groove-1',
      kind: 'groove',
      face: 'A',
      min: [60, 480],
      max: [640, 492],
      depth: 8,
      roundEnds: true,
      purpose: 'track slot',
    },
  ],
}
