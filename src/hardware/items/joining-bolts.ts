import { joiningBolt } from '../kinds/joining-bolt.ts'
import type { Item } from '../types.ts'

const TEE = 'tee nut barrel and flange: a data sheet (S35); bore the next half millimetre up: common practice; '
const SLEEVE = 'bores, heads: common practice, measure yours'

/** Bolts that join neighbouring modules: a clearance hole on one side, a pronged tee nut or a sleeve in the other. */
export const joiningBolts: readonly Item[] = [
  joiningBolt.make({
    id: 'bolt M6',
    title: 'M6 bolt with pronged tee nut',
    source: `${TEE}clearance 7: ISO 273 coarse (S33)`,
    clearance: 7,
    nutBore: 8,
    headDiameter: 18,
    nutDiameter: 19,
    barrelLength: 7.8,
  }),
  joiningBolt.make({
    id: 'bolt M8',
    title: 'M8 bolt with pronged tee nut',
    source: `${TEE}clearance 10: ISO 273 coarse (S33)`,
    clearance: 10,
    nutBore: 10,
    headDiameter: 24,
    nutDiameter: 22,
    barrelLength: 9.5,
  }),
  joiningBolt.make({
    id: 'bolt 1/4 in',
    title: '1/4-20 bolt with pronged tee nut',
    source: 'clearance 7.5 mm (loose): ASME B18.2.8 (S34); nut bore and barrel 5/16 in: common practice',
    clearance: 7.5,
    nutBore: 7.938,
    headDiameter: 25.4,
    nutDiameter: 19.05,
    barrelLength: 7.938,
  }),
  joiningBolt.make({
    id: 'bolt M10',
    title: 'M10 bolt with pronged tee nut',
    source: `${TEE}clearance 12: ISO 273 coarse (S33); washer 30: from memory`,
    clearance: 12,
    nutBore: 12,
    headDiameter: 30,
    nutDiameter: 25,
    barrelLength: 10.2,
  }),
  joiningBolt.make({
    id: 'bolt 5/16 in',
    title: '5/16-18 bolt with pronged tee nut',
    source:
      'clearance 9.1 mm (loose): ASME B18.2.8 (S34); nut bore and barrel 3/8 in, flange 7/8 in, washer 1-1/4 in: common practice',
    clearance: 9.1,
    nutBore: 9.525,
    headDiameter: 31.75,
    nutDiameter: 22.225,
    barrelLength: 9.525,
  }),
  joiningBolt.make({
    id: 'bolt 3/8 in',
    title: '3/8-16 bolt with pronged tee nut',
    source:
      'clearance 10.5 mm (loose): ASME B18.2.8 (S34); nut bore and barrel 7/16 in, flange 1 in, washer 1-1/2 in: common practice',
    clearance: 10.5,
    nutBore: 11.1125,
    headDiameter: 38.1,
    nutDiameter: 25.4,
    barrelLength: 11.1125,
  }),
  joiningBolt.make({
    id: 'sleeve connector M6',
    title: 'two-part sleeve connector M6, in one bore of 8 mm through both boards',
    source: SLEEVE,
    clearance: 8,
    nutBore: 8,
    headDiameter: 15,
    nutDiameter: 15,
    barrelLength: 0,
  }),
  joiningBolt.make({
    id: 'sleeve connector M4',
    title: 'two-part sleeve connector M4, in one bore of 5 mm through both boards',
    source: SLEEVE,
    clearance: 5,
    nutBore: 5,
    headDiameter: 13,
    nutDiameter: 13,
    barrelLength: 0,
  }),
]
