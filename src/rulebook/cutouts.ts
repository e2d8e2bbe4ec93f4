import { mm, type RuleEntries } from './types.ts'

/** Openings and recesses. */
export const cutoutRules = {
  'opening-place': {
    meaning: 'an opening names a panel, a face or an edge that is not there',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'cutout-leaves-panel': {
    meaning: 'an opening or recess reaches over the edge of its panel, or touches it',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'cutout-near-edge': {
    meaning: 'little wood between an opening or recess and the edge of its panel',
    severities: ['warn'],
    source: 'common practice',
    limits: { warn: mm(10, 'wood between a cutout and the edge') },
  },
  'cutout-skin': {
    meaning: 'a recess comes out of the far face, or leaves too thin a skin',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(3, 'wood under a recess'), stop: mm(2, 'the same') },
  },
  'cutout-meets': {
    meaning: 'an opening or recess runs into a bore, a groove or another one',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'cutout-near': {
    meaning: 'the wall between an opening or recess and other work is too thin',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(5, 'wood between a cutout and other work'), stop: mm(3, 'the same') },
  },
} as const satisfies RuleEntries
