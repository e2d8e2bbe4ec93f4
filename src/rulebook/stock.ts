import { mm, type RuleEntries } from './types.ts'

/** Parts and their sheets. */
export const stockRules = {
  'sheet-too-small': {
    meaning: 'a part cannot be cut from its sheet',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'stock-spread': {
    meaning: 'the thickness readings of a stock lie far apart',
    severities: ['warn'],
    source: 'common practice',
    limits: { warn: mm(0.3, 'between the readings of one stock') },
  },
  'sheets-short': {
    meaning: 'the parts do not come out of the sheets that there are',
    severities: ['warn'],
    source: 'laid out with the kerf; a better layout may be found by hand',
    limits: {},
  },
  'fitted-size': {
    meaning: 'what a size that is as large as fits came to',
    severities: ['note'],
    source: 'laid out with the kerf',
    limits: {},
  },
} as const satisfies RuleEntries
