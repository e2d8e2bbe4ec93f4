import type { RuleCase } from './case.ts'

export const flipOverCases: readonly RuleCase[] = []
