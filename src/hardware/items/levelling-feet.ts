import { MM_PER_INCH } from '../../length/index.ts'
import type { LevellingFoot } from '../kinds/levelling-foot.ts'
import type { Drilling, Item } from '../types.ts'

/** A bore right through the bottom, for the nut that the spindle turns in; it can be reached from inside the module. */
const nutBore = (diameter: number, purpose: string): readonly Drilling[] => [
  { key: 'nut', x: 0, y: 0, enter: 'far', diameter, depth: 'through', purpose },
]

const foot = (
  figures: Omit<LevellingFoot, 'kind' | 'parts' | 'mates'> & { bore: number; nut: 'tee nut' | 'insert' },
): LevellingFoot => {
  const { bore, nut, ...rest } = figures
  return { kind: 'levelling foot', ...rest, parts: { bottom: nutBore(bore, `levelling foot, ${nut}`) }, mates: [] }
}

/** Levelling feet under the bottom; heights are those of the middle of the travel. */
export const levellingFeet: readonly Item[] = [
  foot({
    id: 'foot M8',
    title: 'levelling foot M8 in a tee nut from above',
    source:
      'tee nut: barrel 10, flange 22: S35, bore 10; height 40, travel 20, pad 30, 100 kg: common practice, measure yours',
    height: 40,
    travel: 20,
    padDiameter: 30,
    flangeDiameter: 22,
    loadKg: 100,
    bore: 10,
    nut: 'tee nut',
  }),
  foot({
    id: 'foot M10',
    title: 'levelling foot M10 in a tee nut from above',
    source:
      'tee nut: barrel 12, flange 25: S35, bore 12; height 50, travel 30, pad 40, 200 kg: common practice, measure yours',
    height: 50,
    travel: 30,
    padDiameter: 40,
    flangeDiameter: 25,
    loadKg: 200,
    bore: 12,
    nut: 'tee nut',
  }),
  foot({
    id: 'foot M10 insert',
    title: 'levelling foot M10 in a threaded insert',
    source: 'insert 14 in a bore of 12.5, height 50, travel 30, pad 40, 200 kg: common practice, measure yours',
    height: 50,
    travel: 30,
    padDiameter: 40,
    flangeDiameter: 16,
    loadKg: 200,
    bore: 12.5,
    nut: 'insert',
  }),
  foot({
    id: 'foot 3/8 in',
    title: 'levelling foot 3/8 in in a tee nut from above',
    source:
      'bore 7/16 in, flange 1 in, height 2 in, travel 1 in, pad 1-1/2 in, 150 kg: common practice, no source; measure yours',
    height: 2 * MM_PER_INCH,
    travel: MM_PER_INCH,
    padDiameter: 1.5 * MM_PER_INCH,
    flangeDiameter: MM_PER_INCH,
    loadKg: 150,
    bore: (7 / 16) * MM_PER_INCH,
    nut: 'tee nut',
  }),
]
