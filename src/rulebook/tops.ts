import { mm, type RuleEntries } from './types.ts'

/** Worktops and machine tops. */
export const topRules = {
  'top-screws': {
    meaning: 'the screws of a worktop do not hold, come out of it, or find no place',
    severities: ['stop'],
    source:
      '8 mm in the wood, 3 mm over the pilot: common practice; the screw is chosen by them, so they cannot be changed',
    limits: {},
  },
  'worktop-level': {
    meaning: 'the modules under the worktop of a row are not of one height',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'worktop-neighbour': {
    meaning: 'a worktop reaches into another module',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'ledge-narrow': {
    meaning: 'a ledge is too narrow for its levelling screws',
    severities: ['stop'],
    source: 'common practice',
    limits: { stop: mm(3, 'of wood beside the bore') },
  },
  'ledge-thin': {
    meaning: 'a threaded insert is longer than the wood under its ledge',
    severities: ['warn'],
    source: 'own arithmetic',
    limits: {},
  },
  'insert-carcase': {
    meaning: 'a panel lies under the opening of an insert',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'slot-wall': {
    meaning: 'a slot meets the insert or the slot beside it, or nearly',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(5, 'wood beside a slot'), stop: mm(3, 'the same') },
  },
  'port-fit': {
    meaning: 'a dust port does not open into its chamber alone',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
} as const satisfies RuleEntries
