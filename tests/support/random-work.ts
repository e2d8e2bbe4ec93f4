import fc from 'fast-check'
import type { ClosedPath, Vec3 } from '../../src/geometry/index.ts'
import { circlePath, rectanglePath, slotPath } from '../../src/geometry/index.ts'
import type { Sink } from '../../src/hardware/index.ts'
import type { Cutout, Groove, Panel, Surface } from '../../src/panel/index.ts'
import { type BoreFigures, panelOf } from '../drawing/fixture.ts'

const LENGTH = 260
const WIDTH = 180

const half = (most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: 2 * most }).map((k) => k / 2)

const at = (surface: Surface, x: number, y: number, z: number): Vec3 =>
  ({
    A: [x, y, 0] as Vec3,
    B: [x, y, -18] as Vec3,
    x0: [0, y, -z] as Vec3,
    x1: [LENGTH, y, -z] as Vec3,
    y0: [x, 0, -z] as Vec3,
    y1: [x, WIDTH, -z] as Vec3,
  })[surface]

const sink: fc.Arbitrary<Sink | undefined> = fc.oneof(
  { weight: 3, arbitrary: fc.constant(undefined) },
  {
    weight: 1,
    arbitrary: fc.integer({ min: 9, max: 14 }).map((diameter): Sink => ({ shape: 'cone', diameter, angleDeg: 90 })),
  },
  {
    weight: 1,
    arbitrary: fc.integer({ min: 9, max: 14 }).map((diameter): Sink => ({ shape: 'counterbore', diameter, depth: 4 })),
  },
)

/** A bore in any surface, with a sink or leaning where that can be. */
const bore: fc.Arbitrary<BoreFigures> = fc
  .record({
    surface: fc.constantFrom<Surface[]>('A', 'A', 'B', 'B', 'x0', 'x1', 'y0', 'y1'),
    x: half(LENGTH),
    y: half(WIDTH),
    z: half(18),
    diameter: fc.constantFrom(3, 5, 8, 15, 35),
    depth: fc.integer({ min: 4, max: 17 }),
    long: fc.integer({ min: 15, max: 60 }),
    sink,
    lean: fc.constantFrom(0, 0, 0, 0, 15, 40),
    turn: fc.integer({ min: 0, max: 7 }),
  })
  .map(({ surface, x, y, z, diameter, depth, long, sink: wide, lean, turn }): BoreFigures => {
    const inFace = surface === 'A' || surface === 'B'
    const [c, s] = [Math.cos((lean * Math.PI) / 180), Math.sin((lean * Math.PI) / 180)]
    const way = (turn * Math.PI) / 4
    const axis: Vec3 = [c * Math.cos(way), c * Math.sin(way), surface === 'A' ? -s : s]
    return {
      surface,
      at: at(surface, x, y, z),
      diameter,
      depth: inFace && lean === 0 && turn === 7 ? 'through' : inFace && lean === 0 ? depth : long,
      purpose: 'hole',
      ...(wide !== undefined && lean === 0 && wide.diameter > diameter && { sink: wide }),
      ...(inFace && lean !== 0 && { lean: { deg: lean, axis } }),
    }
  })

const groove: fc.Arbitrary<Omit<Groove, 'id'>> = fc
  .record({
    face: fc.constantFrom<('A' | 'B')[]>('A', 'B'),
    along: fc.boolean(),
    from: half(120),
    long: fc.integer({ min: 30, max: 200 }),
    off: half(160),
    wide: fc.integer({ min: 4, max: 19 }),
    depth: fc.integer({ min: 3, max: 12 }),
    roundEnds: fc.boolean(),
  })
  .map(({ face, along, from, long, off, wide, depth, roundEnds }) => {
    const size = along ? LENGTH : WIDTH
    const to = Math.min(size, from + long)
    const min = along ? ([from, off] as const) : ([off, from] as const)
    const max = along ? ([to, off + wide] as const) : ([off + wide, to] as const)
    return { kind: 'groove', face, min, max, depth, roundEnds, purpose: 'groove' }
  })

/** Round, long, square, with corners that turn inward by lines and by arcs. */
const shape: fc.Arbitrary<ClosedPath> = fc
  .record({ x: half(200), y: half(130), size: fc.integer({ min: 12, max: 50 }), form: fc.integer({ min: 0, max: 4 }) })
  .map(({ x, y, size, form }): ClosedPath => {
    if (form === 0) return circlePath([x, y], size / 2)
    if (form === 1) return slotPath([x, y], [x + size, y + size / 2], 10)
    if (form === 2) return rectanglePath([x, y], [x + size, y + size], 4)
    const corners: readonly (readonly [number, number])[] = [
      [0, 0],
      [1, 0],
      [1, 0.4],
      [0.4, 1],
      [0, 1],
    ]
    // Its third side is straight, or a quarter circle that bows into the shape.
    return corners.map(([u, v], k) => ({
      at: [x + u * size, y + v * size] as const,
      bulge: form === 4 && k === 2 ? -Math.tan(Math.PI / 8) : 0,
    }))
  })

const cutout: fc.Arbitrary<Omit<Cutout, 'id'>> = fc
  .record({
    path: shape,
    face: fc.constantFrom<('A' | 'B')[]>('A', 'B'),
    depth: fc.integer({ min: 3, max: 18 }),
    notch: fc.constantFrom(false, false, true),
  })
  .map(({ path, face, depth, notch }) => ({
    path,
    face: depth === 18 ? 'A' : face,
    depth,
    through: depth === 18,
    ...(notch && { notch }),
    purpose: 'port',
  }))

/** A small panel full of work from all sides; every fourth bore is of one piece of hardware with the one before. */
export const crowdedPanel: fc.Arbitrary<Panel> = fc
  .record({
    bores: fc.array(bore, { minLength: 2, maxLength: 14 }),
    grooves: fc.array(groove, { maxLength: 3 }),
    cutouts: fc.array(cutout, { maxLength: 3 }),
  })
  .map(({ bores, grooves, cutouts }) => {
    const panel = panelOf({
      length: LENGTH,
      width: WIDTH,
      bores,
      grooves,
      cutouts: cutouts.map((one, k) => ({ ...one, id: `opening-${k + 1}` })),
    })
    return {
      ...panel,
      bores: panel.bores.map((one, k) => ({
        ...one,
        uses: one.uses.map((use) => ({ ...use, hardware: `piece ${k % 4 === 3 ? k - 1 : k}` })),
      })),
    }
  })
