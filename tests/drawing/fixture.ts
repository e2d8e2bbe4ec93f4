import type { Vec3 } from '../../src/geometry/index.ts'
import { IDENTITY } from '../../src/geometry/index.ts'
import type { Sink } from '../../src/hardware/index.ts'
import type { Bore, BoreUse, Groove, Panel, Surface } from '../../src/panel/index.ts'
import type { LayerPatterns, Stock } from '../../src/project/index.ts'

export const PATTERNS: LayerPatterns = {
  outline: 'OUTLINE',
  bore: 'BORE-D{diameter}-DEEP{depth}',
  boreThrough: 'BORE-D{diameter}-THROUGH',
  countersink: 'COUNTERSINK-D{diameter}-DEG{angle}',
  groove: 'GROOVE-W{width}-DEEP{depth}',
  rebate: 'REBATE-W{width}-DEEP{depth}',
  cutout: 'CUTOUT',
  pocket: 'POCKET-DEEP{depth}',
  mark: 'MARK',
  note: 'NOTE',
}

export const BIRCH: Stock = {
  name: 'birch plywood 18',
  readings: [18],
  thickness: 18,
  thickest: 18,
  sheet: { length: 2500, width: 1250 },
  grain: 'along length',
  edgeTrim: 10,
  density: 680,
  stiffness: 9000,
  at: ['stock', 'birch'],
}

/** What a bore needs to say beyond the usual. */
export interface BoreFigures {
  readonly surface: Surface
  readonly at: Vec3
  readonly diameter: number
  readonly depth: number | 'through'
  readonly purpose: string
  readonly also?: string
  readonly sink?: Sink
  readonly lean?: { readonly deg: number; readonly axis: Vec3 }
}

const AXES: Readonly<Record<Surface, Vec3>> = {
  A: [0, 0, -1],
  B: [0, 0, 1],
  x0: [1, 0, 0],
  x1: [-1, 0, 0],
  y0: [0, 1, 0],
  y1: [0, -1, 0],
}

const use = (purpose: string): BoreUse => ({
  hardware: 'store/pin/1',
  item: 'pin 5',
  part: 'left',
  drilling: 'pin',
  series: 'store/pins',
  purpose,
  surface: 'A',
  depth: 13,
  keepsApart: false,
})

export interface PanelFigures extends Partial<Omit<Panel, 'bores' | 'grooves'>> {
  readonly bores?: readonly BoreFigures[]
  readonly grooves?: readonly Omit<Groove, 'id'>[]
}

/** A panel by hand: a left side 720 × 560 × 18 lying with its front edge at y = 0, unless the figures say otherwise. */
export function panelOf(figures: PanelFigures): Panel {
  const { bores = [], grooves = [], ...rest } = figures
  const thickness = rest.thickness ?? 18
  return {
    id: 'store/left-side',
    module: 'store',
    moduleName: 'Glaze store',
    key: 'left-side',
    name: 'left side',
    role: 'left side',
    stock: BIRCH,
    length: 720,
    width: 560,
    thickness,
    moduleFromPanel: IDENTITY,
    faces: { A: 'inside', B: 'outside' },
    datum: { x: 'x0', y: 'y0' },
    edges: { x0: 'bottom', x1: 'top', y0: 'front', y1: 'back' },
    at: ['modules', 'store'],
    cutouts: [],
    ...rest,
    bores: bores.map((one, k) => boreOf(one, k, thickness)),
    grooves: grooves.map((groove, k) => ({ ...groove, id: `groove-${k + 1}` })),
  }
}

function boreOf(figures: BoreFigures, k: number, thickness: number): Bore {
  const { surface, at, diameter, depth, purpose, also, sink, lean } = figures
  return {
    id: `bore-${k + 1}`,
    surface,
    at,
    axis: lean?.axis ?? AXES[surface],
    diameter,
    depth: depth === 'through' ? thickness : depth,
    through: depth === 'through',
    purpose: also === undefined ? purpose : `${purpose} and ${also}`,
    uses: also === undefined ? [use(purpose)] : [use(purpose), use(also)],
    ...(sink && { sink }),
    ...(lean && { leanDeg: lean.deg }),
  }
}

/** `count` bores from `first`, `step` apart along x or y. */
export function row(count: number, along: 'x' | 'y', step: number, first: BoreFigures): BoreFigures[] {
  return Array.from({ length: count }, (_, k) => {
    const [x, y, z] = first.at
    const at: Vec3 = along === 'x' ? [x + k * step, y, z] : [x, y + k * step, z]
    return { ...first, at }
  })
}
