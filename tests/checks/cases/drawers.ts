import type { RuleCase } from './case.ts'

export const drawerCases: readonly RuleCase[] = []
