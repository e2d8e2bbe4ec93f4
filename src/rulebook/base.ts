import { mm, type RuleEntries } from './types.ts'

/** What a module stands on. */
export const baseRules = {
  'caster-circles': {
    meaning: 'swivel circles of a module meet',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(10, 'between two swivel circles') },
  },
  'caster-footprint': {
    meaning: 'a caster swings beyond the footprint',
    severities: ['warn'],
    source: 'own arithmetic',
    limits: {},
  },
  'caster-plate': {
    meaning: 'a caster plate does not lie whole on the bottom panel',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'caster-heights': {
    meaning: 'swivel and fixed casters of one module differ in height',
    severities: ['warn'],
    source: 'own arithmetic',
    limits: {},
  },
  'plinth-fixing': {
    meaning: 'a board of the plinth cannot be fixed from inside the carcase',
    severities: ['stop'],
    source: '12 mm for the driver: common practice; screws are placed by it, so it cannot be changed',
    limits: {},
  },
  'foot-place': {
    meaning: 'a levelling foot lies under a side or beyond the bottom, or meets another',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
} as const satisfies RuleEntries
