import fc from 'fast-check'
import type { Bore, Panel } from '../../src/panel/index.ts'
import type { FacePoint, LoosePiece, PiecePlace, Rooms, StripFace } from '../../src/templates/index.ts'
import { type BoreWords, panelOf } from '../drawing/page-panels.ts'

/** Room of an A4 sheet and of a larger one, mm. */
export const SMALL: Rooms = { upright: { width: 180, height: 240 }, lying: { width: 266, height: 154 } }
export const LARGE: Rooms = { upright: { width: 266, height: 370 }, lying: { width: 390, height: 246 } }

/** Where a bore lies as the face is seen; a bore in an edge lies as far beyond the edge as it lies below the face. */
export function seen({ panel, face }: StripFace, { at, surface }: Bore): FacePoint {
  const x = face === 'B' ? panel.length - at[0] : at[0]
  if (surface === 'A' || surface === 'B') return [x, at[1]]
  const down = -at[2]
  const out = { x0: [-down, 0], x1: [down, 0], y0: [0, -down], y1: [0, down] }[surface]
  return [x + (out[0] ?? 0), at[1] + (out[1] ?? 0)]
}

/** A point of a piece, where it lies on the face when the piece is laid at a place. */
export function laid({ use }: LoosePiece, { at, turned }: PiecePlace, [x, y]: FacePoint): FacePoint {
  const [dx, dy] = [x - use.origin[0], y - use.origin[1]]
  return turned ? [at[0] - dx, at[1] - dy] : [at[0] + dx, at[1] + dy]
}

/** Every hole that a piece marks when it is used as it says: where, and which of its bores was the pattern. */
export function marksOf(face: StripFace, piece: LoosePiece): { readonly at: FacePoint; readonly pattern: Bore }[] {
  const { use } = piece
  const bores = face.panel.bores.filter(({ id }) => use.bores.includes(id))
  const move = use.repeat?.move ?? [0, 0]
  const way = (bore: Bore): number => {
    const [x, y] = seen(face, bore)
    return (x - use.origin[0]) * move[0] + (y - use.origin[1]) * move[1]
  }
  const ordered = [...bores].sort((a, b) => way(a) - way(b))
  const times = use.repeat?.times ?? 0
  return use.places.flatMap((place) =>
    Array.from({ length: times + 1 }, (_, n) => {
      const marked = n > 0 && n === times ? ordered.slice(0, use.repeat?.last) : ordered
      return marked.map((pattern) => {
        const [x, y] = seen(face, pattern)
        return { at: laid(piece, place, [x + n * move[0], y + n * move[1]]), pattern }
      })
    }).flat(),
  )
}

const rows = fc.array(
  fc.record({
    on: fc.constantFrom('A', 'A', 'A', 'B', 'x0', 'x1', 'y0', 'y1') as fc.Arbitrary<
      'A' | 'B' | 'x0' | 'x1' | 'y0' | 'y1'
    >,
    x: fc.integer({ min: 8, max: 400 }),
    y: fc.integer({ min: 8, max: 400 }),
    count: fc.integer({ min: 1, max: 16 }),
    step: fc.constantFrom(25, 32, 64, 150),
    upright: fc.boolean(),
    /** A second row with the same holes, at the other edge or a little way off. */
    again: fc.constantFrom('no', 'opposite', 'mirrored', 'beside'),
    d: fc.constantFrom(3, 5, 8),
    deep: fc.constantFrom<number | 'through'>(8, 11, 'through'),
  }),
  { minLength: 1, maxLength: 6 },
)

/** Panels with rows along both axes, in faces and edges, many of them more than once. */
export const rowedPanels: fc.Arbitrary<Panel> = fc
  .record({
    length: fc.integer({ min: 150, max: 1400 }),
    width: fc.integer({ min: 120, max: 700 }),
    datum: fc.record({ x: fc.constantFrom<'x0' | 'x1'>('x0', 'x1'), y: fc.constantFrom<'y0' | 'y1'>('y0', 'y1') }),
    rows,
  })
  .map(({ length, width, datum, rows: asked }) => {
    const placed: BoreWords[] = []
    const put = (words: BoreWords): void => {
      // As in a workshop, no hole hangs over an edge.
      const [x, y] = [
        words.on === 'x0' || words.on === 'x1' ? 8 : words.x,
        words.on === 'y0' || words.on === 'y1' ? 8 : words.y,
      ]
      const inside = x >= 8 && x <= length - 8 && y >= 8 && y <= width - 8
      const clear = placed.every((other) => Math.hypot(other.x - words.x, other.y - words.y) > 12)
      if (inside && clear) placed.push(words)
    }
    asked.forEach(({ on, x, y, count, step, upright, again, d, deep }, k) => {
      const level = on === 'y0' || on === 'y1' || (on !== 'x0' && on !== 'x1' && !upright)
      const at = (n: number): { x: number; y: number } => {
        const along = level ? { x: x + n * step, y } : { x, y: y + n * step }
        if (on === 'x0' || on === 'x1') return { ...along, x: on === 'x0' ? 0 : length }
        return on === 'y0' || on === 'y1' ? { ...along, y: on === 'y0' ? 0 : width } : along
      }
      const inEdge = on !== 'A' && on !== 'B'
      const shared = { on, d: inEdge ? 8 : d, deep: inEdge ? 21 : deep, purpose: `use ${k}` } as const
      for (let n = 0; n < count; n += 1) put({ ...shared, ...at(n) })
      if (inEdge || again === 'no') return
      for (let n = 0; n < count; n += 1) {
        const spot = at(n)
        if (again === 'beside') put({ ...shared, ...(level ? { ...spot, y: y + 90 } : { ...spot, x: x + 90 }) })
        else {
          const across = level ? { ...spot, y: width - y } : { ...spot, x: length - x }
          const along = level ? { ...across, x: length - spot.x } : { ...across, y: width - spot.y }
          put({ ...shared, ...(again === 'opposite' ? across : along) })
        }
      }
    })
    return panelOf({ name: 'rowed', length, width, datum, bores: placed })
  })
