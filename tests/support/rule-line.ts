import type { RuleEntry } from '../../src/rulebook/index.ts'

const UNITS = { mm: ' mm', kg: ' kg', degrees: '°', '%': ' %', '1': '' } as const

/** A rule's line in README: its id, what it means, its severities with their limits, and where those come from. */
export function ruleLine(id: string, { meaning, severities, limits, source }: RuleEntry): string {
  const figures = Object.entries(limits).map(([name, { value, unit }]) => `\`${name}\` ${value}${UNITS[unit]}`)
  const level = [severities.join(', '), ...(figures.length === 0 ? [] : [figures.join(', ')])].join(': ')
  return `| \`${id}\` | ${meaning} | ${level} | ${source} |`
}
