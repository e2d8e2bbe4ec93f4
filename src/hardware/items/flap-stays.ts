import type { Drilling, FlapStay, Item } from '../types.ts'

const screw = (key: string, y: number): Drilling => ({
  key,
  x: 0,
  y,
  enter: 'contact',
  diameter: 3,
  depth: 10,
  purpose: 'flap stay',
})

const PARTS: FlapStay['parts'] = {
  carcase: [screw('screw-1', -10), screw('screw-2', 10)],
  flap: [screw('screw-1', -10), screw('screw-2', 10)],
}

const stay = (figures: Omit<FlapStay, 'kind' | 'parts' | 'mates' | 'bracket' | 'bothFrom' | 'source'>): FlapStay => ({
  kind: 'flap stay',
  source: 'common practice, measure yours: makers differ in every figure',
  bracket: { x: 10, y: 20 },
  bothFrom: 600,
  parts: PARTS,
  mates: [],
  ...figures,
})

/**
 * Stays for flaps. With the pivot about at the corner of flap and panel, the length between the brackets is
 * √(back² + (carcase − flap)²) when shut and √((back + flap)² + carcase²) at a right angle.
 */
export const flapStays: readonly Item[] = [
  stay({
    id: 'lid stay 250',
    title: 'gas lid stay for a flap hung at the top, 165 mm shut, 250 mm out',
    hang: 'top',
    carcase: { back: 64, fromHinges: 215 },
    flap: { fromSide: 20, fromHinges: 60 },
  }),
  stay({
    id: 'lid stay 170',
    title: 'gas lid stay for a low flap hung at the top, 110 mm shut, 170 mm out',
    hang: 'top',
    carcase: { back: 64, fromHinges: 130 },
    flap: { fromSide: 20, fromHinges: 40 },
  }),
  stay({
    id: 'drop stay 260',
    title: 'folding stay for a flap hung at the bottom, 260 mm out',
    hang: 'bottom',
    carcase: { back: 64, fromHinges: 160 },
    flap: { fromSide: 20, fromHinges: 140 },
  }),
  stay({
    id: 'drop stay 190',
    title: 'folding stay for a low flap hung at the bottom, 190 mm out',
    hang: 'bottom',
    carcase: { back: 64, fromHinges: 100 },
    flap: { fromSide: 20, fromHinges: 97 },
  }),
]
