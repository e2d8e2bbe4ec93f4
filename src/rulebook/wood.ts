import { mm, type RuleEntries } from './types.ts'

/** The wood that holes and grooves leave in a panel. */
export const woodRules = {
  'mate-missing': {
    meaning: 'a board lacks a hole that its hardware needs',
    severities: ['stop'],
    source: 'by construction',
    limits: {},
    always: true,
  },
  'mate-axis': {
    meaning: 'two holes of one piece of hardware are not in line',
    severities: ['stop'],
    source: 'by construction',
    limits: {},
    always: true,
  },
  'bore-far-side': {
    meaning: 'a blind bore comes out of the far side of its panel',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'bore-skin': {
    meaning: 'a blind bore leaves too thin a skin, or lets the point of its bit out',
    severities: ['stop', 'warn'],
    source: 'common practice; bits with a point from 12.7 mm on: S60',
    limits: {
      warn: mm(3, 'wood behind the floor of a blind bore'),
      stop: mm(2, 'the same'),
      point: mm(2.5, 'how far the point of a bit of 12.7 mm or more stands deeper than that floor'),
    },
  },
  'bores-meet': {
    meaning: 'two bores run into each other inside a panel',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'bores-near': {
    meaning: 'the wall between two bores is too thin',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(5, 'wood between two bores'), stop: mm(3, 'the same') },
  },
  'fasteners-meet': {
    meaning: 'two fasteners share a hole from both faces and would meet in it',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'bore-breaks-out': {
    meaning: 'a bore breaks out of the side of its panel',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'bore-near-edge': {
    meaning: 'too little wood between a bore and the edge or face beside it',
    severities: ['stop', 'warn'],
    source: 'the bore’s radius stop (S25), its diameter warn (common practice), or the hardware’s own figure',
    limits: {},
  },
  'groove-wood': {
    meaning: 'a groove or rebate leaves too little wood under or beside it, or to another',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: {
      warn: mm(3, 'wood under a groove or rebate'),
      stop: mm(2, 'the same'),
      'lip warn': mm(5, 'wood between a groove and the edge or the groove beside it'),
      'lip stop': mm(3, 'the same'),
    },
  },
  'bore-in-groove': {
    meaning: 'a bore meets a groove or rebate, or nearly',
    severities: ['stop', 'warn'],
    source: 'common practice',
    limits: { warn: mm(3, 'wood between a bore and a groove'), stop: mm(2, 'the same') },
  },
} as const satisfies RuleEntries
