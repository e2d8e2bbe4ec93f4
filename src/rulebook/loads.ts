import { degrees, kg, mm, plain, type RuleEntries } from './types.ts'

/** What a project is to carry, and whether it stands: guides, not proofs. */
export const loadRules = {
  'shelf-sag': {
    meaning: 'a shelf sags too far under its load',
    severities: ['warn', 'note'],
    source: 'beam tables; limits: common practice; loads: S46',
    limits: {
      warn: plain(200, 'span over sag, at least'),
      note: plain(300, 'the same'),
    },
  },
  'shelf-pins': {
    meaning: 'a loose shelf is too heavy, or too long, for its four pins',
    severities: ['warn', 'note'],
    source: 'common practice; boards fail before sound pins: S8',
    limits: {
      warn: kg(20, 'load on one pin in plywood'),
      'warn in chips': kg(15, 'the same in particleboard and MDF'),
      note: mm(900, 'length from which 5 or 6 pins are usual'),
    },
  },
  'slide-load': {
    meaning: 'a drawer with its load is too heavy for its slides',
    severities: ['warn'],
    source: 'rating of the slide: S20; it falls with the width: S18b, in proportion: common practice',
    limits: { width: mm(600, 'width of the drawer from which the rating falls') },
  },
  'caster-load': {
    meaning: 'a loaded module is too heavy for its casters',
    severities: ['warn'],
    source: '(tare + load) / (n − 1): S45; loads: S23, S24',
    limits: {},
  },
  'foot-load': {
    meaning: 'a loaded module is too heavy for its levelling feet',
    severities: ['warn'],
    source: 'as for casters; S45',
    limits: {},
  },
  tipping: {
    meaning: 'what stands together tips over easily: with a drawer out and doors open, pushed, or rolling',
    severities: ['stop', 'warn'],
    source: 'common practice; only from 450 mm up: S80; pushed only from 27 in and 30 lb up: S75',
    limits: {
      warn: degrees(10, 'tip angle with the heaviest drawer out and all doors open'),
      stop: degrees(5, 'the same, where the definition says the loads'),
      'rolling warn': degrees(15, 'tip angle on casters with all shut'),
      from: mm(450, 'height from which it is judged'),
      'push warn': kg(5, 'push at the upper edge that tips it, as a mass'),
      'push from': mm(686, 'height from which it is judged by a push, too'),
      'push from kg': kg(13.6, 'mass from which it is judged by a push, too'),
    },
  },
  'tall-module': {
    meaning: 'a module is so tall that it is to be fixed to the wall',
    severities: ['note'],
    source: 'common practice; S75',
    limits: {
      height: mm(1200, 'upper side above the floor'),
      slender: plain(4, 'height over the smaller of width and depth'),
    },
  },
  'flip-balance': {
    meaning: 'the machines of a flip-over top pull it round, or must be lifted',
    severities: ['warn', 'note'],
    source: 'own arithmetic; what a person holds: common practice',
    limits: {
      warn: kg(15, 'pull at the edge of the platform, as a mass'),
      note: kg(5, 'the same'),
    },
  },
} as const satisfies RuleEntries
