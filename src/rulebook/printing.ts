import { percent, type RuleEntries } from './types.ts'

/** Full-size pages and the printer that makes them. */
export const printingRules = {
  'page-bars': {
    meaning: 'the paper has no room for the check bars between the printer’s margins',
    severities: ['stop'],
    source: 'own arithmetic',
    limits: {},
  },
  'printer-correction': {
    meaning: 'the check bars came out further off than a printer errs',
    severities: ['stop', 'warn'],
    source: 'copies from 98.4 to 102 % are reported (S70); the limits: common practice',
    limits: { warn: percent(1, 'between a reading and the bar’s length'), stop: percent(3, 'the same') },
  },
  'page-letters': {
    meaning: 'a name is in letters that the font of the full-size pages lacks, or would stand there in the wrong order',
    severities: ['warn'],
    source: 'the font files; the order of words as pages were seen to be set',
    limits: {},
  },
} as const satisfies RuleEntries
