import type { RuleEntries } from './types.ts'

/** The definition itself. */
export const definitionRules = {
  'silence-idle': {
    meaning: 'the definition silences a finding that is not there',
    severities: ['note'],
    source: 'own arithmetic',
    limits: {},
    always: true,
  },
} as const satisfies RuleEntries
