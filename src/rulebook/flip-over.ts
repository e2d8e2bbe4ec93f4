import type { RuleEntries } from './types.ts'

/** Platforms that turn over. */
export const flipOverRules = {
  'axle-channel': {
    meaning: 'the core of a flip-over platform is too thin for its axle, or so thick that the axle wants packing',
    severities: ['stop'],
    source: 'common practice: 0.2 mm play, packing from 1 mm',
    limits: {},
  },
  'locking-place': {
    meaning: 'the locking bolts of a flip-over top do not lie inside the core boards, clear of the axle',
    severities: ['stop'],
    source: 'common practice: 5 mm of wood',
    limits: {},
  },
  'swing-clearance': {
    meaning: 'a platform, or a machine on it, strikes or nearly strikes a panel as it turns',
    severities: ['stop'],
    source: 'own arithmetic: the far corner from the axle',
    limits: {},
  },
  'machine-width': {
    meaning: 'a machine on a flip-over top does not pass between the sides',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'swing-room': {
    meaning: 'a flip-over top swings beyond the footprint; walls and neighbours must leave that room',
    severities: ['note'],
    source: 'own arithmetic',
    limits: {},
  },
  'flip-over-care': {
    meaning: 'what to mind at a flip-over top',
    severities: ['note'],
    source: 'common practice',
    limits: {},
  },
  'swing-hardware': {
    meaning: 'hardware on the inside of a side lies where a flip-over platform turns',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'lock-reach': {
    meaning: 'a neighbour stands before a locking bolt of a flip-over top',
    severities: ['warn'],
    source: 'common practice: 30 mm for a hand',
    limits: {},
  },
} as const satisfies RuleEntries
