import { mm, type RuleEntries } from './types.ts'

/** Joints, and what they hold. */
export const jointRules = {
  'screw-bite': {
    meaning: 'a screw reaches too little into its second board',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: {
      warn: mm(15, 'of a screw in the second board'),
      stop: mm(8, 'the same, and of a pocket screw and of a screw into a platform’s core'),
    },
  },
  'housing-short': {
    meaning: 'a housing is too short between its stopped ends',
    severities: ['stop'],
    source: 'common practice',
    limits: { stop: mm(30, 'of a housing between its ends, besides its width') },
  },
  'pocket-depth': {
    meaning: 'a pocket screw is too long for its board',
    severities: ['stop'],
    source: 'own arithmetic; common practice',
    limits: { stop: mm(5, 'of the pocket, along the slant') },
  },
} as const satisfies RuleEntries
