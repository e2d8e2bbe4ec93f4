import type { Rule } from '../types.ts'

/** What the placing of hardware could not do as it was asked; found where the figures are, reported with the rest. */
export const placing: Rule = {
  ids: {
    'screw-bite': {
      meaning: 'a screw reaches too little into its second board',
      source: 'common practice: 15 mm warn, 8 mm stop',
    },
    'pocket-depth': { meaning: 'a pocket screw is too long for its board', source: 'own arithmetic' },
    'pin-rows-short': { meaning: 'an opening has too few pin heights for its loose shelves', source: 'own arithmetic' },
    'pin-columns-crossed': {
      meaning: 'the front and rear pin columns are too near each other',
      source: 'own arithmetic',
    },
    'hinge-overlay': {
      meaning: 'no hinge and plate give the overlay that is wanted',
      source: 'overlay = K + C − H: S9, S12, S15, S16',
    },
    'door-hinges': { meaning: 'a door is too heavy or too tall for its hinges', source: 'S11, S13' },
    'hinge-height': { meaning: 'a hinge cup does not lie on its door', source: 'own arithmetic' },
    'flap-stay': { meaning: 'no stay has room to hold a flap open', source: 'figures of the stay: common practice' },
    'flap-swing': { meaning: 'an open flap rises above the carcase', source: 'hinges that open 110°: from memory' },
    'front-fixing': {
      meaning: 'a fixed front covers too little of the edges that it is fastened to',
      source: 'own arithmetic',
    },
    'caster-circles': { meaning: 'swivel circles of a module meet', source: 'common practice: 10 mm apart' },
    'caster-footprint': { meaning: 'a caster swings beyond the footprint', source: 'common practice' },
    'caster-plate': { meaning: 'a caster plate does not lie whole on the bottom panel', source: 'own arithmetic' },
    'join-overlap': {
      meaning: 'modules to be bolted together share too little of their sides',
      source: 'own arithmetic',
    },
  },
  check: ({ assembly }) => assembly.troubles.map((trouble) => ({ ...trouble, places: [] })),
}
