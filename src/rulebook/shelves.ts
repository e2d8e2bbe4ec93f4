import type { RuleEntries } from './types.ts'

/** Loose shelves and their pins. */
export const shelfRules = {
  'pin-rows-short': {
    meaning: 'an opening has too few pin heights for its loose shelves',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'pin-columns-crossed': {
    meaning: 'the front and rear pin columns are too near each other',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
} as const satisfies RuleEntries
