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
    'caster-circles': { meaning: 'swivel circles of a module meet', source: 'common practice: 10 mm apart' },
    'caster-footprint': { meaning: 'a caster swings beyond the footprint', source: 'common practice' },
    'caster-plate': { meaning: 'a caster plate does not lie whole on the bottom panel', source: 'own arithmetic' },
    'top-screws': {
      meaning: 'the screws of a worktop do not hold, come out of it, or find no place',
      source: 'common practice: 8 mm in the wood, 3 mm over the pilot',
    },
    'worktop-level': {
      meaning: 'the modules under the worktop of a row are not of one height',
      source: 'own arithmetic',
    },
    'worktop-neighbour': {
      meaning: 'a worktop reaches into what stands beside it in its row',
      source: 'own arithmetic',
    },
    'ledge-narrow': {
      meaning: 'a ledge is too narrow for its levelling screws',
      source: 'common practice: 3 mm beside the bore',
    },
    'ledge-thin': { meaning: 'a threaded insert is longer than the wood under its ledge', source: 'own arithmetic' },
    'insert-carcase': { meaning: 'a panel lies under the opening of an insert', source: 'own arithmetic' },
    'slot-wall': {
      meaning: 'a slot meets the insert or the slot beside it, or nearly',
      source: 'common practice: 5 mm warn, 3 mm stop',
    },
    'port-fit': { meaning: 'a dust port does not open into its chamber alone', source: 'own arithmetic' },
    'join-overlap': {
      meaning: 'modules to be bolted together share too little of their sides',
      source: 'own arithmetic',
    },
  },
  check: ({ assembly }) => assembly.troubles.map((trouble) => ({ ...trouble, places: [] })),
}
