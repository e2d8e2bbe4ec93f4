import { mm, type RuleEntries } from './types.ts'

/** Platforms that turn over. */
export const flipOverRules = {
  'axle-channel': {
    meaning: 'the core of a flip-over platform is too thin for its axle, or so thick that the axle wants packing',
    severities: ['stop', 'note'],
    source: '0.2 mm play: the axle’s own figure; common practice',
    limits: { note: mm(1, 'the core thicker than the axle') },
  },
  'locking-place': {
    meaning: 'the locking bolts of a flip-over top do not lie inside the core boards, clear of the axle',
    severities: ['stop'],
    source: 'common practice',
    limits: { stop: mm(5, 'wood between a bolt and the channel or the edge') },
  },
  'swing-clearance': {
    meaning: 'a platform, or a machine on it, strikes or nearly strikes a panel as it turns',
    severities: ['stop', 'warn'],
    source: 'own arithmetic: the far corner from the axle; warns by the key `turning clearance`',
    limits: {},
  },
  'machine-width': {
    meaning: 'a machine on a flip-over top does not pass between the sides',
    severities: ['stop', 'warn'],
    source: 'own arithmetic; warns by the key `turning clearance`',
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
    source: 'common practice',
    limits: { warn: mm(30, 'before and around a locking bolt, for a hand') },
  },
} as const satisfies RuleEntries
