import type { RuleCase } from './case.ts'

export const baseCases: readonly RuleCase[] = []
