import type { RuleEntries } from './types.ts'

/** Doors, flaps and fixed fronts with their hinges and stays. */
export const frontRules = {
  'hinge-overlay': {
    meaning: 'no hinge and plate give the overlay that is wanted',
    severities: ['stop'],
    source: 'overlay = K + C − H: S9, S12, S15, S16',
    limits: {},
  },
  'door-hinges': {
    meaning: 'a door is too heavy or too tall for its hinges',
    severities: ['stop'],
    source: 'S11, S13',
    limits: {},
  },
  'hinge-door-width': {
    meaning: 'a door is wider than its hinges are made for',
    severities: ['stop'],
    source: 'the hinge’s own figure',
    limits: {},
  },
  'hinge-height': {
    meaning: 'a hinge cup does not lie on its door',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'flap-stay': {
    meaning: 'no stay has room to hold a flap open',
    severities: ['stop'],
    source: 'figures of the stay: common practice',
    limits: {},
  },
  'flap-swing': {
    meaning: 'an open flap rises above the carcase',
    severities: ['note'],
    source: 'hinges that open 110°: from memory',
    limits: {},
  },
  'stay-clear': {
    meaning: 'a flap stay lies on the holes of other hardware, or in the way of a loose shelf',
    severities: ['warn'],
    source: 'size of the bracket and the arm: common practice',
    limits: {},
  },
  'front-fixing': {
    meaning: 'a fixed front covers too little of the edges that it is fastened to',
    severities: ['stop', 'warn'],
    source: 'own arithmetic; wood beside the bores: the hardware’s own figure',
    limits: {},
  },
} as const satisfies RuleEntries
