import type { RuleEntries } from './types.ts'

/** Joints, and what they hold. */
export const jointRules = {
  'screw-bite': {
    meaning: 'a screw reaches too little into its second board',
    severities: ['stop', 'warn'],
    source: 'common practice: 15 mm warn, 8 mm stop',
    limits: {},
  },
  'housing-short': {
    meaning: 'a housing is too short between its stopped ends',
    severities: ['stop'],
    source: 'common practice: 30 mm',
    limits: {},
  },
  'pocket-depth': {
    meaning: 'a pocket screw is too long for its board',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
} as const satisfies RuleEntries
