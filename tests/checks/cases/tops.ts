import type { RuleCase } from './case.ts'

export const topCases: readonly RuleCase[] = []
