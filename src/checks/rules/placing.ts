import type { Rule } from '../types.ts'

/** What the placing of hardware could not do as it was asked; found where the figures are, reported with the rest. */
export const placing: Rule = {
  ids: {
    'screw-bite': {
      meaning: 'a screw reaches too little into its second board',
      source: 'common practice: 15 mm warn, 8 mm stop',
    },
    'housing-short': { meaning: 'a housing is too short between its stopped ends', source: 'common practice: 30 mm' },
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
    'hinge-door-width': { meaning: 'a door is wider than its hinges are made for', source: 'the hinge’s own figure' },
    'hinge-height': { meaning: 'a hinge cup does not lie on its door', source: 'own arithmetic' },
    'drawer-slide-length': {
      meaning: 'no slide is short enough for the depth of an opening',
      source: 'own arithmetic',
    },
    'drawer-stack': { meaning: 'the drawers of an opening are higher together than it is', source: 'own arithmetic' },
    'drawer-narrow': { meaning: 'a drawer box has no width inside', source: 'common practice: 50 mm' },
    'drawer-box-low': { meaning: 'a drawer box is lower than its slide', source: 'own arithmetic' },
    'drawer-front-screws': {
      meaning: 'no screw holds a drawer front through its box front',
      source: 'common practice: bite 8 mm, skin 3 mm',
    },
    'drawer-pull': {
      meaning: 'the holes of a pull do not lie whole on a drawer front, or cut its box',
      source: 'common practice: 5 mm of wood',
    },
    'drawer-packing': {
      meaning: 'an inner drawer would hit an open door or its hinges, or its packing cannot hold it',
      source: 'own arithmetic; hinges stand in 25 mm and their crank, doors pass with 3 mm: common practice',
    },
    'drawer-hinge': {
      meaning: 'the slide of an inner drawer would lie on a hinge plate',
      source: 'own arithmetic; plates reach 26 mm from their middle: common practice',
    },
    'flap-stay': { meaning: 'no stay has room to hold a flap open', source: 'figures of the stay: common practice' },
    'flap-swing': { meaning: 'an open flap rises above the carcase', source: 'hinges that open 110°: from memory' },
    'front-fixing': {
      meaning: 'a fixed front covers too little of the edges that it is fastened to',
      source: 'own arithmetic',
    },
    'caster-circles': { meaning: 'swivel circles of a module meet', source: 'common practice: 10 mm apart' },
    'caster-footprint': { meaning: 'a caster swings beyond the footprint', source: 'common practice' },
    'caster-plate': { meaning: 'a caster plate does not lie whole on the bottom panel', source: 'own arithmetic' },
    'axle-channel': {
      meaning: 'the core of a flip-over platform is too thin for its axle, or so thick that the axle wants packing',
      source: 'common practice: 0.2 mm play, packing from 1 mm',
    },
    'locking-place': {
      meaning: 'the locking bolts of a flip-over top do not lie inside the core boards, clear of the axle',
      source: 'common practice: 5 mm of wood',
    },
    'swing-clearance': {
      meaning: 'a platform, or a machine on it, strikes or nearly strikes a panel as it turns',
      source: 'own arithmetic: the far corner from the axle',
    },
    'machine-width': {
      meaning: 'a machine on a flip-over top does not pass between the sides',
      source: 'own arithmetic',
    },
    'swing-room': {
      meaning: 'a flip-over top swings beyond the footprint; walls and neighbours must leave that room',
      source: 'own arithmetic',
    },
    'flip-over-care': { meaning: 'what to mind at a flip-over top', source: 'common practice' },
    'caster-heights': { meaning: 'swivel and fixed casters of one module differ in height', source: 'own arithmetic' },
    'plinth-fixing': {
      meaning: 'a board of the plinth cannot be fixed from inside the carcase',
      source: 'common practice: 12 mm for the driver',
    },
    'foot-place': {
      meaning: 'a levelling foot lies under a side or beyond the bottom, or meets another',
      source: 'own arithmetic',
    },
    'lipping-panel': {
      meaning: 'a lipping names no panel of its module, or none with such an edge',
      source: 'own arithmetic',
    },
    'lipping-size': { meaning: 'the lippings leave nothing of a panel', source: 'own arithmetic' },
    'top-screws': {
      meaning: 'the screws of a worktop do not hold, come out of it, or find no place',
      source: 'common practice: 8 mm in the wood, 3 mm over the pilot',
    },
    'worktop-level': {
      meaning: 'the modules under the worktop of a row are not of one height',
      source: 'own arithmetic',
    },
    'worktop-neighbour': {
      meaning: 'a worktop reaches into another module',
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
    'opening-place': {
      meaning: 'an opening names a panel, a face or an edge that is not there',
      source: 'own arithmetic',
    },
    'join-overlap': {
      meaning: 'modules to be bolted together share too little of their sides',
      source: 'own arithmetic',
    },
    'bolt-moved': { meaning: 'a bolt between modules moved off what was in its way', source: 'own arithmetic' },
    'bolt-blocked': {
      meaning: 'a bolt between modules has no free place',
      source: 'common practice: 5 mm between bores, at most 64 mm off',
    },
    'nut-barrel': {
      meaning: 'the nut of a joining bolt is longer than its board is thick',
      source: 'barrel lengths: S35',
    },
    'caster-neighbours': {
      meaning: 'swivel circles of two modules meet',
      source: 'common practice: 10 mm apart',
    },
    'footprints-overlap': { meaning: 'two modules stand in the same place', source: 'own arithmetic' },
    packing: { meaning: 'a module is packed up to make tops level', source: 'own arithmetic' },
    'tops-level': { meaning: 'tops that are to be level are not', source: 'own arithmetic' },
  },
  check: ({ assembly }) => assembly.troubles.map((trouble) => ({ ...trouble, places: [] })),
}
