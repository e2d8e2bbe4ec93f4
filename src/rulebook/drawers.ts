import { mm, type RuleEntries } from './types.ts'

/** Drawers and their slides. */
export const drawerRules = {
  'drawer-slide-length': {
    meaning: 'no slide is short enough for the depth of an opening',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'drawer-stack': {
    meaning: 'the drawers of an opening are higher together than it is',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'drawer-narrow': {
    meaning: 'a drawer box has no width inside',
    severities: ['stop'],
    source: 'common practice',
    limits: { stop: mm(50, 'inside a drawer box, across') },
  },
  'drawer-box-low': {
    meaning: 'a drawer box is lower than its slide',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'drawer-front-screws': {
    meaning: 'no screw holds a drawer front through its box front',
    severities: ['stop'],
    source: 'bite 8 mm, skin 3 mm: common practice; the screw is chosen by them, so they cannot be changed',
    limits: {},
  },
  'drawer-pull': {
    meaning: 'the holes of a pull do not lie whole on a drawer front, or cut its box',
    severities: ['stop'],
    source: '5 mm of wood: common practice; the holes are placed by it, so it cannot be changed',
    limits: {},
  },
  'drawer-packing': {
    meaning: 'an inner drawer would hit an open door or its hinges, or its packing cannot hold it',
    severities: ['stop'],
    source:
      'own arithmetic; hinges stand in 25 mm and their crank, doors pass with 3 mm, 3 mm of wood beyond screws: common practice; packings are placed by them, so they cannot be changed',
    limits: {},
  },
  'drawer-hinge': {
    meaning: 'the slide of an inner drawer would lie on a hinge plate',
    severities: ['stop'],
    source:
      'own arithmetic; plates reach 26 mm from their middle: common practice; slides are placed by it, so it cannot be changed',
    limits: {},
  },
  'slide-on-fastener': {
    meaning: 'a drawer slide would lie on a bolt or a hinge plate',
    severities: ['stop'],
    source: 'own arithmetic; hinge plates reach 10 mm beyond their holes: common practice',
    limits: {},
  },
} as const satisfies RuleEntries
