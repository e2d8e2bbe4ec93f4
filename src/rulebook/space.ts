import { degrees, mm, percent, type RuleEntries } from './types.ts'

/** Panels and hardware against each other in space. */
export const spaceRules = {
  'screw-through': {
    meaning: 'a screw comes out of the board that holds it, or nearly',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: {
      warn: mm(3, 'wood before the end of a screw and of its pilot'),
      stop: mm(2, 'the same'),
      beside: mm(2, 'wood beside a screw without a pilot'),
      bite: mm(15, 'screw that a shorter one must keep in its last board'),
    },
  },
  'fasteners-cross': {
    meaning: 'a screw meets another fastener where it has no bore of its own',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(2, 'wood between a screw and another fastener') },
  },
  'head-on-panel': {
    meaning: 'the head, nut or plate of a piece of hardware is in the way of a panel or of other hardware',
    severities: ['stop', 'warn'],
    source: 'sizes of heads and nuts: common practice',
    limits: {},
  },
  'hinge-arm': {
    meaning: 'a shelf, a partition or a drawer is in the way of a hinge',
    severities: ['stop', 'warn', 'note'],
    source: 'sizes of plate and arm: common practice',
    limits: {},
  },
  'fronts-gap': {
    meaning: 'two fronts overlap, or the gap between them is too narrow to open them',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(1, 'between two fronts'), good: mm(3, 'the gap that is offered') },
  },
  'door-swing': {
    meaning: 'a door cannot open far enough before it meets something',
    severities: ['warn', 'note'],
    source: 'own arithmetic: the door turns about the outer corner of its hinge edge',
    limits: { warn: degrees(90, 'that a door must open') },
  },
  'corner-swing': {
    meaning: 'a front meets a module that stands round the corner, or a front of it that is open too',
    severities: ['warn', 'note'],
    source: 'own arithmetic',
    limits: { warn: degrees(90, 'that a door must open') },
  },
  'flap-arc': {
    meaning: 'a flap cannot open far enough before it meets something',
    severities: ['warn'],
    source: 'own arithmetic: the flap turns about the outer corner of its hinge edge',
    limits: { warn: degrees(85, 'that a flap must open') },
  },
  'flip-room': {
    meaning: 'a neighbour stands where a flip-over top turns',
    severities: ['warn'],
    source: 'own arithmetic: the far corner from the axle; air: common practice',
    limits: { warn: mm(5, 'between a flip-over top as it turns and a neighbour') },
  },
  'drawer-room': {
    meaning: 'a drawer cannot be pulled out far enough before it meets something',
    severities: ['warn'],
    source: 'own arithmetic',
    limits: { warn: percent(90, 'of its travel that a drawer must come out') },
  },
} as const satisfies RuleEntries
