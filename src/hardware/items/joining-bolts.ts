import type { Item, JoiningBolt } from '../types.ts'

const bolt = (figures: {
  id: string
  title: string
  source: string
  clearance: number
  nutBore: number
  headDiameter: number
  nutDiameter: number
  barrelLength: number
}): JoiningBolt => ({
  kind: 'joining bolt',
  id: figures.id,
  title: figures.title,
  source: figures.source,
  headDiameter: figures.headDiameter,
  nutDiameter: figures.nutDiameter,
  barrelLength: figures.barrelLength,
  parts: {
    head: [
      { key: 'hole', x: 0, y: 0, enter: 'far', diameter: figures.clearance, depth: 'through', purpose: 'joining bolt' },
    ],
    nut: [
      {
        key: 'hole',
        x: 0,
        y: 0,
        enter: 'contact',
        diameter: figures.nutBore,
        depth: 'through',
        purpose: 'joining nut',
      },
    ],
  },
  mates: [{ relation: 'coaxial', a: ['head', 'hole'], b: ['nut', 'hole'] }],
})

const TEE = 'tee nut barrel and flange: a data sheet (S35); bore the next half millimetre up: common practice; '

/** Bolts that join neighbouring modules: a clearance hole on one side, a pronged tee nut in the other. */
export const joiningBolts: readonly Item[] = [
  bolt({
    id: 'bolt M6',
    title: 'M6 bolt with pronged tee nut',
    source: `${TEE}clearance 7: ISO 273 coarse (S33)`,
    clearance: 7,
    nutBore: 8,
    headDiameter: 18,
    nutDiameter: 19,
    barrelLength: 7.8,
  }),
  bolt({
    id: 'bolt M8',
    title: 'M8 bolt with pronged tee nut',
    source: `${TEE}clearance 10: ISO 273 coarse (S33)`,
    clearance: 10,
    nutBore: 10,
    headDiameter: 24,
    nutDiameter: 22,
    barrelLength: 9.5,
  }),
  bolt({
    id: 'bolt 1/4 in',
    title: '1/4-20 bolt with pronged tee nut',
    source: 'clearance 7.5 mm (loose): ASME B18.2.8 (S34); nut bore and barrel 5/16 in: common practice',
    clearance: 7.5,
    nutBore: 7.938,
    headDiameter: 25.4,
    nutDiameter: 19.05,
    barrelLength: 7.938,
  }),
]
