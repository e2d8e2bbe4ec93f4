import { degrees, mm, type RuleEntries } from './types.ts'

/** The bits in the shop, and what can be held while it is machined. */
export const shopRules = {
  'bit-missing': {
    meaning: 'no bit of the list under `bits` bores these holes',
    severities: ['warn'],
    source: 'flat holes over 1/2 in: S60; the rest: common practice',
    limits: {
      differs: mm(0.1, 'between a bit and its hole'),
      'flat over': mm(12.7, 'holes wider than this that do not go through want a flat bottom'),
      'angle differs': degrees(2, 'between a countersink and the head'),
    },
  },
  'bit-depth': {
    meaning: 'holes are deeper than the longest bit that bores them reaches',
    severities: ['warn'],
    source: 'own arithmetic',
    limits: {},
  },
  'cutter-corner': {
    meaning: 'inner corners of an opening, recess or notch are sharper than the smallest router bit leaves them',
    severities: ['warn'],
    source: 'a corner keeps half the bit (S59); what may stay: common practice',
    limits: { left: mm(0.1, 'wood that may stay in a corner') },
  },
  'groove-cutter': {
    meaning: 'no router bit is narrow or long enough for a groove, rebate, opening or recess',
    severities: ['warn'],
    source: 'through cuts 1 mm deeper than the board: common practice',
    limits: { beyond: mm(1, 'that a cut right through goes deeper than the board') },
  },
  'piece-small': {
    meaning: 'pieces are small to hold while they are sawn, bored or routed',
    severities: ['note'],
    source: 'common practice',
    limits: {
      length: mm(150, 'the longer side of a small piece is less'),
      width: mm(50, 'or its shorter side is less'),
    },
  },
} as const satisfies RuleEntries
