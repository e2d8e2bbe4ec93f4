import { mm, type RuleEntries } from './types.ts'

/** Modules beside each other. */
export const floorRules = {
  'join-overlap': {
    meaning: 'modules to be bolted together share too little of their sides',
    severities: ['stop', 'warn'],
    source: 'own arithmetic',
    limits: {},
  },
  'bolt-moved': {
    meaning: 'a bolt between modules moved off what was in its way',
    severities: ['note'],
    source: 'own arithmetic',
    limits: {},
  },
  'bolt-blocked': {
    meaning: 'a bolt between modules has no free place',
    severities: ['stop'],
    source: 'common practice',
    limits: {
      wall: mm(5, 'wood between the bolt’s bore and others'),
      farthest: mm(64, 'that a bolt moves to clear what is in its way'),
    },
  },
  'nut-barrel': {
    meaning: 'the nut of a joining bolt is longer than its board is thick',
    severities: ['stop'],
    source: 'barrel lengths: S35',
    limits: {},
  },
  'caster-neighbours': {
    meaning: 'swivel circles of two modules meet',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { apart: mm(10, 'between two circles') },
  },
  'footprints-overlap': {
    meaning: 'two modules stand in the same place',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  packing: {
    meaning: 'a module is packed up to make tops level',
    severities: ['note'],
    source: 'own arithmetic',
    limits: {},
  },
  'tops-level': {
    meaning: 'tops that are to be level are not',
    severities: ['warn'],
    source: 'own arithmetic',
    limits: {},
  },
} as const satisfies RuleEntries
