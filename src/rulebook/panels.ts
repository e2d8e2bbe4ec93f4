import type { RuleEntries } from './types.ts'

/** Panels in their place. */
export const panelRules = {
  'panels-overlap': {
    meaning: 'two panels of a module are in the same space',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'hole-covered': {
    meaning: 'another panel covers a hole that must stay open, or the hardware on it',
    severities: ['stop'],
    source: 'own arithmetic; hinge plates reach 10 mm beyond their holes: common practice',
    limits: {},
  },
  'lipping-panel': {
    meaning: 'a lipping names no panel of its module, or none with such an edge',
    severities: ['stop', 'warn'],
    source: 'own arithmetic',
    limits: {},
  },
  'lipping-size': {
    meaning: 'the lippings leave nothing of a panel',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'edge-lipped': {
    meaning: 'hardware enters an edge that is lipped',
    severities: ['note'],
    source: 'own arithmetic',
    limits: {},
  },
} as const satisfies RuleEntries
